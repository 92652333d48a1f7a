import type { Vec3 } from '../geometry/types';
import { addScaled, normalise, scale, sub } from '../geometry/vec3';
import type { Convex } from './convex';
import { penetration } from './penetration';
import { coreDistance, coreSeparation } from './separation';
import { boxGap, movedSolid, type Solid } from './solid';

/** Two items that touch, or overlap by no more than this, do not clash, mm. */
export const touchMm = 1e-6;

export interface ShapeDistance {
  /** 0 when they touch or overlap, mm. */
  readonly distanceMm: number;
  /** The nearest points, on a and on b; where they overlap, a point in both or on both cores' way. */
  readonly pointsMm: readonly [onA: Vec3, onB: Vec3];
}

export interface ShapeOverlap {
  readonly depthMm: number;
  /** The shortest move of a that clears b, mm; for shapes of several convex pieces the shortest found. */
  readonly clearByMm: Vec3;
}

/** The distance between two solids and where it is, mm. Aircraft frame. */
export function shapeDistance(a: Solid, b: Solid): ShapeDistance {
  if (a.convexes.length * b.convexes.length === 1) return nearestPoints(a.convexes[0]!, b.convexes[0]!);
  let least = Number.POSITIVE_INFINITY;
  let nearest: readonly [Convex, Convex] | null = null;
  for (const p of a.convexes) {
    if (boxGap(p, b) >= least) continue;
    for (const q of b.convexes) {
      if (boxGap(p, q) >= least) continue;
      const radii = p.radiusMm + q.radiusMm;
      const distance = coreDistance(p, q, least + radii) - radii;
      if (distance < least) {
        least = distance;
        nearest = [p, q];
      }
    }
  }
  if (!nearest) throw new Error('shapeDistance: a solid of no pieces has no distance.');
  return nearestPoints(...nearest);
}

/** Distance and nearest points of two convex solids. */
export function nearestPoints(p: Convex, q: Convex): ShapeDistance {
  const { distanceMm: apart, onA, onB } = coreSeparation(p, q);
  const distanceMm = Math.max(0, apart - p.radiusMm - q.radiusMm);
  if (apart === 0) return { distanceMm, pointsMm: [onA, onB] };
  const way = scale(sub(onB, onA), 1 / apart);
  return { distanceMm, pointsMm: [addScaled(onA, way, p.radiusMm), addScaled(onB, way, -q.radiusMm)] };
}

/** True when the two overlap by more than a touch. No clash is missed: only a plane between them clears a pair. */
export function shapesClash(a: Solid, b: Solid): boolean {
  return boxGap(a, b) === 0 && a.convexes.some((p) => b.convexes.some((q) => convexOverlap(p, q, true)));
}

/** How far two solids overlap and how to clear it; null when they are apart or only touch. */
export function shapeOverlap(a: Solid, b: Solid): ShapeOverlap | null {
  if (boxGap(a, b) > 0) return null;
  const ways = overlaps(a, b);
  const deepest = ways[0];
  if (!deepest) return null;
  if (a.convexes.length * b.convexes.length === 1) return deepest;
  return shortestOf(a, b, ways);
}

/** Overlaps of the pieces, deepest first. */
function overlaps(a: Solid, b: Solid): ShapeOverlap[] {
  return a.convexes
    .flatMap((p) => b.convexes.flatMap((q) => convexOverlap(p, q) ?? []))
    .sort((x, y) => y.depthMm - x.depthMm);
}

/** Overlap of two convex solids. With `yesOrNo` the depth may come out too great, and sooner. */
function convexOverlap(p: Convex, q: Convex, yesOrNo = false): ShapeOverlap | null {
  if (boxGap(p, q) > 0) return null;
  const radii = p.radiusMm + q.radiusMm;
  const apart = coreDistance(p, q, radii);
  if (apart > radii) return null;
  if (apart > 0) {
    // The distance that let them pass for overlapping may be a bound; the depth needs the item itself.
    const { distanceMm, onA, onB } = coreSeparation(p, q);
    const depthMm = radii - distanceMm;
    if (depthMm <= touchMm) return null;
    const way = normalise(sub(onA, onB));
    if (way) return { depthMm, clearByMm: scale(way, depthMm) };
  }
  const out = penetration(p, q, yesOrNo);
  if (!out || out.depthMm <= touchMm) return null;
  return { depthMm: out.depthMm, clearByMm: scale(out.direction, out.depthMm) };
}

/** Of the ways out of single pieces, and the six along the axes, the one that clears the whole in the least. */
function shortestOf(a: Solid, b: Solid, ways: readonly ShapeOverlap[]): ShapeOverlap {
  const square: Vec3[] = [
    [1, 0, 0],
    [-1, 0, 0],
    [0, 1, 0],
    [0, -1, 0],
    [0, 0, 1],
    [0, 0, -1],
  ];
  const tried = [
    ...ways.slice(0, 12).map(({ depthMm, clearByMm }) => scale(clearByMm, 1 / depthMm)),
    ...square,
  ];
  let best: ShapeOverlap | null = null;
  for (const direction of tried) {
    const depthMm = exitAlong(a, b, direction, best?.depthMm ?? Number.POSITIVE_INFINITY);
    if (!best || depthMm < best.depthMm) best = { depthMm, clearByMm: scale(direction, depthMm) };
  }
  return best!;
}

/** How far a must go along a unit direction before no piece of it overlaps one of b; gives up beyond `mostMm`. */
function exitAlong(a: Solid, b: Solid, direction: Vec3, mostMm: number): number {
  let gone = 0;
  for (let turn = 0; turn < 64 && gone < mostMm; turn += 1) {
    const moved = movedSolid(a, scale(direction, gone));
    let further = 0;
    for (const p of moved.convexes) {
      for (const q of b.convexes) {
        // At a mere touch the one may see an overlap where the other is out already: then by a touch further.
        if (convexOverlap(p, q, true)) further = Math.max(further, convexExit(p, q, direction), touchMm);
      }
    }
    if (further === 0) return gone;
    gone += further;
  }
  return gone;
}

/** How far convex p must go along a unit direction to leave convex q: back from well outside until it touches. */
function convexExit(p: Convex, q: Convex, direction: Vec3): number {
  const reach = (c: Convex) => Math.hypot(...sub(c.maxMm, c.minMm));
  let at = reach(p) + reach(q);
  for (let step = 0; step < 64; step += 1) {
    const there = movedSolid({ convexes: [p], minMm: p.minMm, maxMm: p.maxMm }, scale(direction, at))
      .convexes[0]!;
    const { distanceMm: apart, onA, onB } = coreSeparation(there, q);
    const gap = apart - p.radiusMm - q.radiusMm;
    if (gap <= touchMm / 10) break;
    const [x, y, z] = sub(onA, onB);
    const along = (x * direction[0] + y * direction[1] + z * direction[2]) / apart;
    if (along <= 0) break;
    at -= gap / along;
  }
  return at;
}
