import { describe, expect, test } from 'vitest';
import { arrangeSurely, sigmasFor } from '../../../src/engine/place/robust';
import { ballastForMargin, ballastForMoves } from '../../../src/engine/place/tradeOff';
import type { PlaceProblem } from '../../../src/engine/place/types';
import { bruteOfPoints } from './bruteForce';
import { pointCase } from './cases';
import { arranged, now, solve } from './solver';

const order = { solve, now, timeMs: 60_000 };
const needing = Array.from({ length: 60 }, (_, seed) => pointCase(seed + 1)).filter(
  (problem) => (bruteOfPoints(problem)?.ballastG ?? 0) > 0,
);

const narrowed = (problem: PlaceProblem, byMm: number): PlaceProblem => ({
  ...problem,
  band: { forwardMm: problem.band.forwardMm + byMm, aftMm: problem.band.aftMm - byMm },
});

/** Only what may leave its place: the others have their present place alone. */
function* withMoves(problem: PlaceProblem, moves: number): Generator<PlaceProblem> {
  const count = problem.parts.length;
  for (let bits = 0; bits < 2 ** count; bits++) {
    const free = (i: number) => (bits >> i) % 2 === 1;
    if (problem.parts.filter((_, i) => free(i)).length > moves) continue;
    yield {
      ...problem,
      parts: problem.parts.map((part, i) =>
        free(i) ? part : { ...part, options: part.options.filter(({ id }) => id === part.present.optionId) },
      ),
    };
  }
}

describe('choices', () => {
  test('there are cases to try', () => expect(needing.length).toBeGreaterThan(5));

  test('each margin on the curve has the least ballast that trying everything finds', () => {
    for (const problem of needing.slice(0, 5)) {
      const points = ballastForMargin(problem, 4, order);
      expect(points.length).toBeGreaterThan(0);
      points.forEach(({ asked, arrangement, proved }, k) => {
        expect(proved).toBe(true);
        expect(arrangement.marginMm).toBeGreaterThanOrEqual(asked - 1e-3);
        expect(arrangement.ballastG).toBeCloseTo(bruteOfPoints(narrowed(problem, asked))!.ballastG, 6);
        if (k > 0) expect(arrangement.ballastG).toBeGreaterThanOrEqual(points[k - 1]!.arrangement.ballastG);
      });
    }
  });

  test('each number of moves on the curve has the least ballast that trying everything finds', () => {
    for (const problem of needing.slice(0, 5)) {
      const points = ballastForMoves(problem, order);
      expect(points.length).toBeGreaterThan(0);
      for (const { asked, arrangement, proved } of points) {
        expect(proved).toBe(true);
        expect(arrangement.moves).toBeLessThanOrEqual(asked);
        const all = [...withMoves(problem, asked)].flatMap((one) => bruteOfPoints(one)?.ballastG ?? []);
        expect(arrangement.ballastG).toBeCloseTo(Math.min(...all), 6);
      }
    }
  });
});

test('certainty has its price: the same as a band shrunk by so many sigmas', () => {
  for (const problem of needing.slice(0, 6)) {
    const surely = arrangeSurely(problem, 1.2, 0.9, order);
    const brute = bruteOfPoints(narrowed(problem, sigmasFor(0.9) * 1.2));
    expect(surely.sure?.best?.ballastG ?? null).toBe(brute ? brute.ballastG : null);
    if (brute) expect(surely.priceG).toBeCloseTo(brute.ballastG - bruteOfPoints(problem)!.ballastG, 6);
  }
});

test('without any part to move it finds the best spots and masses for both axes at once', () => {
  const cases = [{ id: 'dry', name: 'dry', massG: 2000, momentGmm: [2000 * 112, 2000 * 9, 0] as const }];
  const spots = [
    { id: 'nose', name: 'nose', positionMm: [-300, 0, 0] as const, stepG: 1, mostG: 300 },
    { id: 'tip', name: 'left tip', positionMm: [100, -700, 0] as const, stepG: 1, mostG: 100 },
  ];
  const problem: PlaceProblem = {
    cases,
    band: { forwardMm: 95, aftMm: 105 },
    lateralMm: 3,
    parts: [],
    obstacles: [],
    spots,
    clearanceMm: 0,
    apart: [],
    leads: [],
  };
  const brute = bruteOfPoints(problem)!;
  const answer = arranged(problem);
  expect(answer.proved).toBe(true);
  expect(answer.best?.ballastG).toBe(brute.ballastG);
  expect(answer.best?.marginMm).toBeCloseTo(brute.marginMm, 6);
  expect(answer.sentence).toBe(`No arrangement does it with less than ${brute.ballastG} g.`);
});
