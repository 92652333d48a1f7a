import type { SphereShape } from '../shapes';
import { diagonalTensor } from '../tensor';
import type { SurfaceProperties, VolumeProperties } from '../types';

/** Solid sphere: V = 4πr³/3, I = 2Vr²/5. */
export function sphereVolume({ diameterMm }: SphereShape): VolumeProperties {
  const r = diameterMm / 2;
  const volumeMm3 = (4 / 3) * Math.PI * r ** 3;
  const inertia = 0.4 * volumeMm3 * r * r;
  return {
    volumeMm3,
    centroidMm: volumeMm3 === 0 ? null : [0, 0, 0],
    inertiaAboutCentroidMm5: diagonalTensor(inertia, inertia, inertia),
  };
}

/** Thin spherical shell: A = 4πr², I = 2Ar²/3. */
export function sphereSurface({ diameterMm }: SphereShape): SurfaceProperties {
  const r = diameterMm / 2;
  const areaMm2 = 4 * Math.PI * r * r;
  const inertia = (2 / 3) * areaMm2 * r * r;
  return {
    areaMm2,
    centroidMm: areaMm2 === 0 ? null : [0, 0, 0],
    inertiaAboutCentroidMm4: diagonalTensor(inertia, inertia, inertia),
  };
}
