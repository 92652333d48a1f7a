import { type Corner, turnOf } from '../engine/geometry/polygon';
import { type Triple, triangulate } from '../engine/geometry/triangulate';
import type { Vec3 } from '../engine/geometry/types';
import { add, cross } from '../engine/geometry/vec3';

/**
 * An OBJ text in which every face of more than three corners is cut into triangles that lie within it, whatever corner it
 * begins with. The loader cuts from the first corner, which doubles the skin back on itself where a face is not convex.
 */
export function objTriangles(text: string): string {
  const verticesMm: Vec3[] = [];
  return text
    .replace(/\\\r?\n/g, ' ')
    .split('\n')
    .map((line) => {
      const [word, ...fields] = line.trim().split(/\s+/);
      if (word === 'v') verticesMm.push(fields.slice(0, 3).map(Number) as unknown as Vec3);
      if (word !== 'f' || fields.length <= 3) return line;
      const cut = trianglesOf(fields.map((field) => cornerOf(verticesMm, field)));
      return cut ? cut.map((corners) => `f ${corners.map((i) => fields[i]).join(' ')}`).join('\n') : line;
    })
    .join('\n');
}

/** A corner by its number: counted from 1, or back from the last where it is negative (the first of "1/2/3"). */
function cornerOf(verticesMm: readonly Vec3[], field: string): Vec3 | undefined {
  const number = Number.parseInt(field, 10);
  return verticesMm[number < 0 ? verticesMm.length + number : number - 1];
}

/** Null where the face is left to the loader: a corner that is not there, or a face without a direction. */
function trianglesOf(face: readonly (Vec3 | undefined)[]): readonly Triple[] | null {
  const corners = face.flatMap((corner) => (corner ? [corner] : []));
  if (corners.length < face.length) return null;
  // Newell's normal: the sum of the cross products of neighbouring corners.
  const facing = corners.reduce<Vec3>(
    (sum, corner, i) => add(sum, cross(corner, corners[(i + 1) % corners.length]!)),
    [0, 0, 0],
  );
  const axis = ([0, 1, 2] as const).reduce((most, k) =>
    Math.abs(facing[k]) > Math.abs(facing[most]) ? k : most,
  );
  if (!(Math.abs(facing[axis]) > 0)) return null;
  const [u, v] = (
    [
      [1, 2],
      [2, 0],
      [0, 1],
    ] as const
  )[axis];
  const seen = corners.map((p): Corner => (facing[axis] > 0 ? [p[u], p[v]] : [p[v], p[u]]));
  return seen.every((p, i) => turnOf(p, seen[(i + 1) % seen.length]!, seen[(i + 2) % seen.length]!) >= 0)
    ? null
    : triangulate(seen).map(([a, b, c]): Triple => [a, b, c]);
}
