import loadHighs from 'highs';
import { arrange } from '../../../src/engine/place/arrange';
import type { SolveMilp } from '../../../src/engine/place/milp';
import type { ArrangeAnswer } from '../../../src/engine/place/searchState';
import type { PlaceProblem } from '../../../src/engine/place/types';
import { highsMilp } from '../../../src/workers/highsMilp';

export interface Means {
  readonly solve: SolveMilp;
  readonly now: () => number;
}

const highs = await loadHighs();

/** The solver and the clock as the worker uses them, for the bench. */
export const byTheClock: Means = { solve: highsMilp(highs), now: () => performance.now() };

/** Processor time of this process, ms: what the work takes, however busy the machine is. */
export const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** A busy machine gives a process no less than this share of its time. */
const LEAST_SHARE = 0.05;

/** The same bounded by processor time: the solver looks at it between its nodes, its own clock is far off. */
export const byTheProcessor: Means = {
  solve: (program, order) => {
    const endMs = cpuMs() + order.timeMs;
    return byTheClock.solve(program, {
      ...order,
      timeMs: order.timeMs / LEAST_SHARE,
      shouldStop: () => cpuMs() > endMs || (order.shouldStop?.() ?? false),
    });
  },
  now: cpuMs,
};

/** What stands for a millisecond, about as much as is done in one: so that no answer hangs on how busy a machine is. */
const ITERATIONS_PER_MS = 20;
const NODES_PER_MS = 0.2;
let workMs = 0;

/** The same solver, bounded by nodes in place of time, and a clock that its work drives. */
export const solve = highsMilp(highs, {
  nodesPerMs: NODES_PER_MS,
  onSolved: (iterations) => {
    workMs += 1 + iterations / ITERATIONS_PER_MS;
  },
});

/** Moves on a little whenever it is looked at, so that whatever waits for it ends. */
export const now = (): number => {
  workMs += 1e-4;
  return workMs;
};

export const arranged = (
  problem: PlaceProblem,
  timeMs = 20_000,
  onProgress?: (answer: ArrangeAnswer) => void,
  means: Means = { solve, now },
): ArrangeAnswer => arrange(problem, { ...means, timeMs, ...(onProgress ? { onProgress } : {}) });
