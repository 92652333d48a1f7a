import { lengthStepsMm, shiftWords, stepped } from './figures';
import type { Goal } from './goal';
import { massesOf } from './linear';
import { type FoundMove, moveEdits, shortestMove, withinAircraft } from './moveSearch';
import { type Mover, moverName } from './movers';
import { applyRemedy, type Remedy, type RemedyEdit } from './remedy';
import { fitsThere, statesOf, type Workshop } from './trial';

/** So many things that pull most are tried as the first of two. */
const FIRST_MOVERS = 5;

/**
 * Two things moved: one of those that pull most as far as it goes the way that helps, then another by as little as
 * will do. Not every pair of places is tried, so nothing may be said of what it does not find.
 */
export function twoMoves(shop: Workshop, goal: Goal, movers: readonly Mover[]): Remedy | null {
  const way = helpfulWay(shop, goal);
  const whole = movers.filter(({ halfOfPair }) => !halfOfPair);
  const pullG = (mover: Mover) =>
    Math.max(...shop.states.flatMap((state) => massesOf(state, new Set(mover.items.map(({ id }) => id)))));
  const firsts = [...whole].sort((a, b) => pullG(b) - pullG(a)).slice(0, FIRST_MOVERS);
  for (const first of firsts) {
    const shiftMm = farthestFree(shop, first, goal.axis, way);
    if (shiftMm === 0) continue;
    const edits = moveEdits(first, goal.axis, shiftMm);
    const moved: Workshop = {
      ...shop,
      states: statesOf(applyRemedy(shop.aircraft, { edits }), shop.given),
    };
    const second = shortestOf(moved, goal, whole.filter((mover) => !overlaps(mover, first)), edits);
    if (!second) continue;
    const words = `Move ${moverName(first)} ${shiftWords(shiftMm, goal.axis, false, shop.spoken)}, ${lowered(second.remedy.words)}`;
    return { kind: 'move-two', edits: [...edits, ...second.remedy.edits], words, result: second.remedy.result };
  }
  return null;
}

const lowered = (words: string) => words.replace(/^Move /, '');

const overlaps = (a: Mover, b: Mover) => a.items.some((item) => b.items.includes(item));

/** The shortest of the moves that do it, half of a pair only where nothing whole does. */
export function shortestOf(
  shop: Workshop,
  goal: Goal,
  movers: readonly Mover[],
  first: readonly RemedyEdit[] = [],
): FoundMove | null {
  for (const half of [false, true]) {
    let best: FoundMove | null = null;
    for (const mover of movers.filter(({ halfOfPair }) => halfOfPair === half)) {
      const longestMm: number = best ? Math.abs(best.shiftMm) - 1e-6 : Number.POSITIVE_INFINITY;
      best = shortestMove(shop, goal, mover, longestMm, first) ?? best;
    }
    if (best) return best;
  }
  return null;
}

/** Forward where the CG is too far aft, and the other way round. */
export function helpfulWay({ states }: Workshop, { axis, lowMm, highMm }: Goal): 1 | -1 {
  let [over, under] = [0, 0];
  for (const { balance } of states) {
    for (const { cgMm } of balance.travel) {
      over = Math.max(over, cgMm[axis] - highMm);
      under = Math.max(under, lowMm - cgMm[axis]);
    }
  }
  return over >= under ? -1 : 1;
}

/** How far things can go one way and still fit, in whole steps, mm; 0 for not at all. */
function farthestFree(shop: Workshop, mover: Mover, axis: 0 | 1, way: 1 | -1): number {
  const { fromMm, toMm } = withinAircraft(shop, mover, axis);
  const [step] = lengthStepsMm(shop.spoken);
  let count = Math.floor((way > 0 ? toMm : -fromMm) / step);
  while (count > 0 && shop.tries.left > 0) {
    shop.tries.left -= 1;
    const shiftMm = way * stepped(count, step);
    const free = fitsThere(shop, moveEdits(mover, axis, shiftMm));
    if (free.ok) return shiftMm;
    count -= Math.max(1, Math.ceil(free.atLeastMm / step));
  }
  return 0;
}
