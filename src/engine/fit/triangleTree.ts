import type { Vec3 } from '../geometry/types';
import { cross, dot, normalise, sub } from '../geometry/vec3';
import { type Convex, convexOfPoints } from './convex';
import { coreDistance } from './separation';
import type { Solid } from './solid';

export type Triangle = readonly [Vec3, Vec3, Vec3];

/** Triangles in boxes within boxes, to find the nearest one to a solid. Aircraft frame, mm. */
export interface TriangleTree {
  /** The nearest triangle nearer than `belowMm`, or null. Distance 0 when one cuts the solid. */
  nearest(
    solid: Solid,
    belowMm?: number,
  ): { readonly distanceMm: number; readonly triangle: Convex; readonly convex: Convex } | null;
}

const leafSize = 4;

/**
 * Boxes triangles by halving their list again and again, so neighbours in the list should be neighbours in
 * space, as they are along a hull's stretches.
 */
export function triangleTree(triangles: readonly Triangle[]): TriangleTree {
  const count = triangles.length;
  const boxes = new Float64Array(6 * count);
  const planes = new Float64Array(4 * count);
  triangles.forEach(([a, b, c], i) => {
    for (let axis = 0; axis < 3; axis += 1) {
      boxes[6 * i + axis] = Math.min(a[axis]!, b[axis]!, c[axis]!);
      boxes[6 * i + 3 + axis] = Math.max(a[axis]!, b[axis]!, c[axis]!);
    }
    const normal = normalise(cross(sub(b, a), sub(c, a))) ?? [0, 0, 0];
    planes.set([...normal, dot(normal, a)], 4 * i);
  });
  // Node n has its children at 2n + 1 and 2n + 2.
  const depth = Math.max(0, Math.ceil(Math.log2(Math.max(1, count / leafSize))));
  const bounds = new Float64Array(6 * 2 ** (depth + 1));
  const build = (node: number, from: number, to: number, level: number) => {
    const half = (from + to) >> 1;
    if (level < depth) {
      build(2 * node + 1, from, half, level + 1);
      build(2 * node + 2, half, to, level + 1);
    }
    const [children, first, last] = level < depth ? [bounds, 2 * node + 1, 2 * node + 3] : [boxes, from, to];
    for (let axis = 0; axis < 3; axis += 1) {
      let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
      for (let k = first; k < last; k += 1) {
        low = Math.min(low, children[6 * k + axis]!);
        high = Math.max(high, children[6 * k + 3 + axis]!);
      }
      bounds[6 * node + axis] = low;
      bounds[6 * node + 3 + axis] = high;
    }
  };
  build(0, 0, count, 0);

  const convexes: (Convex | undefined)[] = [];
  const convexAt = (i: number) => {
    convexes[i] ??= convexOfPoints(triangles[i]!);
    return convexes[i];
  };

  const nearest: TriangleTree['nearest'] = (solid, belowMm = Number.POSITIVE_INFINITY) => {
    let best: { distanceMm: number; triangle: Convex; convex: Convex } | null = null;
    let least = belowMm;
    const visit = (node: number, from: number, to: number, level: number) => {
      if (level < depth) {
        const half = (from + to) >> 1;
        const first = gap(bounds, 6 * (2 * node + 1), solid);
        const second = gap(bounds, 6 * (2 * node + 2), solid);
        if (first <= second && first < least) visit(2 * node + 1, from, half, level + 1);
        if (second < least) visit(2 * node + 2, half, to, level + 1);
        if (first > second && first < least) visit(2 * node + 1, from, half, level + 1);
        return;
      }
      for (let i = from; i < to; i += 1) {
        if (gap(boxes, 6 * i, solid) >= least) continue;
        const triangle = convexAt(i);
        for (const convex of solid.convexes) {
          if (gap(boxes, 6 * i, convex) >= least || planeGap(planes, 4 * i, convex) >= least) continue;
          const apart = coreDistance(convex, triangle, least + convex.radiusMm);
          const distanceMm = Math.max(0, apart - convex.radiusMm);
          if (distanceMm >= least) continue;
          least = distanceMm;
          best = { distanceMm, triangle, convex };
        }
      }
    };
    if (count > 0) visit(0, 0, count, 0);
    return best;
  };
  return { nearest };
}

const furthest = new Float64Array(3);

/** How far a solid stays behind or before the plane kept at `at` in an array (normal, offset); below 0 when it is cut. */
function planeGap(planes: Float64Array, at: number, { support, radiusMm }: Convex): number {
  const [x, y, z, offset] = [planes[at]!, planes[at + 1]!, planes[at + 2]!, planes[at + 3]!];
  support(x, y, z, furthest, 0);
  const behind = offset - (x * furthest[0]! + y * furthest[1]! + z * furthest[2]!);
  if (behind > 0) return behind - radiusMm;
  support(-x, -y, -z, furthest, 0);
  return x * furthest[0]! + y * furthest[1]! + z * furthest[2]! - offset - radiusMm;
}

/** Distance between a box kept at `at` in an array (three least, three most) and another. */
function gap(
  boxes: Float64Array,
  at: number,
  { minMm, maxMm }: { readonly minMm: Vec3; readonly maxMm: Vec3 },
): number {
  let sum = 0;
  for (let axis = 0; axis < 3; axis += 1) {
    const axisGap = Math.max(boxes[at + axis]! - maxMm[axis]!, minMm[axis]! - boxes[at + 3 + axis]!, 0);
    sum += axisGap * axisGap;
  }
  return Math.sqrt(sum);
}
