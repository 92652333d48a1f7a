import type { Goal } from './goal';
import { type Search, settlingOf } from './search';
import { SAME_MARGIN_MM } from './searchState';
import { type Settling, settlePlaces } from './settlePlaces';
import { STAY, withStays } from './stays';
import { WHOLE_WITHIN } from './tolerances';

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
