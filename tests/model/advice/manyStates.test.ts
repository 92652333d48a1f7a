import { expect, test, vi } from 'vitest';
import { advise } from '../../../src/model/advice/advise';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { aircraftOf, boxPart } from '../aircraft';

/** Ten parts that may each be off, strewn over 1.8 m, with a band of 1 mm: no place of one thing mends every state. */
const many: Aircraft = {
  ...aircraftOf(
    [],
    Array.from({ length: 10 }, (_, i) => boxPart(`part-${i}`, 100 + i, [200 * i, 0, 100 * (i % 2)])),
  ),
  targetBand: { by: 'station', forwardMm: 900, aftMm: 901 },
  switches: Array.from({ length: 9 }, (_, i) => ({
    id: `switch-${i}`,
    name: `Switch ${i}`,
    positions: [
      { id: 'on', name: 'on' },
      { id: 'off', name: 'off', without: [`part-${i}`] },
    ],
  })),
};

test('with more load states than are looked at one by one, few tries are judged, and that is said', () => {
  const judge = vi.fn(judgeFully);
  const { remedy, searched, noMoveOfOne } = advise(
    many,
    { down: LEVEL, estimate: null },
    { units: 'metric', fromMm: 0 },
    judge,
  );
  expect([remedy, noMoveOfOne]).toEqual([null, false]);
  expect(searched).toMatch(/^The CG wanders over .* The search was cut short:/);
  // Each of them searches all 512 load states; there were hundreds.
  expect(judge.mock.calls.length).toBeLessThanOrEqual(13);
});
