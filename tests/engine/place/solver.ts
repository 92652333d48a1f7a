import loadHighs from 'highs';
import { arrange } from '../../../src/engine/place/arrange';
import type { ArrangeAnswer } from '../../../src/engine/place/searchState';
import type { PlaceProblem } from '../../../src/engine/place/types';
import { highsMilp } from '../../../src/workers/highsMilp';

/** The solver as the worker uses it. */
export const solve = highsMilp(await loadHighs());

export const arranged = (
  problem: PlaceProblem,
  timeMs = 20_000,
  onProgress?: (answer: ArrangeAnswer) => void,
): ArrangeAnswer =>
  arrange(problem, { solve, now: () => performance.now(), timeMs, ...(onProgress ? { onProgress } : {}) });
