import { perObjects } from '../../engine/memory/memory';
import type { ArrangeAnswer } from '../../engine/place/searchState';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import type { Refusal } from './fitRefusals';
import { isWorth, type LittleMoved } from './littleMoved';

/** Said of what does not keep the margin that certainty asks for. */
const NOT_SURE: readonly Refusal[] = [
  { what: 'balance', ids: [], sentence: 'The CG is not so far inside the limits as certainty asks.' },
];

/** The best arrangement that nothing was said against, of all that were asked about. */
export interface Soundest {
  best(): LittleMoved | null;
  /** What is said against an arrangement, ways in among it; worked out once, and kept where it is nothing. */
  ask(best: Arrangement, problem: PlaceProblem, keptMarginMm: number): readonly Refusal[];
  isSound(best: Arrangement, problem: PlaceProblem): boolean;
  /** Whether an arrangement under way is better than what is known to be sound by more than its margin. */
  isWorthAsking(progress: ArrangeAnswer): boolean;
}

/**
 * Nothing asked yet. Ways in take long, so what is no better than what is there already is not asked about, and the same
 * places are asked about once. `leastMarginMm` is what certainty asks for.
 */
export function soundestSoFar(
  refusalsOf: (best: Pick<Arrangement, 'placed' | 'ballast'>, problem: PlaceProblem) => readonly Refusal[],
  leastMarginMm: number,
): Soundest {
  let kept: LittleMoved | null = null;
  const said = perObjects(
    (placed: Arrangement['placed'], ballast: Arrangement['ballast'], problem: PlaceProblem) =>
      refusalsOf({ placed, ballast }, problem),
  );
  const refusals = ({ placed, ballast, marginMm }: Arrangement, problem: PlaceProblem) =>
    marginMm < leastMarginMm - 1e-6 ? NOT_SURE : said(placed, ballast, problem);
  return {
    best: () => kept,
    ask(best, problem, keptMarginMm) {
      const found = refusals(best, problem);
      const one = { best, problem, keptMarginMm };
      if (found.length === 0 && isWorth(one, kept)) kept = one;
      return found;
    },
    isSound: (best, problem) => refusals(best, problem).length === 0,
    isWorthAsking: ({ best, keptMarginMm, proved }) => {
      if (!kept || proved) return true;
      return keptMarginMm > kept.keptMarginMm || best!.ballastG < kept.best.ballastG - 1e-6;
    },
  };
}
