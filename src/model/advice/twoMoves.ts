import { itemExtent } from '../airframe/extent';
import { hulls } from '../airframe/solids';
import { lengthStepsMm, stepped } from './figures';
import type { Goal } from './goal';
import { helpfulWay } from './helpfulWay';
import { massesOf } from './linear';
import type { Mover } from './movers';
import { type FoundMove, moveEdits, shortestMove, shortestOf, withinAircraft } from './moveSearch';
import { applyRemedy, type Remedy, type RemedyEdit } from './remedy';
import { fitsThere, statesOf, type Workshop } from './trial';

/** So many items that pull most are tried as the first of two. */
const FIRST_MOVERS = 5;
/** Of two moves none is longer than this share of the hull: beyond it is a new layout, not a remedy. */
const LONGEST_SHARE = 0.25;

/**
 * Two items moved the way that helps, by as little as was found together. The first, one of those that pull most, goes as
 * far as it fits, another by as little as will do, and then the first goes back as far as it can. Not every pair of places
 * is tried, so nothing may be said of what it does not find.
 */
export function twoMoves(shop: Workshop, goal: Goal, movers: readonly Mover[]): Remedy | null {
  const way = helpfulWay(shop, goal);
  const longestMm = longest(shop);
  const whole = movers.filter(({ halfOfPair }) => !halfOfPair);
  const pullG = (mover: Mover) =>
    Math.max(...shop.states.flatMap((state) => massesOf(state, new Set(mover.items.map(({ id }) => id)))));
  const firsts = [...whole].sort((a, b) => pullG(b) - pullG(a)).slice(0, FIRST_MOVERS);
  let best: readonly FoundMove[] | null = null;
  for (const first of firsts) {
    const shiftMm = farthestFree(shop, first, goal.axis, way, longestMm);
    if (shiftMm === 0) continue;
    const others = whole.filter((mover) => !overlaps(mover, first));
    const limitMm = best ? Math.min(longestMm, best[0]!.shiftMm * way + best[1]!.shiftMm * way) : longestMm;
    const edits = moveEdits(first, goal.axis, shiftMm);
    const second = shortestOf(besides(shop, edits), goal, others, {
      longestMm: limitMm,
      way,
      besides: edits,
    });
    if (!second) continue;
    const back = shortestMove(besides(shop, second.remedy.edits), goal, first, {
      longestMm: Math.abs(shiftMm),
      way,
      besides: second.remedy.edits,
    });
    if (!back) continue;
    const total = (moves: readonly FoundMove[]) =>
      moves.reduce((sum, move) => sum + Math.abs(move.shiftMm), 0);
    if (!best || total([back, second]) < total(best)) best = [back, second];
  }
  const [first, second] = best ?? [];
  if (!first || !second) return null;
  return {
    kind: 'move-two',
    edits: [...first.remedy.edits, ...second.remedy.edits],
    words: `${first.remedy.words}, ${second.remedy.words.replace(/^Move /, '')}`,
    // The first was taken back last, with the second where it is.
    result: first.remedy.result,
  };
}

/** The workshop once some edits are done. */
const besides = (shop: Workshop, edits: readonly RemedyEdit[]): Workshop => ({
  ...shop,
  states: statesOf(applyRemedy(shop.aircraft, { edits }), shop.given).states,
});

const overlaps = (a: Mover, b: Mover) => a.items.some((item) => b.items.includes(item));

/** A share of the longest hull, or of the parts' own extent where there is none, mm. */
function longest({ aircraft }: Workshop): number {
  const lengths = hulls(aircraft).map(({ shape: { sections } }) => sections.at(-1)!.xMm - sections[0]!.xMm);
  if (lengths.length > 0) return LONGEST_SHARE * Math.max(...lengths);
  const boxes = aircraft.parts.map(itemExtent);
  const from = Math.min(...boxes.map(({ minMm }) => minMm[0]));
  return LONGEST_SHARE * (Math.max(...boxes.map(({ maxMm }) => maxMm[0])) - from);
}

/** How far items can go one way and still fit, in whole steps, mm; 0 for not at all. */
function farthestFree(shop: Workshop, mover: Mover, axis: 0 | 1, way: 1 | -1, longestMm: number): number {
  const { fromMm, toMm } = withinAircraft(shop, mover, axis);
  const [step] = lengthStepsMm(shop.spoken);
  let count = Math.floor(Math.min(longestMm, way > 0 ? toMm : -fromMm) / step);
  while (count > 0 && shop.tries.left > 0) {
    shop.tries.left -= 1;
    const shiftMm = way * stepped(count, step);
    const free = fitsThere(shop, moveEdits(mover, axis, shiftMm));
    if (free.ok) return shiftMm;
    count -= Math.max(1, Math.ceil(free.atLeastMm / step));
  }
  return 0;
}
