import type { Vec3 } from '../geometry/types';
import { dot, length, scale, sub } from '../geometry/vec3';
import { type Convex, movedConvex } from './convex';
import { nearestPoints, touchMm } from './shapeDistance';
import type { Solid } from './solid';

/**
 * How far a solid can go along a unit direction before it meets another, mm; null when it never does.
 * Goes forward by what the gap allows until the gap is closed (conservative advancement: B. Mirtich,
 * Impulse-based Dynamic Simulation, PhD thesis, Berkeley 1996).
 */
export function castAlong(solid: Solid, direction: Vec3, obstacle: Solid): number | null {
  let least: number | null = null;
  for (const p of solid.convexes) {
    for (const q of obstacle.convexes) {
      const gone = convexCast(p, direction, q, least ?? Number.POSITIVE_INFINITY);
      if (gone !== null) least = Math.min(gone, least ?? gone);
    }
  }
  return least;
}

function convexCast(p: Convex, direction: Vec3, q: Convex, belowMm: number): number | null {
  const reach = (c: Convex) => length(sub(c.maxMm, c.minMm));
  const mostMm = Math.min(belowMm, length(sub(p.minMm, q.minMm)) + reach(p) + reach(q));
  let gone = 0;
  for (let step = 0; step < 200; step += 1) {
    const { distanceMm, pointsMm } = nearestPoints(movedConvex(p, scale(direction, gone)), q);
    if (distanceMm <= touchMm) return gone;
    // A plane square to the line between the nearest points parts the two, so only the speed along it counts.
    const speed = dot(sub(pointsMm[1], pointsMm[0]), direction) / distanceMm;
    if (speed <= 1e-9) return null;
    gone += distanceMm / speed;
    if (gone > mostMm) return null;
  }
  return gone;
}
