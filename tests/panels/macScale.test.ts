import { expect, test } from 'vitest';
import { macMarks, macMarksBetween } from '../../src/panels/beam/macScale';

const mac = { macMm: 200, lemacMm: 500 };

test('marks stand at their share of the MAC behind its leading edge, both ends with numerals', () => {
  const axis = { atLeftMm: 400, mmPerPx: 2 };
  const marks = macMarks(mac, axis);
  expect(marks[0]).toEqual({ pct: 0, xPx: 50, numeral: true });
  expect(marks.at(-1)).toEqual({ pct: 100, xPx: 150, numeral: true });
  expect(marks.find(({ pct }) => pct === 25)).toEqual({ pct: 25, xPx: 75, numeral: true });
});

test('numerals and ticks never crowd, at any zoom', () => {
  for (const mmPerPx of [0.1, 0.3, 1, 1.9, 2.6, 6, 8.1, 20]) {
    const marks = macMarks(mac, { atLeftMm: 0, mmPerPx });
    const gaps = (at: readonly number[]) => at.slice(1).map((px, i) => px - (at[i] ?? 0));
    const numerals = marks.filter(({ numeral }) => numeral).map(({ xPx }) => xPx);
    expect(numerals.length).not.toBe(1);
    expect(numerals.length > 0).toBe(200 / mmPerPx >= 25);
    if (numerals.length > 0) expect(Math.min(...gaps(numerals))).toBeGreaterThanOrEqual(25 - 1e-9);
    expect(Math.min(...gaps(marks.map(({ xPx }) => xPx)))).toBeGreaterThanOrEqual(5 - 1e-9);
  }
});

test('an enlarged stretch has marks where the formula has them: LEMAC + share × MAC', () => {
  const mac = { lemacMm: 600, macMm: 300 };
  // 0.1 mm a pixel: one per cent is 30 px, so the marks are two per cent apart.
  const axis = { atLeftMm: 690, mmPerPx: 0.1 };
  const marks = macMarksBetween(mac, axis, 60, 560);
  expect(marks.map(({ pct }) => pct)).toEqual([32, 34, 36, 38, 40, 42, 44, 46, 48]);
  for (const { pct, xPx } of marks) expect(xPx).toBeCloseTo((600 + 3 * pct - 690) / 0.1, 6);
});
