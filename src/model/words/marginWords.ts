import { stepsDown } from '../../engine/geometry/wholeSteps';
import type { Balance } from '../balance/balance';
import type { Aircraft } from '../document/types';

/** What the verdict says of the estimate; empty where there is nothing to say. */
export interface MarginWords {
  /** That the stated band reaches behind the neutral point, which takes the trust out of it. */
  readonly warning: string;
  /** The least static margin over the burn. */
  readonly margin: string;
  readonly unstable: boolean;
}

const NO_WORDS: MarginWords = { warning: '', margin: '', unstable: false };

/** Less than this is within what the estimate itself is good for, mm. */
const WORTH_SAYING_MM = 0.5;

/** Puts the static margin into words, always as an estimate; an estimate that is out of date says nothing. */
export function marginWords(
  { margin, estimate, estimateFresh, band, bandFrom, travel }: Balance,
  liquid: string,
  length: (mm: number) => string,
): MarginWords {
  if (!estimate || !estimateFresh || !margin) return NO_WORDS;
  const behindMm = bandFrom === 'stated' && band ? band.aftMm - estimate.neutralPointMm : 0;
  const unstable = margin.leastPct < 0;
  const when = travel.length > 1 ? `, ${moment(margin.atFuelFraction, liquid)}` : '';
  // "At least" must not be rounded up, nor a margin that is missing be rounded away.
  const wholePct = when || unstable ? stepsDown(margin.leastPct) : Math.round(margin.leastPct);
  const figure = `${Math.abs(wholePct)} % MAC`;
  return {
    warning:
      behindMm > WORTH_SAYING_MM
        ? `The aft limit is ${length(behindMm)} behind the estimated neutral point: do not trust this band.`
        : '',
    margin: unstable
      ? `The CG is ${figure} behind the estimated neutral point${when}.`
      : `Estimated static margin ${when ? 'at least ' : ''}${figure}${when}.`,
    unstable,
  };
}

function moment(fuelFraction: number, liquid: string): string {
  if (fuelFraction > 0.995) return 'full';
  return fuelFraction < 0.005 ? 'dry' : `at ${Math.round(fuelFraction * 100)} % ${liquid}`;
}

/** Why there is no band to hold the CG against. */
export function noBandWords({ stability }: Aircraft): string {
  return stability?.marginRange
    ? 'The band that the margin makes waits for the estimate of the neutral point.'
    : 'There is no target band to hold it against; give one on the aircraft’s card.';
}
