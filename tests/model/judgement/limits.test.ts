import { expect, test } from 'vitest';
import { blankAircraft } from '../../../src/model/document/blank';
import { lateralLimitMm, marginWish } from '../../../src/model/judgement/limits';

test('a margin that was asked for counts as asked for, both its ends as they were typed', () => {
  const asked = { ...blankAircraft(), stability: { marginRange: { minPct: 7, maxPct: 12 } } };
  expect(marginWish(asked)).toEqual({ leastPct: 7, mostPct: 12, wanted: true });
});

test('what is usual for the kind is nobody’s wish, and has no end forward', () => {
  for (const stability of [undefined, { marginRange: null }]) {
    const wish = marginWish({ ...blankAircraft(), ...(stability && { stability }) });
    expect(wish).toMatchObject({ mostPct: null, wanted: false });
    expect(wish.leastPct).toBeGreaterThan(0);
  }
});

test('a limit of 0 off centre is none', () => {
  expect(lateralLimitMm({ ...blankAircraft(), lateralToleranceMm: 0 })).toBeNull();
  expect(lateralLimitMm({ ...blankAircraft(), lateralToleranceMm: 0.5 })).toBe(0.5);
});
