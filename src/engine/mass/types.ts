import type { Vec3 } from '../geometry/types';

/**
 * A symmetric second-order tensor.
 * For inertia: xx = ∫(y² + z²) dm, ..., and the products are tensor elements: xy = −∫ x y dm.
 */
export interface Tensor {
  readonly xx: number;
  readonly yy: number;
  readonly zz: number;
  readonly xy: number;
  readonly xz: number;
  readonly yz: number;
}

/**
 * Mass, CG and the inertia tensor about that CG, along the axes of the frame the body is given in.
 * No mass gives no CG: `cgMm` is null when, and only when, `massG` is 0.
 */
export interface MassProperties {
  readonly massG: number;
  readonly cgMm: Vec3 | null;
  readonly inertiaAboutCgGmm2: Tensor;
}

/** A solid of unit density (1 g/mm³) in its own frame: volume, centroid, inertia about the centroid. */
export interface VolumeProperties {
  readonly volumeMm3: number;
  readonly centroidMm: Vec3 | null;
  readonly inertiaAboutCentroidMm5: Tensor;
}

/** A closed skin of unit areal density (1 g/mm²) in its own frame. */
export interface SurfaceProperties {
  readonly areaMm2: number;
  readonly centroidMm: Vec3 | null;
  readonly inertiaAboutCentroidMm4: Tensor;
}

/** A closed triangle mesh, outward normals by the right-hand rule. */
export interface Mesh {
  readonly verticesMm: readonly Vec3[];
  readonly triangles: readonly (readonly [number, number, number])[];
}
