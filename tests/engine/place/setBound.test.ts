import { describe, expect, test } from 'vitest';
import { balanceRows } from '../../../src/engine/place/balanceRows';
import type { SolveMilp } from '../../../src/engine/place/milp';
import type { Room } from '../../../src/engine/place/rooms';
import { searchOf } from '../../../src/engine/place/search';
import type { ArrangeAnswer } from '../../../src/engine/place/searchState';
import { bySets } from '../../../src/engine/place/sets/bySets';
import { railStepMm, setPrices } from '../../../src/engine/place/sets/cheapestSet';
import { mostLoosely, type RoomMeasure, roomMeasure } from '../../../src/engine/place/sets/roomMeasure';
import type { PlaceProblem } from '../../../src/engine/place/types';
import { bruteOfLines, bruteOfPoints } from './bruteForce';
import { lineCase, option, pointCase, seeded, wiredCase } from './cases';
import { now, solve } from './solver';

/** What is found and proved by sets of parts alone. */
function foundBySets(problem: PlaceProblem): ArrangeAnswer {
  const search = searchOf(problem, { solve, now, timeMs: 5000 });
  bySets(search);
  return search.state.answer();
}

const smallLines = (seed: number): PlaceProblem => {
  const wide = lineCase(seed, { parts: 3 + (seed % 2), bays: 2, hard: (seed % 5) * 3, states: 2 });
  const [nose, tail] = wide.spots;
  return {
    ...wide,
    spots: [
      { ...nose!, stepG: 4, mostG: 400 },
      { ...tail!, stepG: 4, mostG: 40 },
    ],
  };
};

describe('what sets of parts prove and find is never better than what trying everything finds', () => {
  test.each([
    { kind: 'single places', to: 36, problemOf: pointCase, bruteOf: bruteOfPoints, least: 2 },
    { kind: 'wired places', to: 24, problemOf: wiredCase, bruteOf: bruteOfPoints, least: 1 },
    { kind: 'parts in line', to: 16, problemOf: smallLines, bruteOf: bruteOfLines, least: 4 },
  ])('$kind: seeds 1 to $to', ({ kind, to, problemOf, bruteOf, least }) => {
    let [above, needed, near] = [0, 0, 0];
    for (let seed = 1; seed <= to; seed++) {
      const problem = problemOf(seed);
      const { boundG: bound, best, proved } = foundBySets(problem);
      if (bound > 0) above += 1;
      const brute = bruteOf(problem);
      if (proved) expect(best?.ballastG ?? null, `seed ${seed}`).toBe(brute?.ballastG ?? null);
      if (!brute) {
        expect(best, `seed ${seed}`).toBeNull();
        continue;
      }
      expect(bound, `seed ${seed}`).toBeLessThanOrEqual(brute.ballastG + 1e-6);
      if (best) expect(best.ballastG, `seed ${seed}`).toBeGreaterThanOrEqual(brute.ballastG - 1e-6);
      if (brute.ballastG === 0) continue;
      needed += 1;
      // Ballast comes in steps of 4 g there.
      near += Number(bound > brute.ballastG - 12);
    }
    // A bound of nothing would pass: it must say something often enough, and nearly all of it where parts stand in line.
    expect(above).toBeGreaterThanOrEqual(least);
    if (kind === 'parts in line') expect(near / needed).toBeGreaterThan(0.9);
  });
});

describe('a choice of bays whose places were not found in time', () => {
  /** As slow as can be wherever places are asked for: those programs alone have both whole and other columns. */
  const withoutPlaces: SolveMilp = (program, order) =>
    program.integer.some(Boolean) && !program.integer.every(Boolean)
      ? { status: 'stopped', values: null, bound: Number.NEGATIVE_INFINITY }
      : solve(program, order);

  test.each([2, 3, 4, 7, 8, 9])(
    'is not taken for impossible, however much ballast there is: case %i',
    (seed) => {
      const drawn = smallLines(seed);
      const wide = { ...drawn, lateralMm: null, spots: [drawn.spots[0]!] };
      const leastG = bruteOfLines(wide)!.ballastG;
      // No more than what it takes, so that all is gone through.
      const problem = { ...wide, spots: [{ ...wide.spots[0]!, mostG: leastG }] };
      const search = searchOf(problem, { solve: withoutPlaces, now, timeMs: 5000 });
      bySets(search);
      const { boundG, proved } = search.state.answer();
      expect(boundG).toBeLessThanOrEqual(leastG + 1e-6);
      expect(proved).toBe(false);
    },
  );
});

/** All subsets of 0…n−1. */
const subsets = (n: number): number[][] =>
  Array.from({ length: 2 ** n }, (_, bits) =>
    Array.from({ length: n }, (_, i) => i).filter((i) => bits & (1 << i)),
  );

function permutations(list: readonly number[]): number[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((first, i) =>
    permutations(list.filter((_, j) => j !== i)).map((rest) => [first, ...rest]),
  );
}

/** The least that a set costs in line: in every order, so many packed to the front and the others to the rear. */
function bruteCost(
  set: readonly number[],
  lengths: readonly number[],
  railMm: number,
  gapMm: number,
  perMm: readonly number[],
  fixed: readonly number[],
): number {
  const longMm = set.reduce((sum, i) => sum + lengths[i]!, 0) + gapMm * Math.max(0, set.length - 1);
  if (longMm > railMm) return Number.POSITIVE_INFINITY;
  let least = set.length === 0 ? 0 : Number.POSITIVE_INFINITY;
  for (const order of permutations(set)) {
    for (let split = 0; split <= order.length; split++) {
      let [at, cost] = [0, 0];
      order.forEach((i, k) => {
        if (k === split) {
          const rest = order.slice(split);
          at = railMm - rest.reduce((sum, j) => sum + lengths[j]!, 0) - gapMm * (rest.length - 1);
        }
        cost += perMm[i]! * (at + lengths[i]! / 2) + fixed[i]!;
        at += lengths[i]! + gapMm;
      });
      least = Math.min(least, cost);
    }
  }
  return least;
}

describe('sets of one rail, priced at once', () => {
  test('the cheapest, and all up to a price, are those that trying every set and order finds: 60 cases', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const random = seeded(seed);
      const whole = (low: number, high: number) => Math.floor(low + (high - low + 1) * random());
      const [n, gapMm, railMm] = [5, whole(0, 3), whole(80, 160)];
      const lengths = Array.from({ length: n }, () => whole(15, 60));
      const measure: RoomMeasure = {
        fromMm: 0,
        toMm: railMm,
        gapMm,
        isLoose: false,
        taken: lengths.map((mm, part) => ({
          part,
          lengthMm: mm + gapMm,
          lowMm: mm / 2,
          highMm: railMm - mm / 2,
        })),
      };
      const perMm = lengths.map(() => (seed % 3 === 0 ? whole(-20, 20) : whole(0, 30)));
      const fixed = lengths.map(() => -whole(0, 3000));
      const priced = setPrices(measure, railStepMm(measure), { perMm, fixed }, true);
      const costs = subsets(n).map((set) => ({
        set,
        cost: bruteCost(set, lengths, railMm, gapMm, perMm, fixed),
      }));
      const least = Math.min(...costs.map(({ cost }) => cost));
      expect(priced.leastCost, `seed ${seed}`).toBeCloseTo(least, 6);
      const found = costs.find(
        ({ set }) => String(set) === String([...priced.cheapest].sort((a, b) => a - b)),
      );
      expect(found?.cost, `seed ${seed}`).toBeCloseTo(least, 6);
      const limit = least + 500.5;
      const wanted = costs
        .filter(({ set, cost }) => set.length > 0 && cost <= limit)
        .map(({ set }) => String(set));
      expect(priced.within(limit, 1000)?.map(String).sort(), `seed ${seed}`).toEqual(wanted.sort());
      if (wanted.length > 1) expect(priced.within(limit, wanted.length - 1)).toBeNull();
    }
  });

  test('side by side: no packing of whole squares gives more to a row than is said: 40 cases', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const random = seeded(seed + 500);
      const whole = (low: number, high: number) => Math.floor(low + (high - low + 1) * random());
      const [longMm, wideMm] = [6, whole(2, 3)];
      const sizes = Array.from({ length: 3 }, () => [whole(1, 4), whole(1, wideMm)] as const);
      const masses = sizes.map(() => whole(1, 9));
      const problem: PlaceProblem = {
        cases: [{ id: 'only', name: 'only', massG: 10, momentGmm: [0, 0, 0] }],
        band: { forwardMm: -10, aftMm: 10 },
        lateralMm: null,
        parts: sizes.map(([long, wide], i) => ({
          id: `p${i}`,
          name: `p${i}`,
          massesG: [masses[i]!],
          options: [option('bay', [0, 0, 0], [longMm, wideMm, 1], [long, wide, 1])],
          present: { centreMm: [0, 0, 0], optionId: null },
        })),
        obstacles: [],
        spots: [],
        clearanceMm: 0,
        apart: [],
        leads: [],
      };
      const room: Room = problem.parts.map((_, part) => ({ part, option: 0 }));
      const measure = roomMeasure(problem, room);
      for (const row of balanceRows(problem)) {
        const sign = row.limit === 'forward' ? 1 : -1;
        const best = mostOnSquares(sizes, masses, longMm, wideMm, sign);
        const said = mostLoosely(problem, room, measure, row, [0, 1, 2]);
        if (best !== null) expect(said, `seed ${seed} ${row.limit}`).toBeGreaterThanOrEqual(best - 1e-9);
      }
    }
  });
});

/** The most that Σ sign·mass·station can be with boxes on whole squares, none on another; null where they do not fit. */
function mostOnSquares(
  sizes: readonly (readonly [number, number])[],
  masses: readonly number[],
  longMm: number,
  wideMm: number,
  sign: number,
): number | null {
  let best: number | null = null;
  const put = (
    i: number,
    boxes: readonly (readonly [number, number, number, number])[],
    moment: number,
  ): void => {
    if (i === sizes.length) {
      best = Math.max(best ?? Number.NEGATIVE_INFINITY, moment);
      return;
    }
    const [long, wide] = sizes[i]!;
    for (let x = 0; x + long <= longMm; x++) {
      for (let y = 0; y + wide <= wideMm; y++) {
        const clear = boxes.every(
          ([a, b, c, d]) => x + long <= a || a + c <= x || y + wide <= b || b + d <= y,
        );
        if (clear) put(i + 1, [...boxes, [x, y, long, wide]], moment + sign * masses[i]! * (x + long / 2));
      }
    }
  };
  put(0, [], 0);
  return best;
}
