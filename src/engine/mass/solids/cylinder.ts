import { noMoments, surfaceFromMoments } from '../moments';
import { addBand, addDisc } from '../revolved';
import type { CylinderShape } from '../shapes';
import type { SurfaceProperties, VolumeProperties } from '../types';
import { tubeVolume } from './tube';

/** Solid cylinder, axis x: a tube without a bore. */
export const cylinderVolume = ({ lengthMm, diameterMm }: CylinderShape): VolumeProperties =>
  tubeVolume({ kind: 'tube', lengthMm, outerDiameterMm: diameterMm, innerDiameterMm: 0 });

/** Cylinder's skin with both ends. */
export function cylinderSurface({ lengthMm, diameterMm }: CylinderShape): SurfaceProperties {
  const sums = noMoments();
  const [half, r] = [lengthMm / 2, diameterMm / 2];
  addDisc(sums, -half, r);
  addBand(sums, -half, r, half, r);
  addDisc(sums, half, r);
  return surfaceFromMoments(sums, [0, 0, 0]);
}
