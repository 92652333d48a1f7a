import { noMoments, surfaceFromMoments } from '../moments';
import { addBand, addDisc } from '../revolved';
import type { TubeShape } from '../shapes';
import { diagonalTensor } from '../tensor';
import type { SurfaceProperties, VolumeProperties } from '../types';

/**
 * Solid wall of a tube, axis x: V = πL(R² − r²), Ixx = V(R² + r²)/2,
 * Iyy = Izz = V(3(R² + r²) + L²)/12 (Beer & Johnston, Statics, table of mass moments).
 */
export function tubeVolume({ lengthMm, outerDiameterMm, innerDiameterMm }: TubeShape): VolumeProperties {
  const outer = outerDiameterMm / 2;
  const inner = innerDiameterMm / 2;
  const volumeMm3 = Math.PI * lengthMm * (outer - inner) * (outer + inner);
  const squares = outer * outer + inner * inner;
  const across = (volumeMm3 * (3 * squares + lengthMm * lengthMm)) / 12;
  return {
    volumeMm3,
    centroidMm: volumeMm3 === 0 ? null : [0, 0, 0],
    inertiaAboutCentroidMm5: diagonalTensor((volumeMm3 * squares) / 2, across, across),
  };
}

/** All faces of a tube: outside, bore and both rings. */
export function tubeSurface({ lengthMm, outerDiameterMm, innerDiameterMm }: TubeShape): SurfaceProperties {
  const sums = noMoments();
  const [half, outer, inner] = [lengthMm / 2, outerDiameterMm / 2, innerDiameterMm / 2];
  for (const x of [-half, half]) addDisc(sums, x, outer, inner);
  for (const r of [outer, inner]) addBand(sums, -half, r, half, r);
  return surfaceFromMoments(sums, [0, 0, 0]);
}
