import { hullHolds } from '../../engine/fit/hull';
import { furthestPoints, pointSolid } from '../../engine/fit/outline';
import { outOfPanel, type PosedPanel, panelNormals, pointFromPanel } from '../../engine/fit/panelHolds';
import { boxGap, type Solid } from '../../engine/fit/solid';
import { directionToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { lerp, mirrorY } from '../../engine/geometry/vec3';
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
 * square to every strip of the skins that are near, and by points between those that lie in different panels.
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
  const judged = [
    ...corners,
    ...furthestPoints(solid, panels.flatMap(normalsOf)).map(judge),
    ...pointsBetween(corners).map(judge),
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

/** Of every two points in different panels, where the line between them goes from one into the other. */
const pointsBetween = (judged: readonly Judged[]): Vec3[] =>
  judged.flatMap((a, i) =>
    judged
      .slice(i + 1)
      .filter((b) => b.holder !== a.holder)
      .map((b) => lerp(a.point, b.point, crossing(a, b))),
  );

/** The share of the way at which a line leaves the panel that it begins in, by its root or its tip; half of it from a hull. */
function crossing(a: Judged, b: Judged): number {
  if (!a.holder || !('mirrored' in a.holder)) return 0.5;
  const [from, to] = [a, b].map(({ point }) => pointFromPanel(a.holder as PosedPanel, point)[1]) as [
    number,
    number,
  ];
  const share = [0, a.holder.shape.spanMm].map((rib) => (rib - from) / (to - from));
  return share.find((t) => t > 0 && t < 1) ?? 0.5;
}
