import { byBays } from './byBays';
import type { Goal } from './goal';
import { gapFor, type Search } from './search';
import { SAME_MARGIN_MM } from './searchState';
import { hasManyWays } from './sets/bySets';
import { marginBySets } from './sets/marginBySets';
import { settlePlaces } from './settlePlaces';

/** Of all arrangements with the least ballast the one with the largest margin. */
export function widestMargin(search: Search): void {
  const { problem, state, order, mostMoves, leftMs, shouldStop } = search;
  if (!state.best) return;
  const { band } = problem;
  const goal: Extract<Goal, { seek: 'most margin' }> = { seek: 'most margin', ballastG: state.best.ballastG };
  let boundMm = (band.aftMm - band.forwardMm) / 2;
  const isReached = () => state.best!.marginMm >= boundMm - SAME_MARGIN_MM;
  const lower = (toMm: number) => {
    if (Number.isFinite(toMm)) boundMm = Math.min(boundMm, Math.max(toMm, state.best!.marginMm));
    state.marginBoundMm = boundMm;
  };
  lower(boundMm);
  const budgetMs = leftMs() * 0.4;
  if (!isReached() && !shouldStop() && hasManyWays(problem)) {
    marginBySets(search, goal, { untilMs: order.now() + budgetMs, isReached, lower });
  } else if (!isReached() && !shouldStop()) {
    byBays(search, goal, {
      patterns: search.patterns(budgetMs / 2),
      untilMs: order.now() + budgetMs,
      knownBound: -boundMm,
      isEnough: isReached,
      onBound: (bound) => lower(bound === Number.POSITIVE_INFINITY ? state.best!.marginMm : -bound),
    });
  }
  if (!isReached() && !shouldStop()) {
    const { answer, arrangement } = settlePlaces(
      search,
      goal,
      { timeMs: leftMs() * 0.5, gap: gapFor(goal, 0), shouldStop },
      { mostMoves },
      { marginMm: state.best.marginMm + SAME_MARGIN_MM / 2 },
    );
    const asked = state.best.marginMm + SAME_MARGIN_MM / 2;
    state.take(arrangement);
    lower(answer.status === 'infeasible' ? asked : -answer.bound);
  }
  state.marginProved = isReached();
  order.onProgress?.(state.answer());
}
