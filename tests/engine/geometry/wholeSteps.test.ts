import { describe, expect, test } from 'vitest';
import { stepsDown, stepsUp } from '../../../src/engine/geometry/wholeSteps';

describe('whole steps', () => {
  test('a count that only rounding keeps from a whole one is that whole one', () => {
    // In binary 3 × 0.1 is more than 0.3, and 0.7 / 0.1 less than 7 (IEEE 754).
    expect([(3 * 0.1) / 0.1, 0.7 / 0.1].every(Number.isInteger)).toBe(false);
    expect(stepsUp((3 * 0.1) / 0.1)).toBe(3);
    expect(stepsDown(0.7 / 0.1)).toBe(7);
  });

  test('what is truly beyond a whole count is not', () => {
    expect([stepsUp(3.000001), stepsDown(3.999999)]).toEqual([4, 3]);
    expect([stepsUp(-3.000001), stepsDown(-3.000001)]).toEqual([-3, -4]);
  });

  test('nothing is 0, never −0', () => {
    expect(Object.is(stepsUp(0), 0)).toBe(true);
    expect(Object.is(stepsUp(-0.4), 0)).toBe(true);
    expect(Object.is(stepsDown(-1e-12), 0)).toBe(true);
  });
});
