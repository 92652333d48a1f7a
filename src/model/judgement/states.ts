import { TOUCH_MM } from '../../engine/balance/band';
import type { TravelPoint } from '../../engine/balance/travel';
import { staticMarginPct } from '../../engine/wing/margin';
import type { Positions } from '../airframe/loadSwitches';
import type { StateBalance } from './flyingStates';
import type { CgPoint, JudgedBand, Judgement, StateJudgement } from './types';

/** What a CG is held against. */
export interface Against {
  readonly band: JudgedBand | null;
  /** Null where the margin is not known. */
  readonly neutralPoint: { readonly stationMm: number; readonly macMm: number } | null;
}

/** How far a station lies outside a band: aft of it +, ahead of it −, 0 inside, mm. */
function outsideBandMm(
  stationMm: number,
  band: { readonly forwardMm: number; readonly aftMm: number },
): number {
  const [over, under] = [stationMm - band.aftMm, stationMm - band.forwardMm];
  if (over > TOUCH_MM) return over;
  return under < -TOUCH_MM ? under : 0;
}

/**
 * A point of a travel, or an extreme of the load states, as it lies. Aft is the dangerous side: an aft end that is certain
 * to so much only is held against the limits as if the CG lay so much farther aft.
 */
export function cgPoint(
  { cgMm, massG, fuelFraction }: TravelPoint,
  positions: Positions,
  { band, neutralPoint }: Against,
  maybeAftMm = 0,
): CgPoint {
  const atMm = cgMm[0] + maybeAftMm;
  const overMm = band && Math.max(0, outsideBandMm(atMm, band));
  return {
    positions,
    fuelFraction,
    massG,
    cgMm,
    maybeAftMm,
    outsideMm: band && (overMm || outsideBandMm(cgMm[0], band)),
    marginPct: neutralPoint && staticMarginPct(neutralPoint.stationMm, atMm, neutralPoint.macMm),
  };
}

/** Whether one lies farther out than the farthest so far. One that is no number is the farthest, and stays so. */
export const isFarther = (out: number, farthest: number): boolean =>
  !Number.isNaN(farthest) && !(out <= farthest);

/** One load state over its burn; null where it has no CG. */
export function judgedState(
  { balance: { travel, travelWithinMm }, positions, flies }: StateBalance,
  against: Against,
): StateJudgement | null {
  const [full, dry] = [travel[0], travel.at(-1)];
  if (!full || !dry) return null;
  let [foremost, aftmost, lateral] = [full, full, full];
  for (const point of travel) {
    if (isFarther(-point.cgMm[0], -foremost.cgMm[0])) foremost = point;
    if (isFarther(point.cgMm[0], aftmost.cgMm[0])) aftmost = point;
    if (isFarther(Math.abs(point.cgMm[1]), Math.abs(lateral.cgMm[1]))) lateral = point;
  }
  const at = (point: TravelPoint, maybeAftMm = 0) => cgPoint(point, positions, against, maybeAftMm);
  return {
    positions,
    flies,
    full: at(full),
    dry: at(dry),
    foremost: at(foremost),
    aftmost: at(aftmost, travelWithinMm),
    mostLateral: at(lateral),
    burns: travel.length > 1,
  };
}

/** Whether every figure of a point is one. */
export const isFinitePoint = ({ cgMm, massG }: Pick<CgPoint, 'cgMm' | 'massG'>): boolean =>
  cgMm.every(Number.isFinite) && Number.isFinite(massG);

/** The CG of all load states that lies farthest out, aft before forward; without a band the aftmost. Null without a CG. */
export function farthestOut({ foremost, aftmost, band }: Judgement): CgPoint | null {
  if (!foremost || !aftmost) return null;
  if (!band) return aftmost;
  const toAftMm = band.aftMm - aftmost.cgMm[0];
  return toAftMm < 0 || toAftMm <= foremost.cgMm[0] - band.forwardMm ? aftmost : foremost;
}
