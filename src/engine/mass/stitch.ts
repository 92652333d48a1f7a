import type { Triple } from '../geometry/triangulate';
import type { Vec3 } from '../geometry/types';
import type { Mesh } from './types';

/**
 * A closed skin over rings of equal count. Each ring runs counterclockwise about the way the rings
 * advance. `caps` are the triangles that close the first and the last ring, counterclockwise;
 * without caps the last ring joins the first. The diagonals lean one way and the other in turn, so
 * that on a warped skin an even number of steps errs to both sides alike.
 */
export function stitch(rings: readonly (readonly Vec3[])[], caps: readonly Triple[] | 'loop'): Mesh {
  const count = rings[0]!.length;
  const triangles: Triple[] = [];
  const joints = caps === 'loop' ? rings.length : rings.length - 1;
  for (let j = 0; j < joints; j += 1) {
    const here = j * count;
    const there = ((j + 1) % rings.length) * count;
    for (let i = 0; i < count; i += 1) {
      const next = (i + 1) % count;
      if (j % 2 === 0) {
        triangles.push([here + i, here + next, there + next], [here + i, there + next, there + i]);
      } else {
        triangles.push([here + i, here + next, there + i], [here + next, there + next, there + i]);
      }
    }
  }
  if (caps !== 'loop') {
    const last = (rings.length - 1) * count;
    for (const [a, b, c] of caps) {
      if (!isFlat(rings[0]!)) triangles.push([a, c, b]);
      if (!isFlat(rings.at(-1)!)) triangles.push([last + a, last + b, last + c]);
    }
  }
  return weld(rings.flat(), triangles);
}

/** True for a ring drawn together to a line or a point: its two sides meet and need no cap. */
function isFlat(ring: readonly Vec3[]): boolean {
  const [first] = ring;
  return [0, 1, 2].filter((axis) => ring.some((point) => point[axis] !== first![axis])).length < 2;
}

/** Makes one vertex of those that coincide and drops the triangles that this shrinks to a line. */
function weld(vertices: readonly Vec3[], triangles: readonly Triple[]): Mesh {
  const seen = new Map<string, number>();
  const verticesMm: Vec3[] = [];
  const index = vertices.map((vertex) => {
    const [x, y, z] = vertex;
    const key = `${x},${y},${z}`;
    const welded = seen.get(key);
    if (welded !== undefined) return welded;
    seen.set(key, verticesMm.length);
    return verticesMm.push(vertex) - 1;
  });
  const kept = triangles
    .map(([a, b, c]): Triple => [index[a]!, index[b]!, index[c]!])
    .filter(([a, b, c]) => a !== b && b !== c && c !== a);
  return { verticesMm, triangles: kept };
}
