import { normalBelow } from '../balance/bivariateNormal';
import { type ArrangeOrder, arrange } from './arrange';
import type { ArrangeAnswer } from './searchState';
import { shrunkBand } from './shrunkBand';
import { SAME_G } from './tolerances';
import type { PlaceProblem } from './types';

/** How many standard uncertainties the CG must be inside each limit, for a probability of being inside both. */
export function sigmasFor(probability: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`Probability: expected more than 0 and less than 1, got ${probability}.`);
  }
  // Half of what may fail for each limit: then both hold at least so often, however their errors are related.
  const wanted = (1 + probability) / 2;
  let [low, high] = [0, 40];
  while (high - low > 1e-12) {
    const mid = (low + high) / 2;
    if (normalBelow(mid) < wanted) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}

export interface RobustAnswer {
  /** The margin that the probability asks for, mm. */
  readonly marginMm: number;
  readonly sure: ArrangeAnswer | null;
  readonly plain: ArrangeAnswer;
  /** What the certainty costs in ballast, g; null when there is no such arrangement. */
  readonly priceG: number | null;
  readonly sentence: string;
}

/**
 * The arrangement that lies in the band with at least a probability, beside the one that takes the figures at their word.
 * `sigmaMm` is the standard uncertainty of the CG's station, the largest over the load states.
 */
export function arrangeSurely(
  problem: PlaceProblem,
  sigmaMm: number,
  probability: number,
  order: ArrangeOrder,
): RobustAnswer {
  const marginMm = sigmasFor(probability) * sigmaMm;
  const timeMs = order.timeMs / 2;
  const band = shrunkBand(problem.band, marginMm);
  const sure = band && arrange({ ...problem, band }, { ...order, timeMs });
  const plain = noDearer(arrange(problem, { ...order, timeMs }), sure, marginMm);
  const priceG = sure?.best && plain.best ? sure.best.ballastG - plain.best.ballastG : null;
  const percent = `${Math.round(probability * 1000) / 10} %`;
  const sentence =
    priceG === null
      ? `No arrangement found lies in the band with ${percent} certainty.`
      : `${percent} certainty costs ${sure?.proved && plain.proved ? '' : 'about '}${Math.round(priceG * 10) / 10} g: the CG must lie ${marginMm.toFixed(1)} mm inside the limits.`;
  return { marginMm, sure, plain, priceG, sentence };
}

/** What is sure is also within the plain limits: where time ran out before that was found, it is the plain answer too. */
function noDearer(plain: ArrangeAnswer, sure: ArrangeAnswer | null, marginMm: number): ArrangeAnswer {
  const best = sure?.best;
  if (!best || (plain.best && plain.best.ballastG <= best.ballastG)) return plain;
  return {
    ...plain,
    best: { ...best, marginMm: best.marginMm + marginMm },
    gapG: Math.max(0, best.ballastG - plain.boundG),
    proved: best.ballastG <= plain.boundG + SAME_G,
    marginProved: false,
    movesProved: false,
  };
}
