import { gaussRule } from './gauss';
import { addMoments, addPoint, type Moments, noMoments } from './moments';

/** A point of a surface patch with its area element |∂P/∂u × ∂P/∂v|. */
export interface PatchPoint {
  x: number;
  y: number;
  z: number;
  element: number;
}

/** A smooth patch over the unit square; writes the point at (u, v) into `out`. */
export type Patch = (u: number, v: number, out: PatchPoint) => void;

const rule = gaussRule(6);
const deepest = 14;
const shareOfArea = 1e-11;

/**
 * Adds the area moments of a patch, by 6 × 6 Gauss–Legendre on squares that are quartered until the
 * area of the four agrees with that of the one to 1e-11 of the patch.
 */
export function addPatch(into: Moments, patch: Patch): void {
  const whole = square(patch, 0, 0, 1);
  refine(into, patch, 0, 0, 1, whole, shareOfArea * whole.m, 0);
}

function refine(
  into: Moments,
  patch: Patch,
  u: number,
  v: number,
  side: number,
  coarse: Moments,
  tolerance: number,
  depth: number,
): void {
  const half = side / 2;
  const quarters = [
    square(patch, u, v, half),
    square(patch, u + half, v, half),
    square(patch, u, v + half, half),
    square(patch, u + half, v + half, half),
  ];
  const area = quarters.reduce((sum, q) => sum + q.m, 0);
  const done = depth >= deepest || !(Math.abs(area - coarse.m) > tolerance);
  quarters.forEach((quarter, i) => {
    if (done) addMoments(into, quarter);
    else {
      const du = i % 2 === 1 ? half : 0;
      const dv = i > 1 ? half : 0;
      refine(into, patch, u + du, v + dv, half, quarter, tolerance / 2, depth + 1);
    }
  });
}

const sample: PatchPoint = { x: 0, y: 0, z: 0, element: 0 };

function square(patch: Patch, u: number, v: number, side: number): Moments {
  const sums = noMoments();
  for (const a of rule) {
    for (const b of rule) {
      patch(u + side * a.at, v + side * b.at, sample);
      addPoint(sums, a.weight * b.weight * side * side * sample.element, sample.x, sample.y, sample.z);
    }
  }
  return sums;
}
