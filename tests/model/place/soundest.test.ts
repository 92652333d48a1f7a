import { expect, test } from 'vitest';
import type { Arrangement, PlaceProblem } from '../../../src/engine/place/types';
import { soundestSoFar } from '../../../src/model/place/soundest';

const offered: Arrangement = { placed: [], ballast: [], ballastG: 0, marginMm: 2, moves: 0 };
const problem = {} as PlaceProblem;

test('what lies nearer to a limit on the aircraft than was thought does not keep the margin asked for', () => {
  const soundest = soundestSoFar(
    () => ({ refusals: [], marginMm: 1.9 }),
    Number.NEGATIVE_INFINITY,
    () => {},
  );
  expect(soundest.take({ best: offered, problem, keptMarginMm: 2 })?.map(({ what }) => what)).toEqual([
    'balance',
  ]);
  expect(soundest.best()).toBeNull();
});

test('where none was asked for, it is told with the margin that it has', () => {
  const soundest = soundestSoFar(
    () => ({ refusals: [], marginMm: 1.9 }),
    Number.NEGATIVE_INFINITY,
    () => {},
  );
  expect(soundest.take({ best: offered, problem, keptMarginMm: 0 })).toEqual([]);
  expect(soundest.best()?.best.marginMm).toBe(1.9);
});
