import { balanceRows, bindingRows } from './balanceRows';
import { commonStepG, type Goal } from './goal';
import type { SolveMilp } from './milp';
import { packedBothWays } from './packedBothWays';
import { type Patterns, packedPatterns } from './patterns';
import { type Choice, type Room, type RoomPacker, roomPacker, roomsOf } from './rooms';
import { type ArrangeAnswer, SAME_MARGIN_MM, type SearchState, searchState } from './searchState';
import { bendsAs, type Settled, type Settling, settlePlaces } from './settlePlaces';
import { withStays } from './stays';
import type { PlaceProblem } from './types';

export interface ArrangeOrder {
  readonly solve: SolveMilp;
  /** A clock, ms. */
  readonly now: () => number;
  readonly timeMs: number;
  readonly onProgress?: (progress: ArrangeAnswer) => void;
  readonly cancelled?: () => boolean;
  /** No more parts than this may leave their place. */
  readonly mostMoves?: number;
}

/** How hard to look before the next way is tried. */
const MOST_NODES = 4000;
const MOST_PATTERNS = 6000;
/** Any order of parts with their bays chosen is looked for no longer than this at a time, ms. */
const SETTLE_MS = 3000;

/** A search under way: the problem with all that is worked out once, the clock, and what has been found and proved. */
export interface Search extends Settling {
  /** As it was asked, without staying as an option of its own. */
  readonly asked: PlaceProblem;
  readonly order: ArrangeOrder;
  readonly state: SearchState;
  readonly stepG: number;
  readonly rooms: readonly Room[];
  readonly packer: RoomPacker;
  readonly mostMoves: number | undefined;
  leftMs(): number;
  shouldStop(): boolean;
  /** All sets of parts by bay; those of a bay that takes too long are single parts side by side. */
  patterns(budgetMs: number): Patterns;
}

export function searchOf(asked: PlaceProblem, order: ArrangeOrder): Search {
  const { mostMoves, solve, now } = order;
  const problem = mostMoves === undefined ? asked : withStays(asked);
  const endMs = now() + order.timeMs;
  const leftMs = () => Math.max(0, endMs - now());
  const shouldStop = () => leftMs() <= 0 || (order.cancelled?.() ?? false);
  const rows = bindingRows(balanceRows(problem), 'margin');
  const rooms = roomsOf(problem);
  const packer = roomPacker(problem, MOST_NODES);
  const stepG = commonStepG(problem);
  let kept: Patterns | null = null;
  return {
    asked,
    problem,
    order,
    solve,
    rows,
    rooms,
    packer,
    stepG,
    mostMoves,
    tangents: new Map(),
    state: searchState(stepG, order.onProgress),
    leftMs,
    shouldStop,
    patterns(budgetMs) {
      if (kept && !kept.loose.some(Boolean)) return kept;
      const untilMs = now() + budgetMs;
      const over = () => shouldStop() || now() > untilMs;
      kept = packedPatterns(problem, rooms, rows, packer, MOST_PATTERNS, over);
      return kept;
    },
  };
}

/** The same search's means for a problem with other options. */
export const settlingOf = ({ solve, tangents }: Search, problem: PlaceProblem): Settling => ({
  problem,
  solve,
  tangents,
  rows: bindingRows(balanceRows(problem), 'margin'),
});

/** How close to the best counts as the best, in what the goal counts. */
export const gapFor = (goal: Goal, stepG: number): number =>
  goal.seek === 'most margin' ? SAME_MARGIN_MM / 4 : goal.seek === 'fewest moves' ? 0.999 : stepG * 0.999;

/** Places for chosen options, packed forward and packed aft. True when that was good enough. */
export function takePacked(
  search: Search,
  choices: readonly Choice[],
  goal: Goal,
  isEnough: () => boolean,
): boolean {
  const { problem, rooms, packer, state, leftMs, shouldStop } = search;
  for (const likeMm of packedBothWays(problem, rooms, packer, choices)) {
    state.take(settlePlaces(search, goal, { timeMs: leftMs(), shouldStop }, { choices, likeMm }).arrangement);
    if (isEnough() || shouldStop()) return true;
  }
  return false;
}

/** Places for chosen options: packed, then in any order. The solver's word on that, or null when it was good enough before. */
export function settleChoices(
  search: Search,
  choices: readonly Choice[],
  goal: Goal,
  isEnough: () => boolean,
): Settled | null {
  const { problem, state, stepG, leftMs, shouldStop } = search;
  if (takePacked(search, choices, goal, isEnough)) return null;
  const timeMs = Math.min(leftMs() / 4, SETTLE_MS);
  // With its options decided a lead that bends is known more closely.
  const settling = problem.leads.some(bendsAs)
    ? { ...search, rows: bindingRows(balanceRows(problem, null, choices), 'margin') }
    : search;
  const settled = settlePlaces(settling, goal, { timeMs, gap: gapFor(goal, stepG), shouldStop }, { choices });
  state.take(settled.arrangement);
  return settled;
}
