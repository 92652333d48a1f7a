import type { Vec3 } from '../geometry/types';
import { cross, dot, sub } from '../geometry/vec3';
import type { Mesh } from '../mass/types';
import { overlappingBoxes } from './overlappingBoxes';

/** Where a surface cuts through itself. */
export interface SelfCuts {
  /** Pairs of triangles that cut each other; counted up to `mostCuts`. */
  readonly pairs: number;
  /** One place for each of the first few, mm. */
  readonly atMm: readonly Vec3[];
}

/** So many pairs are counted, and so many places kept. */
export const mostCuts = 1000;
const mostPlaces = 40;

/**
 * Pairs of triangles without a common corner of which one is cut by an edge of the other, by more than a touch.
 * Triangles that lie in one plane, as two faces laid on each other, are not counted.
 */
export function selfCuts({ verticesMm, triangles }: Mesh): SelfCuts {
  const boxes = triangleBoxes({ verticesMm, triangles });
  const atMm: Vec3[] = [];
  let pairs = 0;
  const meet = (s: number, t: number) => {
    if (pairs >= mostCuts) return;
    const [p, q] = [triangles[s]!, triangles[t]!];
    if (p.some((corner) => q.includes(corner))) return;
    const at = cut(p.map((k) => verticesMm[k]!) as Corners, q.map((k) => verticesMm[k]!) as Corners);
    if (!at) return;
    pairs += 1;
    if (atMm.length < mostPlaces) atMm.push(at);
  };
  overlappingBoxes(boxes, meet);
  return { pairs, atMm };
}

type Corners = [Vec3, Vec3, Vec3];

function triangleBoxes({ verticesMm, triangles }: Mesh): Float64Array {
  const boxes = new Float64Array(6 * triangles.length);
  for (const [t, corners] of triangles.entries()) {
    for (let axis = 0; axis < 3; axis += 1) {
      const [a, b, c] = corners.map((k) => verticesMm[k]![axis]!) as [number, number, number];
      boxes[6 * t + axis] = Math.min(a, b, c);
      boxes[6 * t + 3 + axis] = Math.max(a, b, c);
    }
  }
  return boxes;
}

/** Where an edge of one goes through the other; null when none does. */
function cut(p: Corners, q: Corners): Vec3 | null {
  for (const [edges, face] of [
    [p, q],
    [q, p],
  ] as const) {
    for (let i = 0; i < 3; i += 1) {
      const at = through(edges[i]!, edges[(i + 1) % 3]!, face);
      if (at) return at;
    }
  }
  return null;
}

/** A cut shallower than this share of the edge, or nearer than this share to the face's rim, is a touch. */
const touch = 1e-6;

/** Where a line between two points goes through the inside of a face (Möller and Trumbore, 1997). */
function through(from: Vec3, to: Vec3, [a, b, c]: Corners): Vec3 | null {
  const way = sub(to, from);
  const [ab, ac] = [sub(b, a), sub(c, a)];
  const p = cross(way, ac);
  const volume = dot(ab, p);
  if (volume === 0) return null;
  const s = sub(from, a);
  const u = dot(s, p) / volume;
  if (!(u > touch && u < 1 - touch)) return null;
  const q = cross(s, ab);
  const v = dot(way, q) / volume;
  if (!(v > touch && u + v < 1 - touch)) return null;
  const along = dot(ac, q) / volume;
  if (!(along > touch && along < 1 - touch)) return null;
  return [from[0] + along * way[0], from[1] + along * way[1], from[2] + along * way[2]];
}
