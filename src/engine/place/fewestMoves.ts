import type { Goal } from './goal';
import { type ArrangeOrder, type Search, searchOf, settlingOf } from './search';
import { SAME_MARGIN_MM } from './searchState';
import { type Settling, settlePlaces } from './settlePlaces';
import { STAY, withStays } from './stays';
import { WHOLE_WITHIN } from './tolerances';
import type { Arrangement, PlaceProblem } from './types';

/** Of all arrangements with that ballast and that margin the one in which the fewest parts leave their place. */
export function fewestMoves(search: Search): void {
  const { asked, state, leftMs, shouldStop } = search;
  if (!state.best) return;
  const { ballastG, marginMm } = state.best;
  const goal: Goal = { seek: 'fewest moves', ballastG, marginMm: marginMm - SAME_MARGIN_MM / 2 };
  const settling = settlingOf(search, withStays(asked));
  const must = asked.parts.filter(({ present }) => present.optionId === null).length;
  const isLeast = (proved: number) => state.best!.moves <= proved;
  if (isLeast(must)) {
    state.movesProved = true;
    return;
  }
  // Few moves are quickly tried one by one, and each that fails is seen to fail.
  let least = must;
  for (const moves of [must, must + 1]) {
    if (shouldStop() || isLeast(moves)) break;
    if (!tryFew(search, settling, goal, moves)) break;
    least = moves + 1;
  }
  if (!isLeast(least) && !shouldStop()) {
    const fewer = settlePlaces(
      settling,
      goal,
      { timeMs: leftMs(), gap: 0.999, enough: least + WHOLE_WITHIN, shouldStop },
      { mostMoves: state.best.moves - 1 },
    );
    state.take(fewer.arrangement);
    if (fewer.answer.status === 'infeasible') least = state.best.moves;
    else least = Math.max(least, Math.ceil(fewer.answer.bound - WHOLE_WITHIN));
  }
  state.movesProved = isLeast(least);
}

/** What is known of the moves of an arrangement that was found elsewhere. */
export interface Fewest {
  /** None with its ballast and its margin moves fewer parts. */
  readonly proved: boolean;
  /** One that does, by the problem's own check; null where none was found. */
  readonly fewer: Arrangement | null;
}

/** Looks for fewer moves than an arrangement makes, with its ballast and its margin, or for the proof that there are none. */
export function fewestFor(problem: PlaceProblem, best: Arrangement, order: ArrangeOrder): Fewest {
  const { wantedMarginMm: _wanted, ...plain } = problem;
  const search = searchOf(plain, order);
  search.state.best = best;
  fewestMoves(search);
  const { best: found, movesProved } = search.state;
  return { proved: movesProved, fewer: found === best ? null : found };
}

/** Tries every choice of so many parts to move; true when none of them does it, each proved. */
function tryFew(search: Search, settling: Settling, goal: Goal, moves: number): boolean {
  const { problem } = settling;
  const { state, leftMs, shouldStop } = search;
  const bound = problem.parts.flatMap(({ present }, i) => (present.optionId === null ? [i] : []));
  const others = problem.parts.flatMap((_, i) => (bound.includes(i) ? [] : [i]));
  const sets = moves === bound.length ? [bound] : others.map((extra) => [...bound, extra]);
  let allFail = true;
  for (const free of sets) {
    if (shouldStop()) return false;
    const choices = problem.parts.map(({ options }, part) =>
      free.includes(part) ? undefined : { part, option: options.findIndex(({ id }) => id === STAY) },
    );
    const { answer, arrangement } = settlePlaces(
      settling,
      goal,
      { timeMs: leftMs() / 2, gap: 0.999, shouldStop },
      { choices },
    );
    state.take(arrangement);
    if (arrangement) return false;
    if (answer.status !== 'infeasible') allFail = false;
  }
  return allFail;
}
