import type { Vec3 } from '../geometry/types';
import { addScaled, length } from '../geometry/vec3';
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
  const seen = new Map<string, Vec3>();
  for (const convex of solid.convexes) {
    for (const way of ways) {
      const point = furthestAlong(convex, way);
      seen.set(point.map((mm) => mm.toFixed(6)).join(), point);
    }
  }
  return [...seen.values()];
}

/** A point as a solid of no size, to measure distances from. */
export const pointSolid = (positionMm: Vec3): Solid =>
  solidOf({
    shape: { kind: 'sphere', diameterMm: 0 },
    pose: { positionMm, yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
  });
