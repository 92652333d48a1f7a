import { byBays } from '../byBays';
import type { Goal } from '../goal';
import type { Search } from '../search';
import { SAME_MARGIN_MM } from '../searchState';
import { SAME_MM } from '../tolerances';
import { setBound, setsWithin } from './setBound';
import { setPatterns } from './setPatterns';
import type { SetQuestion } from './setProgram';

interface MarginOrder {
  readonly untilMs: number;
  readonly isReached: () => boolean;
  /** Told of what no margin can exceed, mm. */
  readonly lower: (toMm: number) => void;
}

/** Of the time for the bound. */
const BOUND_SHARE = 0.4;
/** How much farther from the bound sets are taken each time. */
const WIDER = 4;

/**
 * The largest margin with the ballast that there is, by sets of parts over rooms: its bound, and among all sets that come
 * within so much of it, then within more, an arrangement that reaches it.
 */
export function marginBySets(
  search: Search,
  goal: Extract<Goal, { seek: 'most margin' }>,
  { untilMs, isReached, lower }: MarginOrder,
): void {
  const { problem, rows, rooms, packer, solve, state, order, shouldStop } = search;
  const question: SetQuestion = { problem, goal, rows, rooms };
  const boundUntilMs = order.now() + (untilMs - order.now()) * BOUND_SHARE;
  const found = setBound(question, {
    solve,
    over: () => shouldStop() || order.now() > boundUntilMs,
    onBound: (bound) => lower(-bound),
  });
  if (!found) return;
  const packed = new Map<string, readonly number[] | null>();
  const open = () => !isReached() && !shouldStop() && order.now() < untilMs;
  for (let withinMm = SAME_MARGIN_MM; open(); withinMm *= WIDER) {
    const target = Math.min(found.bound + withinMm, -state.best!.marginMm);
    const sets = setsWithin(found.priced, target - found.bound + SAME_MM);
    if (!sets) return;
    let reached = found.bound;
    byBays(search, goal, {
      ...setPatterns(question, packer, sets, packed),
      untilMs,
      knownBound: found.bound,
      isEnough: () => isReached() || reached >= target,
      onBound: (bound) => {
        reached = Math.max(reached, Math.min(bound, target));
        lower(-reached);
      },
    });
    if (reached < target) return;
  }
}
