import type { BoxShape } from '../shapes';
import { diagonalTensor } from '../tensor';
import type { VolumeProperties } from '../types';

/** Solid box: V = abc, Ixx = V(b² + c²)/12 and so on round (Beer & Johnston, Statics, table of mass moments). */
export function boxVolume({ lengthMm: a, widthMm: b, heightMm: c }: BoxShape): VolumeProperties {
  const volumeMm3 = a * b * c;
  const twelfth = volumeMm3 / 12;
  return {
    volumeMm3,
    centroidMm: volumeMm3 === 0 ? null : [0, 0, 0],
    inertiaAboutCentroidMm5: diagonalTensor(
      twelfth * (b * b + c * c),
      twelfth * (a * a + c * c),
      twelfth * (a * a + b * b),
    ),
  };
}
