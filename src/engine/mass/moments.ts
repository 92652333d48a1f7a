import type { Vec3 } from '../geometry/types';
import { tensorFromSecondMoments } from './tensor';
import type { SurfaceProperties, Tensor, VolumeProperties } from './types';

/**
 * Running sums ∫dm, ∫x dm, …, ∫yz dm about a point the caller picks near the body, so that moving
 * them to the centroid afterwards costs no digits. Filled in place: these are inner loops.
 */
export interface Moments {
  m: number;
  x: number;
  y: number;
  z: number;
  xx: number;
  yy: number;
  zz: number;
  xy: number;
  xz: number;
  yz: number;
}

export const noMoments = (): Moments => ({
  m: 0,
  x: 0,
  y: 0,
  z: 0,
  xx: 0,
  yy: 0,
  zz: 0,
  xy: 0,
  xz: 0,
  yz: 0,
});

/** Adds a point of measure `dm` at (x, y, z). */
export function addPoint(into: Moments, dm: number, x: number, y: number, z: number): void {
  into.m += dm;
  into.x += dm * x;
  into.y += dm * y;
  into.z += dm * z;
  into.xx += dm * x * x;
  into.yy += dm * y * y;
  into.zz += dm * z * z;
  into.xy += dm * x * y;
  into.xz += dm * x * z;
  into.yz += dm * y * z;
}

export function addMoments(into: Moments, other: Moments): void {
  into.m += other.m;
  into.x += other.x;
  into.y += other.y;
  into.z += other.z;
  into.xx += other.xx;
  into.yy += other.yy;
  into.zz += other.zz;
  into.xy += other.xy;
  into.xz += other.xz;
  into.yz += other.yz;
}

/** Sums about `aboutMm`, as volume, centroid and inertia about the centroid. */
export function volumeFromMoments(sums: Moments, aboutMm: Vec3): VolumeProperties {
  return {
    volumeMm3: sums.m,
    centroidMm: centroid(sums, aboutMm),
    inertiaAboutCentroidMm5: inertiaAboutCentroid(sums),
  };
}

/** Sums about `aboutMm`, as area, centroid and inertia about the centroid. */
export function surfaceFromMoments(sums: Moments, aboutMm: Vec3): SurfaceProperties {
  return {
    areaMm2: sums.m,
    centroidMm: centroid(sums, aboutMm),
    inertiaAboutCentroidMm4: inertiaAboutCentroid(sums),
  };
}

const centroid = (s: Moments, about: Vec3): Vec3 | null =>
  s.m === 0 ? null : [about[0] + s.x / s.m, about[1] + s.y / s.m, about[2] + s.z / s.m];

function inertiaAboutCentroid(s: Moments): Tensor {
  const per = s.m === 0 ? 0 : 1 / s.m;
  return tensorFromSecondMoments(
    s.xx - s.x * s.x * per,
    s.yy - s.y * s.y * per,
    s.zz - s.z * s.z * per,
    s.xy - s.x * s.y * per,
    s.xz - s.x * s.z * per,
    s.yz - s.y * s.z * per,
  );
}
