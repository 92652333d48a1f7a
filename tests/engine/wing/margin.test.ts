import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bandFromMargins,
  COMMON_MARGINS,
  marginsOfBand,
  staticMarginPct,
} from '../../../src/engine/wing/margin';
import { between } from '../../between';

const mm = between(-2000, 2000);
const mac = between(20, 800);

describe('margins and bands', () => {
  test('a CG ahead of the neutral point has a positive margin', () => {
    expect(staticMarginPct(400, 380, 200)).toBe(10);
    expect(staticMarginPct(400, 420, 200)).toBe(-10);
  });

  test('the greatest margin is the forward limit', () => {
    expect(bandFromMargins(400, 200, { minPct: 5, maxPct: 15 })).toEqual({ forwardMm: 370, aftMm: 390 });
  });

  test('band and margins undo each other', () => {
    fc.assert(
      fc.property(mm, mac, between(-5, 20), (point, chord, minPct) => {
        const back = marginsOfBand(
          point,
          chord,
          bandFromMargins(point, chord, { minPct, maxPct: minPct + 7 }),
        );
        expect(back.minPct).toBeCloseTo(minPct, 6);
        expect(back.maxPct).toBeCloseTo(minPct + 7, 6);
      }),
    );
  });

  test('upside-down and unreadable ranges are refused', () => {
    expect(() => bandFromMargins(0, 100, { minPct: 10, maxPct: 5 })).toThrow(/10 to 5/);
    expect(() => bandFromMargins(0, 100, { minPct: Number.NaN, maxPct: 5 })).toThrow(/NaN/);
  });

  test('common practice, no source: every kind is stable, none asks for more than 20 %', () => {
    for (const { minPct, maxPct } of Object.values(COMMON_MARGINS)) {
      expect(minPct).toBeGreaterThan(0);
      expect(maxPct).toBeGreaterThan(minPct);
      expect(maxPct).toBeLessThanOrEqual(20);
    }
  });
});
