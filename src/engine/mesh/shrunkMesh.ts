import type { Vec3 } from '../geometry/types';
import { add, addScaled, cross, normalise, sub } from '../geometry/vec3';
import type { MeshShape } from '../mass/shapes';

/**
 * A closed mesh with every corner moved inwards, mm, along the mean of the directions that its triangles face: the inner
 * face of a wall. Exact where the skin is flat; at a sharp edge the wall comes out somewhat thinner than asked for.
 */
export function shrunkMesh(mesh: MeshShape, byMm: number): MeshShape {
  const outward: Vec3[] = mesh.verticesMm.map(() => [0, 0, 0]);
  for (const triangle of mesh.triangles) {
    const [a, b, c] = triangle.map((i) => mesh.verticesMm[i]!) as [Vec3, Vec3, Vec3];
    const facing = cross(sub(b, a), sub(c, a));
    for (const corner of triangle) outward[corner] = add(outward[corner]!, facing);
  }
  return {
    ...mesh,
    verticesMm: mesh.verticesMm.map((vertex, i) => {
      const way = normalise(outward[i]!);
      return way ? addScaled(vertex, way, -byMm) : vertex;
    }),
  };
}
