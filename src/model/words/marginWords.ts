import type { Balance } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { BAND_BEHIND_MM } from '../judgement/limits';

/**
 * That the stated band reaches behind the neutral point, which takes the trust out of it; empty where it does not, and where
 * the estimate is out of date.
 */
export function bandBehindWords(
  {
    estimate,
    estimateFresh,
    band,
    bandFrom,
  }: Pick<Balance, 'estimate' | 'estimateFresh' | 'band' | 'bandFrom'>,
  length: (mm: number) => string,
): string {
  if (!estimate || !estimateFresh || !band || bandFrom !== 'stated') return '';
  const behindMm = band.aftMm - estimate.neutralPointMm;
  return behindMm > BAND_BEHIND_MM
    ? `The aft limit is ${length(behindMm)} behind the estimated neutral point: do not trust this band.`
    : '';
}

/** Why there is no band to hold the CG against. */
export function noBandWords({ stability }: Aircraft): string {
  return stability?.marginRange
    ? 'The band that the margin makes waits for the estimate of the neutral point.'
    : 'There is no target band to hold it against; give one on the aircraft’s card.';
}
