import { expect, test } from 'vitest';
import type { BalanceRow } from '../../../src/engine/place/balanceRows';
import { ballastFor, type Stack } from '../../../src/engine/place/ballastFor';
import { randomFrom } from '../../randomFrom';

const row = (massG: number, perSpot: readonly number[], axis: 0 | 1): BalanceRow => ({
  caseIndex: 0,
  limit: 'forward',
  limits: ['forward'],
  axis,
  perPart: [],
  perOption: [],
  perSpot,
  needed: 0,
  massG,
});
const stack = (stepG: number, most: number): Stack => ({
  spot: { id: '', name: '', positionMm: [0, 0, 0], stepG, mostG: stepG * most },
  most,
});

/** Whole numbers throughout, so that a row is met exactly or missed by far more than rounding. */
function anyCase(random: () => number) {
  const whole = (least: number, most: number) => least + Math.floor((most - least + 1) * random());
  const stacks = Array.from({ length: 3 }, () => stack(whole(1, 5), whole(0, 30)));
  const rows = Array.from({ length: whole(2, 5) }, (_, r) =>
    row(
      1000 + whole(0, 400),
      stacks.map(() => whole(-60, 200)),
      r < 2 ? 0 : 1,
    ),
  );
  return { stacks, rows, values: rows.map(() => whole(-9000, 9000)) };
}
type Case = ReturnType<typeof anyCase>;

const short = ({ rows, values }: Case, gramsG: readonly number[]) => {
  const ballastG = gramsG.reduce((sum, grams) => sum + grams, 0);
  const inside = rows.map(
    ({ massG, perSpot }, r) =>
      gramsG.reduce((sum, grams, k) => sum + perSpot[k]! * grams, values[r]!) / (massG + ballastG),
  );
  const along = inside.filter((_, r) => rows[r]!.axis === 0);
  return { shortMm: Math.max(0, ...inside.map((mm) => -mm)), marginMm: Math.min(...along) };
};

/** The least that one spot alone meets all rows with, by trying every whole number of steps; null where none does. */
function leastAlone(given: Case): number | null {
  const found = given.stacks.flatMap(({ spot, most }, k) =>
    Array.from({ length: most + 1 }, (_, steps) => steps * spot.stepG).filter(
      (grams) =>
        short(
          given,
          given.stacks.map((__, i) => (i === k ? grams : 0)),
        ).shortMm === 0,
    ),
  );
  return found.length > 0 ? Math.min(...found) : null;
}

test('what is said of the ballast is so, it takes whole steps up to the most, and it makes nothing worse', () => {
  const random = randomFrom(31);
  for (let trial = 0; trial < 600; trial += 1) {
    const given = anyCase(random);
    const found = ballastFor(given.values, given.rows, given.stacks, trial % 2 === 0);
    const there = short(given, found.gramsG);
    expect(found.shortMm).toBeCloseTo(there.shortMm, 9);
    expect(found.marginMm).toBeCloseTo(there.marginMm, 9);
    expect(found.ballastG).toBe(found.gramsG.reduce((sum, grams) => sum + grams, 0));
    expect(found.shortMm).toBeLessThanOrEqual(short(given, [0, 0, 0]).shortMm);
    found.gramsG.forEach((grams, k) => {
      const { spot, most } = given.stacks[k]!;
      expect(Number.isInteger(grams / spot.stepG)).toBe(true);
      expect(grams).toBeLessThanOrEqual(most * spot.stepG);
    });
    // Two spots at most, and one only where no second was asked for.
    expect(found.gramsG.filter((grams) => grams > 0).length).toBeLessThanOrEqual(trial % 2 === 0 ? 2 : 1);
  }
});

test('where one spot alone does it, no single spot does it with less: by trying every step', () => {
  const random = randomFrom(32);
  let met = 0;
  for (let trial = 0; trial < 600; trial += 1) {
    const given = anyCase(random);
    const least = leastAlone(given);
    if (least === null) continue;
    const found = ballastFor(given.values, given.rows, given.stacks, false);
    expect([found.shortMm, found.ballastG]).toEqual([0, least]);
    if (least > 0) met += 1;
  }
  expect(met).toBeGreaterThan(40);
});

test('two spots do what one cannot', () => {
  // The first row asks for mass at the first spot, the second at the other: 10 steps of each.
  const stacks = [stack(1, 16), stack(1, 16)];
  const rows = [row(1000, [10, 0], 0), row(1000, [0, 10], 0)];
  const alone = ballastFor([-100, -100], rows, stacks, false);
  expect(alone.shortMm).toBeGreaterThan(0);
  const both = ballastFor([-100, -100], rows, stacks, true);
  expect([both.shortMm, both.gramsG]).toEqual([0, [10, 10]]);
});

test('with a second spot in eighths of its most, none does it with less: by trying every step of the first', () => {
  const random = randomFrom(33);
  let met = 0;
  for (let trial = 0; trial < 400; trial += 1) {
    const given = anyCase(random);
    if (leastAlone(given) !== null) continue;
    const pairs = given.stacks.flatMap(({ spot, most }, second) =>
      Array.from({ length: 8 }, (_, k) => Math.round((most * (k + 1)) / 8) * spot.stepG).flatMap((secondG) =>
        given.stacks.flatMap((first, k) =>
          k === second
            ? []
            : Array.from({ length: first.most + 1 }, (_, steps) =>
                given.stacks.map((__, i) =>
                  i === k ? steps * first.spot.stepG : i === second ? secondG : 0,
                ),
              ),
        ),
      ),
    );
    const enough = pairs.filter((grams) => short(given, grams).shortMm === 0);
    if (enough.length === 0) continue;
    const sums = enough.map((grams) => grams.reduce((sum, each) => sum + each, 0));
    const found = ballastFor(given.values, given.rows, given.stacks, true);
    expect([found.shortMm, found.ballastG]).toEqual([0, Math.min(...sums)]);
    met += 1;
  }
  expect(met).toBeGreaterThan(10);
});
