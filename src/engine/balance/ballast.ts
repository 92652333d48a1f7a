import type { Vec3 } from '../geometry/types';
import type { Band } from './band';
import type { TravelPoint } from './travel';

/**
 * Ballast at a station that brings a CG to a limit: W · (distance out) / (arm from the ballast to the limit), g.
 * W is the mass without it. Null where ballast cannot do it, standing at the limit or on its wrong side.
 * Source: FAA Aviation Maintenance Technician Handbook – General, p. 4-23.
 */
export function ballastToLimit(
  massG: number,
  cgMm: number,
  limitMm: number,
  ballastMm: number,
): number | null {
  const grams = (massG * (cgMm - limitMm)) / (limitMm - ballastMm);
  return Number.isFinite(grams) && grams >= 0 ? grams : null;
}

/**
 * The masses that, added at a station, bring every point of the travel into the band: from the least to
 * the most, g. Each limit is a linear bound on the mass, m·(A − b) ≥ W·(x − A) and m·(b − F) ≥ W·(F − x).
 * Null when no mass there does it.
 */
export function ballastRange(
  travel: readonly TravelPoint[],
  band: Band,
  stationMm: number,
): { readonly leastG: number; readonly mostG: number } | null {
  let leastG = 0;
  let mostG = Number.POSITIVE_INFINITY;
  const require = (perGram: number, needed: number) => {
    if (perGram > 0) leastG = Math.max(leastG, needed / perGram);
    else if (perGram < 0) mostG = Math.min(mostG, needed / perGram);
    else if (needed > 0) mostG = Number.NEGATIVE_INFINITY;
  };
  for (const { massG, cgMm } of travel) {
    require(band.aftMm - stationMm, massG * (cgMm[0] - band.aftMm));
    require(stationMm - band.forwardMm, massG * (band.forwardMm - cgMm[0]));
  }
  return leastG <= mostG ? { leastG, mostG } : null;
}

/** The mass at the light wing tip that brings a lateral offset to zero: W·|y| / half span, g. */
export function tipMassForLateral(massG: number, lateralMm: number, halfSpanMm: number): number {
  return halfSpanMm > 0 ? (massG * Math.abs(lateralMm)) / halfSpanMm : 0;
}

/** A mass at a wing tip that levels, and what it does to the CG's station beside. */
export interface TipBallast {
  readonly massG: number;
  /** How far it moves the CG, aft +, mm. */
  readonly stationShiftMm: number;
}

/**
 * The mass that, put at a point out on the light side, brings the CG onto the plane of symmetry: W·y + m·y_tip = 0. It moves
 * the CG along by m·(x_tip − x)/(W + m) as well, aft where the tip is swept back. Null for a point on the heavy side or on
 * the plane of symmetry.
 */
export function tipBallast(massG: number, cgMm: Vec3, tipMm: Vec3): TipBallast | null {
  if (cgMm[1] === 0) return { massG: 0, stationShiftMm: 0 };
  const addedG = (-massG * cgMm[1]) / tipMm[1];
  if (!(addedG > 0) || !Number.isFinite(addedG)) return null;
  return { massG: addedG, stationShiftMm: stationShiftMm(massG, cgMm, addedG, tipMm) };
}

/** How far a mass that is put somewhere moves the CG's station, aft +, mm: m·(x_m − x)/(W + m). */
export const stationShiftMm = (massG: number, cgMm: Vec3, addedG: number, atMm: Vec3): number =>
  (addedG * (atMm[0] - cgMm[0])) / (massG + addedG);
