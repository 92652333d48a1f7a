import { expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { eachVariant } from '../../../src/model/document/variants';
import { bestVariant, spareMm } from '../../../src/model/judgement/bestVariant';
import { judgedVariant } from '../../../src/model/judgement/judgedVariant';
import type { Judgement, Severity } from '../../../src/model/judgement/types';
import { withPower } from '../../../src/model/judgement/withPower';
import { demo } from '../../demo/demoAircraft';

/** A judgement of nothing but its worst finding and a band of 100 to 120 mm with the CG between two stations. */
const judged = (id: string, severity: Severity, foreMm: number, aftMm: number, maybeAftMm = 0) => ({
  id,
  judgement: {
    severity,
    band: { forwardMm: 100, aftMm: 120, from: 'stated' },
    foremost: { cgMm: [foreMm, 0, 0], maybeAftMm: 0 },
    aftmost: { cgMm: [aftMm, 0, 0], maybeAftMm },
  } as unknown as Judgement,
});

test('the room is that to the nearer limit, what may lie farther aft counted', () => {
  expect(spareMm(judged('a', 'good', 104, 110).judgement)).toBe(4);
  expect(spareMm(judged('a', 'good', 106, 117, 1).judgement)).toBe(2);
  expect(spareMm(judged('a', 'bad-aft', 106, 125).judgement)).toBe(-5);
});

test('fewer faults come before more room; then more room; none where nothing tells them apart or none may fly', () => {
  const [roomy, tight] = [judged('roomy', 'caution', 109, 111), judged('tight', 'good', 101, 119)];
  expect(bestVariant([roomy, tight])).toEqual({ id: 'tight', by: 'findings', spareMm: 1 });
  const wide = judged('wide', 'good', 105, 112);
  expect(bestVariant([tight, wide])).toEqual({ id: 'wide', by: 'spare', spareMm: 5 });
  expect(bestVariant([tight, { ...tight, id: 'twin' }])).toBeNull();
  expect(bestVariant([judged('a', 'bad', 90, 95), judged('b', 'bad-aft', 121, 125)])).toBeNull();
  expect(bestVariant([tight])).toBeNull();
});

test('a variant whose wiring does not hold is not the best, however well it balances', () => {
  // Whimbrel's long-range variant has a cell too many on purpose; its CG is inside the limits.
  const all = eachVariant(demo('whimbrel')).map(({ variant, aircraft }) =>
    judgedVariant(variant.id, aircraft, LEVEL),
  );
  const far = all.find(({ id }) => id === 'long-range');
  expect(far?.judgement.severity).toBe('bad');
  expect(spareMm(far!.judgement)).toBeGreaterThan(0);
  const others = all.map((each) =>
    each.id === 'long-range' ? each : { ...each, judgement: { ...each.judgement, severity: 'bad' as const } },
  );
  expect(bestVariant(others)).toBeNull();
  // Said once, however often it is asked for.
  const { aircraft } = eachVariant(demo('whimbrel')).find(({ variant }) => variant.id === 'long-range')!;
  expect(withPower(aircraft, far!.judgement)).toEqual(far?.judgement);
});
