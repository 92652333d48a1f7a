import type { Goal } from './goal';
import type { Milp, MilpAnswer } from './milp';
import { choicesOf, patternProgram } from './patternProgram';
import type { Pattern, Patterns } from './patterns';
import type { Choice } from './rooms';
import { gapFor, type Search, settleChoices } from './search';
import { SAME_G } from './tolerances';

/** What looking bay by bay came to. */
export interface ByBays {
  /** Nothing is less than this, in what the goal counts; infinite when every choice of bays was ruled out. */
  readonly bound: number;
  /** The last program, to ask again for a second opinion. */
  readonly program: Milp | null;
}

interface Budget {
  readonly patterns: Patterns;
  readonly untilMs: number;
  /** No better than this can be: known from elsewhere. */
  readonly knownBound: number;
  /** Looks closer at patterns that were chosen; true where they give less than was thought, so that it is chosen anew. */
  readonly refine?: (chosen: readonly Pattern[]) => boolean;
  isEnough(): boolean;
  onBound(bound: number): void;
}

/**
 * Chooses a set of parts for every bay, settles it, forbids that choice and chooses again, until no choice is left that
 * could be better. What the program says of the choices left, and what settling said of those forbidden, is a bound on
 * everything (logic-based Benders decomposition: J. N. Hooker, G. Ottosson, Mathematical Programming 96, 2003).
 */
export function byBays(search: Search, goal: Goal, budget: Budget): ByBays {
  const { problem, rows, solve, stepG, mostMoves, order, shouldStop } = search;
  const forbidden: Choice[][] = [];
  /** What was settled is no less than this. */
  let settledBound = Number.POSITIVE_INFINITY;
  let bound = Number.NEGATIVE_INFINITY;
  let program: Milp | null = null;
  const over = () => shouldStop() || order.now() > budget.untilMs;
  const raise = (to: number) => {
    bound = Math.max(bound, Math.min(to, settledBound));
    budget.onBound(bound);
  };
  while (!over() && !budget.isEnough()) {
    const made = patternProgram(problem, goal, rows, budget.patterns, { forbidden, mostMoves });
    program = made.program;
    const found: MilpAnswer = solve(program, {
      timeMs: Math.max(1, budget.untilMs - order.now()),
      gap: gapFor(goal, stepG),
      enough: budget.knownBound + (goal.seek === 'most margin' ? gapFor(goal, stepG) : SAME_G),
      shouldStop,
    });
    if (found.status === 'infeasible') {
      raise(Number.POSITIVE_INFINITY);
      return { bound, program };
    }
    raise(found.bound);
    if (!found.values) break;
    const chosen = made.patternsIn(found.values);
    if (budget.refine?.(chosen)) continue;
    const choices = choicesOf(chosen);
    const settled = settleChoices(search, choices, goal, budget.isEnough);
    if (!settled) break;
    settledBound = Math.min(settledBound, settled.answer.bound);
    forbidden.push(choices);
  }
  return { bound, program };
}
