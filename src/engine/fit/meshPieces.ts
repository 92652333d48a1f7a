import { spatialOrder } from '../geometry/spatialOrder';
import type { Vec3 } from '../geometry/types';
import { cross, dot, length, lerp, sub } from '../geometry/vec3';
import type { Mesh } from '../mass/types';
import type { ConvexPiece } from './convex';
import { convexCover } from './convexCover';

/** Meshes of more triangles than this are not looked through corner by corner. */
const fewTriangles = 200;

const hullOf = (pointsMm: readonly Vec3[]): ConvexPiece => ({ kind: 'points', pointsMm, radiusMm: 0 });

/**
 * A closed mesh as convex solids, own frame: exact where it has few triangles and is convex or seen whole from the middle
 * of its corners; else pieces that cover it.
 */
export function meshPieces(mesh: Mesh): ConvexPiece[] {
  const exact = mesh.triangles.length <= fewTriangles ? exactPieces(mesh) : null;
  return exact ?? convexCover(mesh).map((points) => hullOf(spatialOrder(points, (point) => point)));
}

function exactPieces({ verticesMm, triangles }: Mesh): ConvexPiece[] | null {
  const reach = Math.max(...verticesMm.map(length), 1);
  const planes = triangles.map(([i, j, k]) => {
    const a = verticesMm[i]!;
    return { a, normal: cross(sub(verticesMm[j]!, a), sub(verticesMm[k]!, a)) };
  });
  const behind = (p: Vec3) =>
    planes.every(({ a, normal }) => dot(sub(p, a), normal) <= 1e-9 * reach * length(normal));
  if (verticesMm.every(behind)) return [hullOf(verticesMm)];
  const sum = verticesMm.reduce((s, [x, y, z]): Vec3 => [s[0] + x, s[1] + y, s[2] + z], [0, 0, 0]);
  const middle = lerp([0, 0, 0], sum, 1 / verticesMm.length);
  if (!behind(middle)) return null;
  return triangles.map(([i, j, k]) => hullOf([middle, verticesMm[i]!, verticesMm[j]!, verticesMm[k]!]));
}
