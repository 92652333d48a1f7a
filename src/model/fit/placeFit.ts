import { hullHolds } from '../../engine/fit/hull';
import { furthestPoints, pointSolid } from '../../engine/fit/outline';
import { outOfPanel } from '../../engine/fit/panelHolds';
import { shapeDistance, shapesClash, touchMm } from '../../engine/fit/shapeDistance';
import { boxGap, type Solid, solidOf } from '../../engine/fit/solid';
import type { Vec3 } from '../../engine/geometry/types';
import { lastPerObject, perObject } from '../../engine/memory/memory';
import { hulls, middleOf, type NamedHull } from '../airframe/solids';
import { type SurfaceSolid, surfaceSolids } from '../airframe/surfaceSolids';
import type { Aircraft } from '../document/types';
import { outOfAll } from './outOfAll';
import { hullDistance } from './overlaps';

/** What holds an item: the hull or flying surface that its middle lies in, else the one that it pokes into. */
export interface PlaceFit {
  readonly where: 'hull' | 'surface' | 'outside';
  /** What holds it; of one that stands outside, what is nearest. */
  readonly holder: NamedHull | SurfaceSolid;
  /** How far it reaches out of what holds it; of one that stands outside, how far its furthest point is off. mm, 0 within. */
  readonly outMm: number;
  readonly atMm: readonly [Vec3, Vec3] | null;
}

type Structure = Aircraft['structure'];

/** Where a solid stands, against hulls and flying surfaces; null on an aircraft that has neither. */
export const placeFit = (structure: Structure, solid: Solid): PlaceFit | null => placeOf(solid, structure);

const placeOf = lastPerObject((solid: Solid, structure: Structure): PlaceFit | null => {
  const [allHulls, surfaces] = [hulls({ structure }), surfaceSolids({ structure })];
  if (allHulls.length + surfaces.length === 0) return null;
  const middle = middleOf(solid);
  const around = allHulls.filter((hull) => hullHolds(hull, middle));
  if (around.length > 0) return inHull(solid, around, allHulls, surfaces);
  const within = surfaces.find(({ panels }) => panels.some((panel) => outOfPanel(panel, middle) === 0));
  if (within) return inSurface(solid, within, allHulls, surfaces);
  const cut = allHulls.filter(
    (hull) => boxGap(solid, hullSolid(hull)) === 0 && shapesClash(solid, hullSolid(hull)),
  );
  if (cut.length > 0) return inHull(solid, cut, allHulls, surfaces);
  const struck = surfaces.find((candidate) => shapesClash(solid, candidate.solid));
  if (struck) return inSurface(solid, struck, allHulls, surfaces);
  return outside(solid, allHulls, surfaces);
});

/** A hull as if it were full. */
const hullSolid = perObject(({ shape, pose }: NamedHull): Solid => solidOf({ shape, pose }));

/** The one it fits best. Through the wall into a flying surface that is open to the hull is no way out. */
function inHull(
  solid: Solid,
  candidates: readonly NamedHull[],
  allHulls: readonly NamedHull[],
  surfaces: readonly SurfaceSolid[],
): PlaceFit {
  const [holder, clearance] = candidates
    .map((hull) => [hull, hullDistance(solid, hull)] as const)
    .reduce((best, candidate) => (candidate[1].distanceMm > best[1].distanceMm ? candidate : best));
  if (clearance.distanceMm >= -touchMm) return { where: 'hull', holder, outMm: 0, atMm: clearance.pointsMm };
  const open = surfaces.filter((candidate) => candidate.openToHull && boxGap(candidate.solid, solid) === 0);
  const rest = open.length > 0 ? outOfAll(solid, allHulls, open) : null;
  if (rest && rest.outMm < -clearance.distanceMm) return { where: 'hull', holder, ...rest };
  return { where: 'hull', holder, outMm: -clearance.distanceMm, atMm: clearance.pointsMm };
}

const inSurface = (
  solid: Solid,
  holder: SurfaceSolid,
  allHulls: readonly NamedHull[],
  surfaces: readonly SurfaceSolid[],
): PlaceFit => ({ where: 'surface', holder, ...outOfAll(solid, allHulls, surfaces) });

/** Nothing of it lies in anything: what is nearest, and how far its furthest point stands out of that. */
function outside(solid: Solid, allHulls: readonly NamedHull[], surfaces: readonly SurfaceSolid[]): PlaceFit {
  const solids = [
    ...allHulls.map((hull) => ({ holder: hull, other: hullSolid(hull) })),
    ...surfaces.map((surface) => ({ holder: surface, other: surface.solid })),
  ].sort((a, b) => boxGap(solid, a.other) - boxGap(solid, b.other));
  let [nearest] = solids;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of solids) {
    if (boxGap(solid, candidate.other) >= least) break;
    const { distanceMm } = shapeDistance(solid, candidate.other);
    if (distanceMm < least) [nearest, least] = [candidate, distanceMm];
  }
  const { holder, other } = nearest!;
  const ends = furthestPoints(solid).map((point) => shapeDistance(pointSolid(point), other));
  const { distanceMm, pointsMm } = ends.reduce((far, candidate) =>
    candidate.distanceMm > far.distanceMm ? candidate : far,
  );
  return { where: 'outside', holder, outMm: distanceMm, atMm: pointsMm };
}
