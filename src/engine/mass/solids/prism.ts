import { polygonMoments } from '../../geometry/polygon';
import { noMoments, volumeFromMoments } from '../moments';
import type { PrismShape } from '../shapes';
import type { VolumeProperties } from '../types';

/** Solid prism: the polygon's area moments drawn out along x. */
export function prismVolume({ lengthMm, outlineMm }: PrismShape): VolumeProperties {
  const [y0, z0] = outlineMm[0] ?? [0, 0];
  const polygon = polygonMoments(outlineMm, y0, z0);
  const drawn = polygon.area < 0 ? -lengthMm : lengthMm;
  const sums = noMoments();
  sums.m = drawn * polygon.area;
  sums.y = drawn * polygon.u;
  sums.z = drawn * polygon.v;
  sums.xx = (sums.m * lengthMm * lengthMm) / 12;
  sums.yy = drawn * polygon.uu;
  sums.zz = drawn * polygon.vv;
  sums.yz = drawn * polygon.uv;
  return volumeFromMoments(sums, [0, y0, z0]);
}
