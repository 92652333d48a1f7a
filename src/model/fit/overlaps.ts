import { furthestPoints, pointSolid } from '../../engine/fit/outline';
import { shapeDistance, shapeOverlap, shapesClash, touchMm } from '../../engine/fit/shapeDistance';
import { boxGap, type Solid } from '../../engine/fit/solid';
import type { Vec3 } from '../../engine/geometry/types';
import { scale } from '../../engine/geometry/vec3';

/** How one solid overlaps another. */
export interface Overlap {
  readonly depthMm: number;
  /** The shortest move of the first that clears the second, mm. */
  readonly clearByMm: Vec3;
  /** One holds the other whole. */
  readonly within: boolean;
}

/** Answers about pairs of solids, kept for as long as both are. */
function perPair<T>(answer: (a: Solid, b: Solid) => T): (a: Solid, b: Solid) => T {
  const memory = new WeakMap<Solid, WeakMap<Solid, { readonly value: T }>>();
  return (a, b) => {
    let bySecond = memory.get(a);
    if (!bySecond) {
      bySecond = new WeakMap();
      memory.set(a, bySecond);
    }
    let kept = bySecond.get(b);
    if (!kept) {
      kept = { value: answer(a, b) };
      bySecond.set(b, kept);
    }
    return kept.value;
  };
}

const overlapOf = perPair((a, b): Overlap | null => {
  if (!shapesClash(a, b)) return null;
  const found = shapeOverlap(a, b);
  return found && { ...found, within: holds(a, b) || holds(b, a) };
});

/** Null where two solids are apart or only touch. Worked out once for each pair, whichever way round. */
export const solidOverlap = (a: Solid, b: Solid): Overlap | null =>
  boxGap(a, b) > 0 ? null : overlapOf(a, b);

/** The distance of two solids, worked out once for each pair. */
export const solidDistance = perPair((a, b) => shapeDistance(a, b));

/** Whether one solid lies whole within another, by its furthest points. */
const holds = (outer: Solid, inner: Solid): boolean =>
  boxHolds(outer, inner) &&
  furthestPoints(inner).every((point) => shapeDistance(pointSolid(point), outer).distanceMm <= touchMm);

/** The other way round. */
export const turned = (overlap: Overlap): Overlap => ({
  ...overlap,
  clearByMm: scale(overlap.clearByMm, -1),
});

const boxHolds = (outer: Solid, inner: Solid): boolean =>
  ([0, 1, 2] as const).every(
    (axis) => outer.minMm[axis] <= inner.minMm[axis] && outer.maxMm[axis] >= inner.maxMm[axis],
  );
