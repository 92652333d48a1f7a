import { noMoments, surfaceFromMoments } from '../moments';
import { addBand, addDisc } from '../revolved';
import type { FrustumShape } from '../shapes';
import { diagonalTensor } from '../tensor';
import type { SurfaceProperties, VolumeProperties } from '../types';

/**
 * Solid cone frustum, axis x, middle of its length at the origin. With a the front and b the rear
 * radius and s = a² + ab + b²: V = πLs/3, centroid L(b² − a²)/(4s) aft of the middle,
 * Ixx = πL(a⁴ + a³b + a²b² + ab³ + b⁴)/10; across, by the theorem of the half axial plus ∫x² dV.
 */
export function frustumVolume(shape: FrustumShape): VolumeProperties {
  const { lengthMm: l, frontDiameterMm, rearDiameterMm } = shape;
  const a = frontDiameterMm / 2;
  const b = rearDiameterMm / 2;
  const s = a * a + a * b + b * b;
  const volumeMm3 = (Math.PI * l * s) / 3;
  if (volumeMm3 === 0)
    return { volumeMm3, centroidMm: null, inertiaAboutCentroidMm5: diagonalTensor(0, 0, 0) };
  const x = (l * (b * b - a * a)) / (4 * s);
  const axial = (Math.PI * l * (a ** 4 + a ** 3 * b + a * a * b * b + a * b ** 3 + b ** 4)) / 10;
  const alongAboutMiddle = (Math.PI * l ** 3 * (2 * a * a + a * b + 2 * b * b)) / 60;
  const across = axial / 2 + alongAboutMiddle - volumeMm3 * x * x;
  return { volumeMm3, centroidMm: [x, 0, 0], inertiaAboutCentroidMm5: diagonalTensor(axial, across, across) };
}

/** Frustum's skin with both ends. */
export function frustumSurface(shape: FrustumShape): SurfaceProperties {
  const sums = noMoments();
  const half = shape.lengthMm / 2;
  const front = shape.frontDiameterMm / 2;
  const rear = shape.rearDiameterMm / 2;
  addDisc(sums, -half, front);
  addBand(sums, -half, front, half, rear);
  addDisc(sums, half, rear);
  return surfaceFromMoments(sums, [0, 0, 0]);
}
