import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { bandToKeep } from '../../../src/model/judgement/bandToKeep';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { changeStability } from '../../../src/model/stability/stability';
import { aircraftOf, boxPart } from '../aircraft';
import { estimateAt } from './estimate';

/** Limits of 500 to 540; the least margin that is usual for its kind is 8 %, of a MAC of 200 mm: 16 mm. */
const at = (stationMm: number): Aircraft => ({
  ...aircraftOf([], [boxPart('pack', 1000, [stationMm, 0, 0])]),
  targetBand: { by: 'station', forwardMm: 500, aftMm: 540 },
});
const kept = (aircraft: Aircraft, neutralPointMm: number, estimateFresh = true) => {
  const estimate = estimateAt(neutralPointMm);
  return bandToKeep(balanceAt(aircraft, { fuelFraction: 1, down: LEVEL, estimate, estimateFresh }), aircraft);
};

describe('what a place is held against: the limits, and the margin that the verdict asks for', () => {
  test.each([
    ['limits well ahead of the neutral point', 600, 540, 'limits'],
    ['an aft limit with too little margin: 550 − 16', 550, 534, 'usual margin'],
    ['limits that leave no usual margin: at least 2 %, 510 − 4', 510, 506, 'usual margin'],
    ['limits behind the neutral point: nothing keeps both', 480, 476, 'usual margin'],
  ] as const)('%s', (_what, neutralPointMm, aftMm, keptFor) => {
    expect(kept(at(520), neutralPointMm)).toEqual({ forwardMm: 500, aftMm, keptFor });
  });

  test('a margin that is wanted narrows both ends: 550 − 16 to 550 − 8', () => {
    const wanted = changeStability(at(520), { marginRange: { minPct: 4, maxPct: 8 } });
    expect(kept(wanted, 550)).toEqual({ forwardMm: 534, aftMm: 540, keptFor: 'margin wanted' });
  });

  test('an estimate that is out of date narrows nothing; without a band there is nothing to keep', () => {
    expect(kept(at(520), 550, false)).toEqual({ forwardMm: 500, aftMm: 540, keptFor: 'limits' });
    expect(kept({ ...at(520), targetBand: null }, 550)).toBeNull();
  });

  test('at its aft end the verdict has no word about the margin, and a little behind it has', () => {
    const kindsAt = (stationMm: number) =>
      judgeFully(at(stationMm), { down: LEVEL, estimate: estimateAt(550) }).findings.map(({ kind }) => kind);
    expect(kindsAt(534)).not.toContain('margin-under');
    expect(kindsAt(534.01)).toContain('margin-under');
  });
});
