import type { Vec3 } from '../geometry/types';
import { addScaled, dot, length } from '../geometry/vec3';
import type { Convex } from './convex';
import { type Solid, solidOf } from './solid';

/** The 26 ways to the faces, edges and corners of a cube. */
export const waysRound: readonly Vec3[] = [-1, 0, 1].flatMap((x) =>
  [-1, 0, 1].flatMap((y) => [-1, 0, 1].flatMap((z): Vec3[] => (x || y || z ? [[x, y, z]] : []))),
);

const out = new Float64Array(3);

/** The furthest point of a convex solid along a direction of any length, its radius counted, mm. */
export function furthestAlong(convex: Convex, way: Vec3): Vec3 {
  convex.support(...way, out, 0);
  return addScaled([out[0]!, out[1]!, out[2]!], way, convex.radiusMm / length(way));
}

/** A solid's furthest points in some ways, each once, mm. The 26 reach every corner of a box however it is turned. */
export function furthestPoints(solid: Solid, ways: readonly Vec3[] = waysRound): Vec3[] {
  const points: Vec3[] = [];
  for (const way of ways) {
    let best: Vec3 | null = null;
    for (const convex of solid.convexes) {
      const point = furthestAlong(convex, way);
      if (!best || dot(point, way) > dot(best, way)) best = point;
    }
    const found = best;
    if (found && !points.some((point) => samePoint(point, found))) points.push(found);
  }
  return points;
}

const samePoint = (a: Vec3, b: Vec3): boolean =>
  Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) + Math.abs(a[2] - b[2]) < 1e-6;

/** A point as a solid of no size, to measure distances from. */
export const pointSolid = (positionMm: Vec3): Solid =>
  solidOf({
    shape: { kind: 'sphere', diameterMm: 0 },
    pose: { positionMm, yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
  });
