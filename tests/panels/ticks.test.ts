import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rulerTicks } from '../../src/panels/beam/ticks';
import { axisToPx, fitAxis } from '../../src/store/axisStore';
import { between } from '../between';

const axis = fitAxis({ lowMm: 0, highMm: 1500 }, 880, 40);
const numerals = (from: number, units: 'metric' | 'inch-ounce' = 'metric') =>
  rulerTicks(axis, 880, units, from).filter(({ numeral }) => numeral !== null);

describe('the rule', () => {
  test('0 stands where the datum is', () => {
    expect(numerals(0).find(({ numeral }) => numeral === '0')?.xPx).toBeCloseTo(40, 9);
  });

  test('read from another reference point, 0 stands there', () => {
    expect(numerals(648).find(({ numeral }) => numeral === '0')?.xPx).toBeCloseTo(axisToPx(axis, 648), 9);
  });

  test('an inch is 25.4 mm (international yard and pound agreement, 1959)', () => {
    const ten = numerals(0, 'inch-ounce').find(({ numeral }) => numeral === '10');
    expect(ten?.xPx).toBeCloseTo(axisToPx(axis, 254), 9);
  });

  test('numerals never crowd and every tick is on the strip, at any zoom and facing', () => {
    const mmPerPx = between(0.02, 20);
    const facing = fc.constantFrom(1, -1);
    fc.assert(
      fc.property(mmPerPx, facing, fc.integer({ min: -3000, max: 3000 }), (scale, way, left) => {
        const ticks = rulerTicks({ atLeftMm: left, mmPerPx: scale * way }, 900, 'metric', 0);
        const major = ticks.filter(({ numeral }) => numeral !== null).map(({ xPx }) => xPx);
        for (const { xPx } of ticks) {
          expect(xPx).toBeGreaterThan(-1e-6);
          expect(xPx).toBeLessThan(900 + 1e-6);
        }
        for (let i = 1; i < major.length; i += 1) {
          expect(Math.abs((major[i] ?? 0) - (major[i - 1] ?? 0))).toBeGreaterThan(61.99);
        }
        expect(major.length).toBeGreaterThan(3);
      }),
    );
  });

  test('a strip without width has no ticks', () => {
    expect(rulerTicks(axis, 0, 'metric', 0)).toEqual([]);
  });
});
