import { noMoments, surfaceFromMoments } from '../moments';
import { addBand, addZone } from '../revolved';
import type { CapsuleShape } from '../shapes';
import { diagonalTensor } from '../tensor';
import type { SurfaceProperties, VolumeProperties } from '../types';

/**
 * Solid capsule, axis x: a cylinder of volume C and length L between two half spheres, together S.
 * Ixx = Cr²/2 + 2Sr²/5; across C(r²/4 + L²/12) + S(2r²/5 + L²/4 + 3Lr/8).
 */
export function capsuleVolume({ lengthMm, diameterMm }: CapsuleShape): VolumeProperties {
  const r = diameterMm / 2;
  const l = lengthMm - diameterMm;
  const cylinder = Math.PI * r * r * l;
  const spheres = (4 / 3) * Math.PI * r ** 3;
  const volumeMm3 = cylinder + spheres;
  const axial = (cylinder / 2 + 0.4 * spheres) * r * r;
  const across =
    cylinder * ((r * r) / 4 + (l * l) / 12) + spheres * (0.4 * r * r + (l * l) / 4 + (3 * l * r) / 8);
  return {
    volumeMm3,
    centroidMm: volumeMm3 === 0 ? null : [0, 0, 0],
    inertiaAboutCentroidMm5: diagonalTensor(axial, across, across),
  };
}

/** Capsule's skin. */
export function capsuleSurface({ lengthMm, diameterMm }: CapsuleShape): SurfaceProperties {
  const sums = noMoments();
  const r = diameterMm / 2;
  const half = (lengthMm - diameterMm) / 2;
  addZone(sums, -half, r, -r, 0);
  addBand(sums, -half, r, half, r);
  addZone(sums, half, r, 0, r);
  return surfaceFromMoments(sums, [0, 0, 0]);
}
