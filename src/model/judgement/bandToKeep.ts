import type { Band } from '../../engine/balance/band';
import { perObjects } from '../../engine/memory/memory';
import type { Balance } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { CERTAIN_MM } from '../loads/certain';
import { marginWish, TINY_MARGIN_PCT } from './limits';

/** What a band to keep comes from: the limits alone, the estimate alone, or limits made narrower by a margin. */
export type KeptFor = 'limits' | 'estimate' | 'margin wanted' | 'usual margin';

export interface KeptBand extends Band {
  readonly keptFor: KeptFor;
}

/**
 * The stations, mm, that keep everything that the judgement holds a CG against: the band, and the estimated static margin
 * beside it, the one that was wanted or else the least that is usual. Where limits and usual margin exclude each other, at
 * least a margin that is not tiny. With liquid aboard the aft end is short of them by what the load states are certain to,
 * for so much the judgement holds against it. Aft ahead of forward where nothing keeps both; null without a band. Whatever
 * offers a place holds it against this; the very same band again for the same balance.
 */
export const bandToKeep = perObjects((balance: Balance, aircraft: Aircraft): KeptBand | null => {
  const kept = keptBand(aircraft, balance);
  const certainMm = aircraft.tanks.length > 0 ? CERTAIN_MM : 0;
  return kept && { ...kept, aftMm: kept.aftMm - certainMm };
});

function keptBand(aircraft: Aircraft, balance: Balance): KeptBand | null {
  const { band, bandFrom, estimatedBand, estimate, estimateFresh } = balance;
  if (!band) return null;
  const aftFor = (leastPct: number) =>
    estimate && estimateFresh
      ? Math.min(band.aftMm, estimate.neutralPointMm - (leastPct / 100) * estimate.macMm)
      : band.aftMm;
  const notTinyMm = aftFor(TINY_MARGIN_PCT);
  if (bandFrom === 'estimate') return { forwardMm: band.forwardMm, aftMm: notTinyMm, keptFor: 'estimate' };
  if (estimatedBand) {
    return {
      forwardMm: Math.max(band.forwardMm, estimatedBand.forwardMm),
      aftMm: Math.min(notTinyMm, estimatedBand.aftMm),
      keptFor: 'margin wanted',
    };
  }
  const usualMm = aftFor(Math.max(TINY_MARGIN_PCT, marginWish(aircraft).leastPct));
  const aftMm = usualMm >= band.forwardMm ? usualMm : notTinyMm;
  return { forwardMm: band.forwardMm, aftMm, keptFor: aftMm < band.aftMm ? 'usual margin' : 'limits' };
}
