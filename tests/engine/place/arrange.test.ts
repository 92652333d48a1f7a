import { describe, expect, test } from 'vitest';
import { checkPlaced } from '../../../src/engine/place/check';
import { SAME_MARGIN_MM } from '../../../src/engine/place/searchState';
import type { PlaceProblem } from '../../../src/engine/place/types';
import { type Brute, bruteOfLines, bruteOfPoints } from './bruteForce';
import { lineCase, pointCase } from './cases';
import { arranged } from './solver';

/** Asks for the same optimum as brute force finds, and for every arrangement on the way to be sound. */
function expectSame(problem: PlaceProblem, brute: Brute | null, name: string, moves: boolean): void {
  const answer = arranged(problem, 20_000, ({ best }) => {
    if (best) expect(checkPlaced(problem, best.placed, best.ballast).faults, name).toEqual([]);
  });
  expect(answer.proved, name).toBe(true);
  if (!brute) {
    expect(answer.best, name).toBeNull();
    expect(answer.boundG, name).toBe(Number.POSITIVE_INFINITY);
    return;
  }
  expect(answer.best?.ballastG, name).toBeCloseTo(brute.ballastG, 6);
  expect(answer.marginProved, name).toBe(true);
  expect(Math.abs(answer.best!.marginMm - brute.marginMm), name).toBeLessThanOrEqual(1.01 * SAME_MARGIN_MM);
  if (!moves) return;
  expect(answer.movesProved, name).toBe(true);
  expect(answer.best!.moves, name).toBeLessThanOrEqual(brute.moves);
}

describe('the best arrangement is the one that trying everything finds', () => {
  test('parts with single places, walls, rules, leads and parts dropped: 240 cases', () => {
    let feasible = 0;
    let withBallast = 0;
    for (let seed = 1; seed <= 240; seed++) {
      const problem = pointCase(seed);
      const brute = bruteOfPoints(problem);
      if (brute) feasible += 1;
      if (brute && brute.ballastG > 0) withBallast += 1;
      expectSame(problem, brute, `point case ${seed}`, true);
    }
    // The cases are worth trying: both outcomes are common, and ballast is often needed.
    expect(feasible).toBeGreaterThan(80);
    expect(feasible).toBeLessThan(220);
    expect(withBallast).toBeGreaterThan(20);
  }, 60_000);

  test('parts that slide in line in bays: 60 cases', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const wide = lineCase(seed, { parts: 3 + (seed % 2), bays: 2, hard: (seed % 5) * 3, states: 2 });
      const [nose, tail] = wide.spots;
      const problem = {
        ...wide,
        spots: [
          { ...nose!, stepG: 4, mostG: 400 },
          { ...tail!, stepG: 4, mostG: 40 },
        ],
      };
      expectSame(problem, bruteOfLines(problem), `line case ${seed}`, false);
    }
  }, 60_000);
});
