import { FORGIVEN_MM } from '../../engine/place/check';
import { SAME_MARGIN_MM } from '../../engine/place/searchState';
import { SAME_G, SAME_MM } from '../../engine/place/tolerances';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import type { Rechecked } from './applyArrangement';
import type { Refusal } from './fitRefusals';

/** An arrangement and the problem whose places it names. */
export interface Candidate {
  readonly best: Arrangement;
  readonly problem: PlaceProblem;
  /** The margin that was wanted and is kept, mm; 0 where it is not. */
  readonly keptMarginMm: number;
}

/** The best arrangement that nothing was said against, of all that were asked about. */
export interface Soundest {
  best(): Candidate | null;
  /**
   * Takes an arrangement if it is better than what there is and nothing is said against it, ways in among it. What is said
   * comes back; nothing where it was taken, null where it was no better and so not asked about.
   */
  take(candidate: Candidate): readonly Refusal[] | null;
}

/** Said of what does not keep the margin that certainty asks for. */
const NOT_SURE: readonly Refusal[] = [
  { what: 'balance', ids: [], sentence: 'The CG is not so far inside the limits as certainty asks.' },
];

/** Said of what lies nearer to a limit on the aircraft than in the problem: foam left behind, a travel seen more finely. */
const NOT_KEPT: readonly Refusal[] = [
  { what: 'balance', ids: [], sentence: 'The margin that was asked for is not kept.' },
];

/**
 * Nothing asked yet. `leastMarginMm` is what certainty asks for; each that is taken is told of, with no more margin than
 * the aircraft has.
 */
export function soundestSoFar(
  recheck: (
    best: Pick<Arrangement, 'placed' | 'ballast'>,
    problem: PlaceProblem,
  ) => Pick<Rechecked, 'refusals' | 'marginMm'>,
  leastMarginMm: number,
  onTaken: (taken: Candidate) => void,
): Soundest {
  let kept: Candidate | null = null;
  return {
    best: () => kept,
    take(candidate) {
      if (candidate.best.marginMm < leastMarginMm - SAME_MM) return NOT_SURE;
      if (!isBetter(candidate, kept)) return null;
      const { refusals, marginMm } = recheck(candidate.best, candidate.problem);
      if (refusals.length > 0) return refusals;
      const leastMm = Math.max(candidate.keptMarginMm, leastMarginMm);
      if (marginMm < leastMm - 10 * FORGIVEN_MM) return NOT_KEPT;
      const best = { ...candidate.best, marginMm: Math.min(candidate.best.marginMm, marginMm) };
      const seen = { ...candidate, best };
      if (!isBetter(seen, kept)) return NOT_KEPT;
      kept = seen;
      onTaken(seen);
      return [];
    },
  };
}

/** The wanted margin first, then less ballast, then more margin, then fewer moves. */
function isBetter(candidate: Candidate, than: Candidate | null): boolean {
  if (!than || candidate.keptMarginMm !== than.keptMarginMm)
    return !than || candidate.keptMarginMm > than.keptMarginMm;
  const lessG = than.best.ballastG - candidate.best.ballastG;
  if (Math.abs(lessG) > SAME_G) return lessG > 0;
  const moreMm = candidate.best.marginMm - than.best.marginMm;
  return Math.abs(moreMm) > SAME_MARGIN_MM ? moreMm > 0 : candidate.best.moves < than.best.moves;
}
