import { PICTURE_95 } from './certainty';

const FACTORS = [1, 2, 5, 10, 20, 50, 100] as const;

/**
 * How many times enlarged the halo of the CG is drawn so that it can be seen beside the disc: a half axis of up to a
 * sixteenth of the aircraft's length. @param sigmaMm the greatest standard uncertainty of a coordinate
 */
export function haloFactor(sigmaMm: number, lengthMm: number): number {
  const wanted = lengthMm / 16 / (PICTURE_95 * Math.max(sigmaMm, 1e-6));
  return FACTORS.findLast((factor) => factor <= wanted) ?? 1;
}
