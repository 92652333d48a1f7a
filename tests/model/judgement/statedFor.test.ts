import { expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { readAircraft } from '../../../src/model/reading/read';
import { verdict } from '../../../src/model/words/verdict';
import { readings } from '../../../src/panels/readings';
import { aircraftOf, boxPart } from '../aircraft';

const say = readings('metric', 0);

/**
 * A thing of 900 g at station 100 and a litre of 1 g/ml in a box about station 200, by hand: dry the CG is at 100, with
 * half of it at (900·100 + 500·200)/1400 = 135.71, full at (900·100 + 1000·200)/1900 = 152.63.
 */
const withFuel = (targetBand: Aircraft['targetBand']): Aircraft => ({
  ...aircraftOf([], [boxPart('pack', 900, [100, 0, 0])]),
  targetBand,
  fuel: {
    kind: 'petrol',
    name: 'Petrol',
    densityGPerMl: 1,
    use: 'burn',
    share: 'volume',
    flow: { idleMlPerMin: 10, fullMlPerMin: 10 },
    profile: { name: 'Cruise', phases: [{ name: 'Cruise', durationS: 6000, throttlePct: 50 }] },
    reservePct: 0,
  },
  tanks: [
    {
      id: 'tank',
      name: 'Tank',
      shape: { kind: 'box', lengthMm: 100, widthMm: 100, heightMm: 100 },
      positionMm: [200, 0, 0],
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
      emptyMassG: 0,
      startMl: null,
      unusableMl: 0,
      feeds: 'outlet',
      rank: 1,
    },
  ],
});

const limits = (fuelPct: number | null) =>
  withFuel({
    by: 'station',
    forwardMm: 95,
    aftMm: 105,
    ...(fuelPct !== null && { statedFor: { fuelPct, switches: [] } }),
  });
const judged = (aircraft: Aircraft) => judgeFully(aircraft, { down: LEVEL, estimate: null });

test('limits for every load state are missed with the tank full, by 152.63 − 105 = 47.63 mm', () => {
  const { severity, aftmost, statedFor } = judged(limits(null));
  expect(severity).toBe('bad-aft');
  expect(aftmost?.outsideMm).toBeCloseTo((900 * 100 + 1000 * 200) / 1900 - 105, 0);
  expect(statedFor).toBeNull();
});

test('limits for dry tanks are kept by the same aircraft, and full it is shown where it goes', () => {
  const aircraft = limits(0);
  expect(readAircraft(structuredClone(aircraft))).toMatchObject({ ok: true });
  const judgement = judged(aircraft);
  expect(judgement.findings.map(({ kind }) => kind)).not.toContain('tail-heavy');
  expect(judgement.statedFor?.cgMm[0]).toBeCloseTo(100, 6);
  // Lengths are spoken rounded away from the limit: 47.63 as 48.
  const { headline, cause } = verdict(aircraft, judgement, say);
  expect(headline).toContain('In the band, tanks dry');
  expect(cause).toContain('stated for this load state alone');
  expect(cause).toMatch(/48\smm aft of them \(tanks full\)/);
});

test('limits for half a tank are missed by 135.71 − 105 = 30.71 mm, whatever it is dry', () => {
  const { findings, severity } = judged(limits(50));
  expect(severity).toBe('bad-aft');
  expect(findings[0]).toMatchObject({ kind: 'tail-heavy', outsideMm: expect.closeTo(30.714, 1) });
});
