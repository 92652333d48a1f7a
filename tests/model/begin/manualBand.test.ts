import { expect, test } from 'vitest';
import { type Beginning, beginAircraft } from '../../../src/model/begin/beginAircraft';
import { type ManualBand, manualBandFault } from '../../../src/model/begin/manualBand';
import { readAircraft } from '../../../src/model/reading/read';

const wish: Beginning = {
  arrangement: 'low-wing',
  typed: { spanMm: 1800, rootChordMm: 330, wingAtMm: 345 },
  construction: 'balsa',
  motor: 'petrol',
  massG: null,
  kit: null,
  band: null,
};
const stated = (band: Partial<ManualBand>, change: Partial<Beginning> = {}) =>
  beginAircraft({
    ...wish,
    ...change,
    band: { fromId: 'wing-root-le', forwardMm: 105, aftMm: 115, fuelPct: null, ...band },
  });

// By hand: the wing's leading edge stands 345 mm behind the nose and its trailing edge 330 mm behind that.
test.each([
  ['wing-root-le', 105, 115, 450, 460],
  ['nose', 450, 460, 450, 460],
  ['wing-root-te', -225, -215, 450, 460],
] as const)(
  'measured from %s, %d to %d mm are the stations %d to %d mm',
  (fromId, forwardMm, aftMm, from, to) => {
    const aircraft = stated({ fromId, forwardMm, aftMm });
    expect(aircraft.targetBand).toEqual({ by: 'station', forwardMm: from, aftMm: to, statedFrom: fromId });
    expect(readAircraft(structuredClone(aircraft))).toMatchObject({ ok: true });
  },
);

test('stated for an empty tank they hold for that load state, and without a tank for every one', () => {
  expect(stated({ fuelPct: 0 }).targetBand).toMatchObject({ statedFor: { fuelPct: 0, switches: [] } });
  expect(stated({ fuelPct: 0 }, { motor: 'electric' }).targetBand).not.toHaveProperty('statedFor');
});

test('the manual’s limits stand in place of an estimate', () => {
  expect(stated({}).stability?.marginRange).toBeUndefined();
  expect(beginAircraft(wish)).toMatchObject({ targetBand: null, stability: { marginRange: { minPct: 8 } } });
});

test('limits the wrong way round are refused in a sentence', () => {
  expect(manualBandFault({ forwardMm: 115, aftMm: 105 })).toMatch(/^The first figure .*\.$/);
  expect(manualBandFault({ forwardMm: 105, aftMm: 105 })).not.toBeNull();
  expect(manualBandFault({ forwardMm: 105, aftMm: 115 })).toBeNull();
});
