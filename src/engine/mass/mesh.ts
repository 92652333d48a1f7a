import type { Vec3 } from '../geometry/types';
import { cross, length, lerp, sub } from '../geometry/vec3';
import { type Moments, noMoments, surfaceFromMoments, volumeFromMoments } from './moments';
import { around } from './shapeBounds';
import type { Mesh, SurfaceProperties, VolumeProperties } from './types';

type Triangle = readonly [number, number, number];

/** The middle of a mesh's bounding box, mm: the point its sums are taken about. */
function middle(vertices: readonly Vec3[]): Vec3 {
  const { minMm, maxMm } = around(vertices);
  return lerp(minMm, maxMm, 0.5);
}

/**
 * Volume, centroid and inertia of the solid inside a closed mesh: the sum of the tetrahedra from
 * one inner point to every triangle. Exact for the mesh, and as good far from the origin as near it.
 * Tonon, J. Math. Stat. 1(1):8–11, 2004; Mirtich, Journal of Graphics Tools 1(2):31–50, 1996.
 */
export function meshProperties({ verticesMm, triangles }: Mesh): VolumeProperties {
  const about = middle(verticesMm);
  const sums = noMoments();
  for (const triangle of triangles) addTetrahedron(sums, corners(verticesMm, triangle, about));
  return volumeFromMoments(sums, about);
}

/** Area, centroid and inertia of a skin of flat triangles, exact. */
export function meshSurface({ verticesMm, triangles }: Mesh): SurfaceProperties {
  const about = middle(verticesMm);
  const sums = noMoments();
  for (const triangle of triangles) addTriangle(sums, corners(verticesMm, triangle, about));
  return surfaceFromMoments(sums, about);
}

type Corners = readonly [Vec3, Vec3, Vec3];

function corners(vertices: readonly Vec3[], [i, j, k]: Triangle, about: Vec3): Corners {
  return [sub(vertices[i]!, about), sub(vertices[j]!, about), sub(vertices[k]!, about)];
}

/** Tetrahedron from the origin: ∫ p pᵀ dV = V/20 · (Σ vᵢvᵢᵀ + (Σvᵢ)(Σvᵢ)ᵀ). */
function addTetrahedron(into: Moments, [a, b, c]: Corners): void {
  const six =
    a[0] * (b[1] * c[2] - b[2] * c[1]) +
    a[1] * (b[2] * c[0] - b[0] * c[2]) +
    a[2] * (b[0] * c[1] - b[1] * c[0]);
  addCorners(into, six / 6, 1 / 4, 1 / 20, a, b, c);
}

/** Triangle: ∫ p pᵀ dA = A/12 · (Σ vᵢvᵢᵀ + (Σvᵢ)(Σvᵢ)ᵀ). */
function addTriangle(into: Moments, [a, b, c]: Corners): void {
  const area = length(cross(sub(b, a), sub(c, a))) / 2;
  addCorners(into, area, 1 / 3, 1 / 12, a, b, c);
}

function addCorners(
  into: Moments,
  measure: number,
  firstShare: number,
  secondShare: number,
  a: Vec3,
  b: Vec3,
  c: Vec3,
): void {
  const x = a[0] + b[0] + c[0];
  const y = a[1] + b[1] + c[1];
  const z = a[2] + b[2] + c[2];
  const first = measure * firstShare;
  const second = measure * secondShare;
  into.m += measure;
  into.x += first * x;
  into.y += first * y;
  into.z += first * z;
  into.xx += second * (a[0] * a[0] + b[0] * b[0] + c[0] * c[0] + x * x);
  into.yy += second * (a[1] * a[1] + b[1] * b[1] + c[1] * c[1] + y * y);
  into.zz += second * (a[2] * a[2] + b[2] * b[2] + c[2] * c[2] + z * z);
  into.xy += second * (a[0] * a[1] + b[0] * b[1] + c[0] * c[1] + x * y);
  into.xz += second * (a[0] * a[2] + b[0] * b[2] + c[0] * c[2] + x * z);
  into.yz += second * (a[1] * a[2] + b[1] * b[2] + c[1] * c[2] + y * z);
}
