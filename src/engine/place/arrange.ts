import { fewestMoves } from './fewestMoves';
import { asItStands, askedAgain, raced, withoutOverlap } from './leastBallast';
import { type ArrangeOrder, type Search, searchOf } from './search';
import type { ArrangeAnswer } from './searchState';
import { atOnce } from './sets/atOnce';
import { bySets, hasManyWays } from './sets/bySets';
import { shrunkBand } from './shrunkBand';
import type { PlaceProblem } from './types';
import { widestMargin } from './widestMargin';

export type { ArrangeOrder } from './search';

function bySetsWhereMany(search: Search): void {
  if (hasManyWays(search.problem)) bySets(search);
}

/** The stages of a search for the least ballast; each may prove it, or that there is no arrangement. */
const BALLAST: readonly ((search: Search) => void)[] = [
  asItStands,
  atOnce,
  bySetsWhereMany,
  withoutOverlap,
  raced,
  askedAgain,
];
/** What comes after, among arrangements with that ballast. */
const THEN: readonly ((search: Search) => void)[] = [widestMargin, fewestMoves];

/**
 * The arrangement with the margin that is wanted where one can be had, among those with the least ballast, among those the
 * one with the largest margin, among those the one with the fewest moves: each aim is proved by itself, or said not to be.
 * Every arrangement returned has been checked without the solver.
 */
export function arrange(asked: PlaceProblem, order: ArrangeOrder): ArrangeAnswer {
  const { wantedMarginMm: wantedMm = 0, ...plain } = asked;
  const band = wantedMm > 0 ? shrunkBand(plain.band, wantedMm) : null;
  if (!band) return arrangedIn(plain, order);
  const startMs = order.now();
  const wider = (answer: ArrangeAnswer) => inWholeBand(answer, wantedMm);
  const { onProgress } = order;
  const answer = arrangedIn(
    { ...plain, band },
    { ...order, ...(onProgress ? { onProgress: (progress) => onProgress(wider(progress)) } : {}) },
  );
  if (answer.best || answer.boundG < Number.POSITIVE_INFINITY) return wider(answer);
  return arrangedIn(plain, { ...order, timeMs: Math.max(1, order.timeMs - (order.now() - startMs)) });
}

function arrangedIn(asked: PlaceProblem, order: ArrangeOrder): ArrangeAnswer {
  const search = searchOf(asked, order);
  const { state } = search;
  for (const stage of BALLAST) {
    stage(search);
    if (state.boundG === Number.POSITIVE_INFINITY) return state.answer();
  }
  if (state.best) for (const stage of THEN) stage(search);
  return state.answer();
}

/** What was found in a band shrunk by a margin, told against the whole band. */
function inWholeBand(answer: ArrangeAnswer, byMm: number): ArrangeAnswer {
  const { best, marginBoundMm } = answer;
  return {
    ...answer,
    best: best && { ...best, marginMm: best.marginMm + byMm },
    marginBoundMm: marginBoundMm === null ? null : marginBoundMm + byMm,
    keptMarginMm: byMm,
  };
}
