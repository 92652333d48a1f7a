import { roundedArea, roundedSecond } from '../mass/roundedRectangle';

/**
 * The unit section: the square |y| ≤ 1, |z| ≤ 1 with corners rounded by circles of radius `roundness` (1 is the unit
 * disc, 0 the square). Stretched by half width and half height it is any section of a loft, and a straight
 * waterline stays straight, so this is all that a cut through a section needs.
 */

/** Integrals over the wet part of the unit section about its centre, and the length of the waterline in it. */
export interface SectionMoments {
  area: number;
  y: number;
  z: number;
  yy: number;
  yz: number;
  zz: number;
  chord: number;
}

export function emptySection(): SectionMoments {
  return { area: 0, y: 0, z: 0, yy: 0, yz: 0, zz: 0, chord: 0 };
}

/** How far the unit section reaches along the unit vector (ny, nz). */
export function sectionReach(roundness: number, ny: number, nz: number): number {
  return (1 - roundness) * (Math.abs(ny) + Math.abs(nz)) + roundness;
}

/** Writes the whole section's moments. */
export function wholeSection(roundness: number, out: SectionMoments): void {
  out.area = roundedArea(roundness);
  out.y = 0;
  out.z = 0;
  out.yy = roundedSecond(roundness);
  out.yz = 0;
  out.zz = out.yy;
  out.chord = 0;
}

/**
 * Writes the moments of the part of the unit disc with n · p ≥ delta, n = (ny, nz) a unit vector.
 * Circular segment of half angle α, cos α = delta (Bronshtein, Handbook of Mathematics).
 */
export function discCut(ny: number, nz: number, delta: number, out: SectionMoments): void {
  const c = Math.min(Math.max(delta, -1), 1);
  const s = Math.sqrt((1 - c) * (1 + c));
  const area = segmentArea(Math.atan2(s, c));
  const s3 = s * s * s;
  const first = (2 / 3) * s3;
  const along = area / 4 + (c * s3) / 2;
  const across = area / 4 - (c * s3) / 6;
  out.area = area;
  out.y = first * ny;
  out.z = first * nz;
  out.yy = along * ny * ny + across * nz * nz;
  out.zz = along * nz * nz + across * ny * ny;
  out.yz = (along - across) * ny * nz;
  out.chord = 2 * s;
}

/** α − sin α cos α: area of a segment of the unit disc; a series keeps its digits where α is small. */
export function segmentArea(alpha: number): number {
  if (alpha > 0.3) return alpha - Math.sin(alpha) * Math.cos(alpha);
  const q = 4 * alpha * alpha;
  const series = 1 - (q / 20) * (1 - (q / 42) * (1 - (q / 72) * (1 - (q / 110) * (1 - q / 156))));
  return (2 / 3) * alpha ** 3 * series;
}
