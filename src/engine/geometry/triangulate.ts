import { type Corner, turnOf } from './polygon';

export type Triple = readonly [number, number, number];

/** Triangles of a convex polygon of `count` corners, all from corner 0. */
export const fan = (count: number): Triple[] =>
  Array.from({ length: Math.max(0, count - 2) }, (_, i): Triple => [0, i + 1, i + 2]);

/**
 * Triangles of a simple counterclockwise polygon, as corner numbers, by ear clipping
 * (O'Rourke, Computational Geometry in C, ch. 1). Every outline edge is the edge of one triangle;
 * corners on a straight edge may give triangles of no area.
 */
export function triangulate(corners: readonly Corner[]): Triple[] {
  const left = corners.map((_, i) => i);
  const triangles: Triple[] = [];
  while (left.length > 3) {
    const ear = findEar(corners, left);
    triangles.push(earAt(left, ear));
    left.splice(ear, 1);
  }
  if (left.length === 3) triangles.push(earAt(left, 1));
  return triangles;
}

function earAt(left: readonly number[], at: number): Triple {
  const n = left.length;
  return [left[(at + n - 1) % n]!, left[at]!, left[(at + 1) % n]!];
}

/** The first corner that can be cut off; failing that a corner on a straight line, else the first. */
function findEar(corners: readonly Corner[], left: readonly number[]): number {
  let straight = -1;
  for (let at = 0; at < left.length; at += 1) {
    const ear = earAt(left, at);
    const [a, b, c] = [corners[ear[0]]!, corners[ear[1]]!, corners[ear[2]]!];
    const area = turnOf(a, b, c);
    if (area === 0 && straight < 0) straight = at;
    if (area > 0 && !left.some((i) => !ear.includes(i) && inside(corners[i]!, a, b, c))) return at;
  }
  return Math.max(0, straight);
}

const inside = (p: Corner, a: Corner, b: Corner, c: Corner): boolean =>
  turnOf(a, b, p) >= 0 && turnOf(b, c, p) >= 0 && turnOf(c, a, p) >= 0;
