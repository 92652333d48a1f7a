import { balanceRows, bindingRows } from './balanceRows';
import { commonStepG, type Goal } from './goal';
import type { SolveMilp } from './milp';
import { packedBothWays } from './packedBothWays';
import { patternProgram } from './patternProgram';
import { type Patterns, packedPatterns, singlePatterns } from './patterns';
import { type Choice, roomPacker, roomsOf } from './rooms';
import { type ArrangeAnswer, SAME_MARGIN_MM, searchState } from './searchState';
import { arrangementOf, settlePlaces } from './settlePlaces';
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
const MOST_MISFITS = 40;

/**
 * The arrangement with the least ballast, among those the one with the largest margin, among those the one with the
 * fewest moves. Every one returned has been checked without the solver. First a relaxation without overlap gives a bound
 * and a start; then sets of parts that fit each room give a bound that is nearly always reached; what is left open goes to
 * the whole program.
 */
export function arrange(asked: PlaceProblem, order: ArrangeOrder): ArrangeAnswer {
  const { mostMoves } = order;
  const problem = mostMoves === undefined ? asked : withStays(asked);
  const { solve, now, onProgress } = order;
  const endMs = now() + order.timeMs;
  const leftMs = () => Math.max(0, endMs - now());
  const shouldStop = () => leftMs() <= 0 || (order.cancelled?.() ?? false);
  const rows = bindingRows(balanceRows(problem), 'margin');
  const step = commonStepG(problem);
  const rooms = roomsOf(problem);
  const packer = roomPacker(problem, MOST_NODES);

  const state = searchState(step, onProgress);
  const { take, raise, none, answer, isProved } = state;
  /** Places for chosen options: packed aft, packed forward, then in any order. */
  const settle = (choices: readonly Choice[], goal: Goal, enough: () => boolean) => {
    for (const likeMm of packedBothWays(problem, rooms, packer, choices)) {
      take(settlePlaces(problem, goal, rows, solve, { timeMs: leftMs() }, { choices, likeMm }).arrangement);
      if (enough() || shouldStop()) return;
    }
    const timeMs = Math.min(leftMs() / 4, 3000);
    take(
      settlePlaces(problem, goal, rows, solve, { timeMs, gap: gapFor(goal, step), shouldStop }, { choices })
        .arrangement,
    );
  };

  const stay = problem.parts.map(({ options, present }) => ({
    option: options.findIndex(({ id }) => id === present.optionId),
    centreMm: present.centreMm,
  }));
  const noBallast = problem.spots.map(() => 0);
  if (stay.every(({ option }) => option >= 0)) take(arrangementOf(problem, stay, noBallast));

  const leastBallast: Goal = { seek: 'least ballast' };
  if (!state.best) {
    const singles = singlePatterns(problem, rooms, rows);
    const misfits: Choice[][] = [];
    while (misfits.length < MOST_MISFITS && !shouldStop()) {
      const { program, choicesIn } = patternProgram(problem, leastBallast, rows, singles, {
        forbidden: misfits,
        mostMoves,
      });
      const found = solve(program, {
        timeMs: leftMs(),
        gap: step * 0.999,
        enough: state.boundG + 1e-6,
        shouldStop,
      });
      if (found.status === 'infeasible') return none();
      raise(found.bound);
      if (!found.values) break;
      const choices = choicesIn(found.values);
      const misfit = rooms
        .map((room) => within(room, choices))
        .find(
          (set) =>
            set.length > 0 &&
            !packer.pack(
              set,
              set.map(() => 1),
            ),
        );
      if (misfit) {
        misfits.push(misfit);
        continue;
      }
      settle(choices, leastBallast, () => state.best !== null);
      break;
    }
  }

  let packed: Patterns | null = null;
  const patternsInTime = () => {
    const untilMs = now() + leftMs() * 0.5;
    packed ??= packedPatterns(
      problem,
      rooms,
      rows,
      packer,
      MOST_PATTERNS,
      () => shouldStop() || now() > untilMs,
    );
    return packed;
  };
  if (!isProved() && !shouldStop()) {
    const { program, choicesIn } = patternProgram(problem, leastBallast, rows, patternsInTime(), {
      mostMoves,
    });
    const found = solve(program, {
      timeMs: leftMs() * 0.7,
      gap: step * 0.999,
      enough: state.boundG + 1e-6,
      shouldStop,
    });
    if (found.status === 'infeasible') return none();
    raise(found.bound);
    if (found.values && !isProved()) settle(choicesIn(found.values), leastBallast, isProved);
  }
  if (!isProved() && !shouldStop()) {
    const goal: Goal = { seek: 'least ballast', atLeastG: state.boundG };
    const below = state.best ? { ballastG: state.best.ballastG - step } : {};
    const found = settlePlaces(
      problem,
      goal,
      rows,
      solve,
      { timeMs: leftMs() * 0.8, gap: step * 0.999, shouldStop },
      { mostMoves },
      below,
    );
    take(found.arrangement);
    if (found.answer.status === 'infeasible') {
      if (!state.best) return none();
      state.boundG = state.best.ballastG;
    } else raise(found.answer.bound);
  }
  const found = state.best;
  if (!found) return answer();
  improveMargin(found.ballastG);
  fewerMoves();
  return answer();

  function improveMargin(ballastG: number) {
    const goal: Goal = { seek: 'most margin', ballastG };
    const reached = () =>
      state.best !== null &&
      state.marginBoundMm !== null &&
      state.best.marginMm >= state.marginBoundMm - SAME_MARGIN_MM;
    state.marginBoundMm = (problem.band.aftMm - problem.band.forwardMm) / 2;
    if (!reached() && !shouldStop()) {
      const { program, choicesIn } = patternProgram(problem, goal, rows, patternsInTime(), { mostMoves });
      const bound = solve(program, {
        timeMs: leftMs() * 0.6,
        gap: SAME_MARGIN_MM / 4,
        enough: SAME_MARGIN_MM / 4 - state.marginBoundMm,
        shouldStop,
      });
      if (Number.isFinite(bound.bound)) state.marginBoundMm = Math.min(state.marginBoundMm, -bound.bound);
      if (bound.values && !reached()) settle(choicesIn(bound.values), goal, reached);
    }
    if (!reached() && !shouldStop()) {
      const marginMm = state.best!.marginMm + SAME_MARGIN_MM / 2;
      const more = settlePlaces(
        problem,
        goal,
        rows,
        solve,
        { timeMs: leftMs() * 0.7, gap: SAME_MARGIN_MM / 4, shouldStop },
        { mostMoves },
        { marginMm },
      );
      take(more.arrangement);
      if (more.answer.status === 'infeasible') state.marginBoundMm = state.best!.marginMm;
      else if (Number.isFinite(more.answer.bound))
        state.marginBoundMm = Math.min(state.marginBoundMm, -more.answer.bound);
    }
    state.marginProved = reached();
    onProgress?.(answer());
  }

  function fewerMoves() {
    const { ballastG, marginMm, moves } = state.best!;
    state.movesProved = moves === problem.parts.filter(({ present }) => present.optionId === null).length;
    if (state.movesProved || shouldStop()) return;
    const goal: Goal = { seek: 'fewest moves', ballastG, marginMm: marginMm - SAME_MARGIN_MM / 2 };
    const fewer = settlePlaces(
      withStays(asked),
      goal,
      rows,
      solve,
      { timeMs: leftMs(), gap: 0.999, shouldStop },
      { mostMoves: moves - 1 },
    );
    take(fewer.arrangement);
    state.movesProved = fewer.answer.status !== 'stopped';
  }
}

const within = (room: readonly Choice[], choices: readonly Choice[]): Choice[] =>
  choices.filter(({ part, option }) => room.some((one) => one.part === part && one.option === option));

const gapFor = (goal: Goal, step: number): number =>
  goal.seek === 'most margin' ? SAME_MARGIN_MM / 4 : goal.seek === 'fewest moves' ? 0.999 : step * 0.999;
