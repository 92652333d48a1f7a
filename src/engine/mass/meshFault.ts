import type { Vec3 } from '../geometry/types';
import { length, sub } from '../geometry/vec3';
import { meshProperties } from './mesh';
import type { Mesh } from './types';

/**
 * Why a mesh does not bound a solid, or null: corners that are not points, triangles that name
 * corners that are not there, an edge without its one partner the other way round, no volume, or
 * the inside turned out.
 */
export function meshFault(mesh: Mesh): string | null {
  const { verticesMm, triangles } = mesh;
  const odd = verticesMm.findIndex((vertex) => vertex.length !== 3 || !vertex.every(Number.isFinite));
  if (odd >= 0) return `Vertex ${odd} of the mesh is not three numbers: ${verticesMm[odd]}.`;
  if (triangles.length < 4)
    return `A closed mesh has at least 4 triangles, this one has ${triangles.length}.`;
  return triangleFault(mesh) ?? edgeFault(mesh) ?? volumeFault(mesh);
}

function triangleFault({ verticesMm, triangles }: Mesh): string | null {
  for (const [at, triangle] of triangles.entries()) {
    const stray = triangle.find((i) => !Number.isInteger(i) || i < 0 || i >= verticesMm.length);
    if (stray !== undefined) {
      return `Triangle ${at} names vertex ${stray}; the mesh has vertices 0 to ${verticesMm.length - 1}.`;
    }
    if (new Set(triangle).size < 3) return `Triangle ${at} names a vertex twice: ${triangle}.`;
  }
  return null;
}

function edgeFault({ verticesMm, triangles }: Mesh): string | null {
  const count = verticesMm.length;
  const edges = new Set<number>();
  for (const [a, b, c] of triangles) {
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const edge = from * count + to;
      if (edges.has(edge)) {
        return `Two triangles run along the edge ${from}–${to} the same way; neighbours must run opposite ways.`;
      }
      edges.add(edge);
    }
  }
  for (const edge of edges) {
    const from = Math.floor(edge / count);
    const to = edge % count;
    if (!edges.has(to * count + from)) {
      return `The mesh is open: the edge ${from}–${to} has a triangle on one side only.`;
    }
  }
  return null;
}

/** Below this share of the bounding box's diagonal cubed, a volume is rounding. */
const flatShare = 1e-12;

function volumeFault(mesh: Mesh): string | null {
  const { volumeMm3 } = meshProperties(mesh);
  const first = mesh.verticesMm[0]!;
  const reach = mesh.verticesMm.reduce((far, v: Vec3) => Math.max(far, length(sub(v, first))), 0);
  if (!(Math.abs(volumeMm3) > flatShare * reach ** 3)) return 'The mesh encloses no volume.';
  return volumeMm3 < 0 ? 'The mesh is inside out: its triangles face inwards.' : null;
}
