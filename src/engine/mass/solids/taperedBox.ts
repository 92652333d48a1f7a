import { gaussRule } from '../gauss';
import { noMoments, volumeFromMoments } from '../moments';
import type { TaperedBoxShape } from '../shapes';
import type { VolumeProperties } from '../types';

const rule = gaussRule(3);

/** Solid tapered box: rectangles of linear width and height along x; degree 4 at most, so the rule is exact. */
export function taperedBoxVolume(shape: TaperedBoxShape): VolumeProperties {
  const { lengthMm, frontWidthMm, frontHeightMm, rearWidthMm, rearHeightMm } = shape;
  const sums = noMoments();
  for (const { at, weight } of rule) {
    const x = lengthMm * (at - 0.5);
    const width = frontWidthMm + (rearWidthMm - frontWidthMm) * at;
    const height = frontHeightMm + (rearHeightMm - frontHeightMm) * at;
    const dv = weight * lengthMm * width * height;
    sums.m += dv;
    sums.x += dv * x;
    sums.xx += dv * x * x;
    sums.yy += (dv * width * width) / 12;
    sums.zz += (dv * height * height) / 12;
  }
  return volumeFromMoments(sums, [0, 0, 0]);
}
