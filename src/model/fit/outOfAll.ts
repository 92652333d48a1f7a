import { hullHolds } from '../../engine/fit/hull';
import { furthestPoints, pointSolid, waysRound } from '../../engine/fit/outline';
import { outOfPanel, type PosedPanel, panelNormals, pointFromPanel } from '../../engine/fit/panelHolds';
import { boxGap, type Solid } from '../../engine/fit/solid';
import { directionToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { distance, lerp, mirrorY } from '../../engine/geometry/vec3';
import type { NamedHull } from '../airframe/solids';
import type { SurfaceSolid } from '../airframe/surfaceSolids';

/** How far something stands out, mm, and where. */
export interface OutOf {
  readonly outMm: number;
  readonly atMm: readonly [Vec3, Vec3] | null;
}

/** Points nearer the skin than this lie on it, mm. */
const onSkinMm = 1e-6;

/**
 * How far a solid stands out of hulls and flying surfaces taken together: by its furthest points in 26 ways and
 * square to every strip of the skins that are near, and by points between those that lie in different holders.
 * Against a flying surface its own thickness where the point is counts, the skin's own not.
 */
export function outOfAll(
  solid: Solid,
  hulls: readonly NamedHull[],
  surfaces: readonly SurfaceSolid[],
): OutOf {
  const panels = surfaces
    .filter((surface) => boxGap(surface.solid, solid) === 0)
    .flatMap((surface) => surface.panels.filter((_, i) => boxGap(surface.panelBoxes[i]!, solid) === 0));
  const judge = (point: Vec3): Judged => ({ point, ...outOfPoint(point, hulls, panels) });
  const corners = furthestPoints(solid).map(judge);
  const astride = new Set(corners.map(({ holder }) => holder)).size > 1;
  const rim = astride ? furthestPoints(solid, closeWays).map(judge) : [];
  const judged = [
    ...corners,
    ...rim,
    ...furthestPoints(solid, panels.flatMap(normalsOf)).map(judge),
    ...pointsBetween([...corners, ...rim]).map(judge),
  ];
  let worst: OutOf = { outMm: 0, atMm: null };
  for (const { point, outMm } of judged) {
    if (outMm > worst.outMm + onSkinMm) worst = { outMm, atMm: [point, point] };
  }
  return worst;
}

const normalsOf = (panel: PosedPanel): Vec3[] =>
  panelNormals(panel.shape).map((normal) => {
    const turned = directionToAircraft(panel.pose, normal);
    return panel.mirrored ? mirrorY(turned) : turned;
  });

type Holder = NamedHull | PosedPanel | null;

interface Judged {
  readonly point: Vec3;
  readonly outMm: number;
  readonly holder: Holder;
}

/** How far a point lies out of all of them, and what holds it or is nearest. */
function outOfPoint(
  point: Vec3,
  hulls: readonly NamedHull[],
  panels: readonly PosedPanel[],
): { readonly outMm: number; readonly holder: Holder } {
  let outMm = Number.POSITIVE_INFINITY;
  let holder: Holder = null;
  for (const panel of panels) {
    const out = outOfPanel(panel, point);
    if (out < outMm) [outMm, holder] = [out, panel];
    if (out === 0) return { outMm, holder };
  }
  for (const hull of hulls) {
    if (hullHolds(hull, point)) return { outMm: 0, holder: hull };
    const near = hull.tree.nearest(pointSolid(point), outMm);
    if (near) [outMm, holder] = [near.distanceMm, hull];
  }
  return { outMm, holder };
}

/** Ways between the 26, for what lies astride two holders. */
const closeWays: readonly Vec3[] = waysRound.flatMap(([x, y, z]): Vec3[] => [
  [x + y / 2, y + z / 2, z + x / 2],
  [x - y / 2, y - z / 2, z - x / 2],
]);

/** Of each point, so many of the nearest in another holder are joined to it, by so many points. */
const nearestMost = 8;
const pointsPerLine = 7;

/**
 * Of points in different holders, points on the line between them: even ones, and where it goes from one panel into
 * the next. Along the edges of a box and the sides of a drum that finds what shows in the corner between two holders.
 */
const pointsBetween = (judged: readonly Judged[]): Vec3[] =>
  judged.flatMap((a) =>
    judged
      .filter((b) => b.holder !== a.holder)
      .map((b) => ({ b, far: distance(a.point, b.point) }))
      .sort((p, q) => p.far - q.far)
      .slice(0, nearestMost)
      .flatMap(({ b }) => shares(a, b).map((share) => lerp(a.point, b.point, share))),
  );

const evenShares = Array.from({ length: pointsPerLine }, (_, i) => (i + 1) / (pointsPerLine + 1));

/** Even shares of a line, and those at which it leaves the panel that it begins in by its root or its tip. */
function shares(a: Judged, b: Judged): number[] {
  const { holder } = a;
  if (!holder || !('mirrored' in holder)) return evenShares;
  const from = pointFromPanel(holder, a.point)[1];
  const to = pointFromPanel(holder, b.point)[1];
  const ribs = [0, holder.shape.spanMm].map((rib) => (rib - from) / (to - from));
  return [...evenShares, ...ribs.filter((share) => share > 0 && share < 1)];
}
