import { describe, expect, test } from 'vitest';
import { massAdd, massPoint, massRemove, massSum } from '../../src/engine/mass/massProperties';

/**
 * Published levers, shifts and loading tables, as sums of weights on arms. The algebra does not
 * mind the unit: pounds stand for grams and inches for millimetres.
 * Tolerance: half a unit in the last printed digit, unless a reason is given.
 */
type Row = readonly [weight: number, arm: number];

function loaded(rows: readonly Row[]): { weight: number; arm: number; moment: number } {
  const { massG, cgMm } = massSum(rows.map(([weight, arm]) => massPoint(weight, [arm, 0, 0])));
  const arm = cgMm?.[0] ?? Number.NaN;
  return { weight: massG, arm, moment: massG * arm };
}

describe('the law of the lever', () => {
  test('L1, datum off the lever (FAA-H-8083-1B ch. 2, from memory)', () => {
    const lever = loaded([
      [100, 50],
      [100, 90],
      [200, 150],
    ]);
    expect(lever.moment).toBeCloseTo(44000, 8);
    expect(lever.arm).toBeCloseTo(110, 12);
  });

  test('L2, the same lever, datum at its middle (same, from memory)', () => {
    const lever = loaded([
      [100, -50],
      [100, -10],
      [200, 50],
    ]);
    expect(lever.moment).toBeCloseTo(4000, 8);
    expect(lever.arm).toBeCloseTo(10, 12);
  });

  test('L4, a seesaw in balance (TM 55-1500-342-23 §2-7 fig. 2-1)', () => {
    expect(
      loaded([
        [200, -50],
        [100, 100],
      ]).arm,
    ).toBeCloseTo(0, 12);
  });
});

describe('shifting and adding', () => {
  test('S1, 100 lb moved from 30 to 150 in (FAA Pilot’s Handbook, weight and balance chapter)', () => {
    const before = massPoint(8000, [616000 / 8000, 0, 0]);
    expect(before.cgMm![0]).toBeCloseTo(77, 12);
    const without = massRemove(before, massPoint(100, [30, 0, 0]));
    const after = massAdd(without, massPoint(100, [150, 0, 0]));
    expect(after.cgMm![0]).toBeCloseTo(78.5, 11);
    expect(after.massG * after.cgMm![0]).toBeCloseTo(628000, 6);
  });

  test('S3, 140 lb added at 150 in (older Pilot’s Handbook, from memory)', () => {
    const after = massAdd(massPoint(6860, [80, 0, 0]), massPoint(140, [150, 0, 0]));
    expect(after.cgMm![0]).toBeCloseTo(81.4, 12);
  });
});

interface Table {
  readonly rows: readonly Row[];
  readonly weight: number;
  readonly arm: number;
  /** Decimals printed. */
  readonly digits: number;
}

describe('loading tables', () => {
  test.each<[string, Table]>([
    [
      // Weights, total and CG seen; arms from memory.
      'T1, FAA Pilot’s Handbook fig. 9-5',
      {
        rows: [
          [2100, 78.3],
          [340, 85],
          [350, 121],
          [450, 75],
          [80, 150],
        ],
        weight: 3320,
        arm: 84.8,
        digits: 1,
      },
    ],
    [
      'T2, AC 43.13-1B fig. 10-10',
      {
        rows: [
          [1169, 10.6],
          [17, -49],
          [170, 16],
          [83, 22],
        ],
        weight: 1439,
        arm: 11.2,
        digits: 1,
      },
    ],
    [
      // The figure prints +18.6, and 1169 × 10.6 rounded to 12 391; its own moment 38 466 over its own weight 2100 is 18.3171.
      'T4, AC 43.13-1B fig. 10-13, corrected',
      {
        rows: [
          [1169, 12391 / 1169],
          [17, -49],
          [170, 16],
          [170, 16],
          [340, 48],
          [234, 22],
        ],
        weight: 2100,
        arm: 18.3171,
        digits: 4,
      },
    ],
    [
      // Printed 31 417.5 and 25.38, with 14 × 21.5 taken as 294; it is 301.
      'T7, SFTE Reference Handbook 2013 §7.2, equipment change, corrected',
      {
        rows: [
          [1220, 25],
          [15, 65],
          [-11, -21.5],
          [14, -21.5],
        ],
        weight: 1238,
        arm: 25.372,
        digits: 4,
      },
    ],
    [
      // Moments printed for the last three rows; arms are those over the weights.
      'T10, Maule M-7-260C flight manual section V',
      {
        rows: [
          [1549, 11.2],
          [340, 20],
          [420, 24],
          [125, 72],
        ],
        weight: 2434,
        arm: 17.8,
        digits: 1,
      },
    ],
    [
      // Printed answer from memory.
      'T11, FAA private-pilot question bank 3664',
      {
        rows: [
          [1495, 101.4],
          [380, 64],
          [180, 96],
        ],
        weight: 2055,
        arm: 94.01,
        digits: 2,
      },
    ],
  ])('%s', (_, { rows, weight, arm, digits }) => {
    const total = loaded(rows);
    expect(total.weight).toBeCloseTo(weight, 9);
    expect(total.arm).toBeCloseTo(arm, digits);
  });

  test('T6, SFTE Reference Handbook 2013 §7.2 (prints 84.1652 cut off to 84.16: 0.01)', () => {
    const total = loaded([
      [1075, 84],
      [170, 85.5],
      [75, 94],
      [15, 31.7],
    ]);
    expect(total.weight).toBe(1335);
    expect(total.moment).toBeCloseTo(112360.5, 6);
    expect(Math.abs(total.arm - 84.16)).toBeLessThan(0.01);
  });

  test('T7 by taking the old equipment out, not by a negative weight', () => {
    const aircraft = massSum([
      massPoint(1220, [25, 0, 0]),
      massPoint(15, [65, 0, 0]),
      massPoint(14, [-21.5, 0, 0]),
    ]);
    const { massG, cgMm } = massRemove(aircraft, massPoint(11, [-21.5, 0, 0]));
    expect(massG).toBe(1238);
    expect(massG * cgMm![0]).toBeCloseTo(31410.5, 6);
  });

  test('T10’s moments as printed', () => {
    expect(loaded([[340, 20]]).moment).toBeCloseTo(6800, 9);
    expect(
      loaded([
        [1549, 11.2],
        [340, 20],
        [420, 24],
        [125, 72],
      ]).moment,
    ).toBeCloseTo(43229, 0);
  });

  test('T12, MD 520N flight manual fig. 6-6: 340 lb at 96.80 in', () => {
    expect(loaded([[340, 96.8]]).moment).toBeCloseTo(32912, 1);
  });
});
