import { hullClearance } from '../../engine/fit/hull';
import { furthestPoints, pointSolid } from '../../engine/fit/outline';
import { type ShapeDistance, shapeDistance, shapeOverlap, touchMm } from '../../engine/fit/shapeDistance';
import { boxGap, type Solid } from '../../engine/fit/solid';
import type { Vec3 } from '../../engine/geometry/types';
import { scale } from '../../engine/geometry/vec3';
import { perEitherPair, perObjects } from '../../engine/memory/memory';

/** How one solid overlaps another. */
export interface Overlap {
  readonly depthMm: number;
  /** The shortest move of the first that clears the second, mm. */
  readonly clearByMm: Vec3;
  /** One holds the other whole. */
  readonly within: boolean;
}

const overlapOf = perEitherPair<Solid, Overlap | null>(
  (a, b) => {
    const found = shapeOverlap(a, b);
    return found && { ...found, within: holds(a, b) || holds(b, a) };
  },
  (overlap) => overlap && { ...overlap, clearByMm: scale(overlap.clearByMm, -1) },
);

/** Null where two solids are apart or only touch. Worked out once for each pair, whichever way round. */
export const solidOverlap = (a: Solid, b: Solid): Overlap | null =>
  boxGap(a, b) > 0 ? null : overlapOf(a, b);

/** The distance of two solids and its ends, worked out once for each pair. */
export const solidDistance = perEitherPair<Solid, ShapeDistance>(
  shapeDistance,
  ({ distanceMm, pointsMm }) => ({
    distanceMm,
    pointsMm: [pointsMm[1], pointsMm[0]],
  }),
);

/** A solid's distance to the inner face of a hull, worked out once for both. */
export const hullDistance = perObjects(hullClearance);

/** Whether one solid lies whole within another, by its furthest points. */
const holds = (outer: Solid, inner: Solid): boolean =>
  boxHolds(outer, inner) &&
  furthestPoints(inner).every((point) => shapeDistance(pointSolid(point), outer).distanceMm <= touchMm);

const boxHolds = (outer: Solid, inner: Solid): boolean =>
  ([0, 1, 2] as const).every(
    (axis) => outer.minMm[axis] <= inner.minMm[axis] && outer.maxMm[axis] >= inner.maxMm[axis],
  );
