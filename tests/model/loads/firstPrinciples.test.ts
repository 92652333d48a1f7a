import { describe, expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { loadEnvelopeOf } from '../../../src/model/loads/loadStates';
import { boxAircraft } from './boxAircraft';
import { endsByHand } from './sumsByHand';

/** RUNS=1000 looks longer. */
const SEEDS = Array.from({ length: Number(process.env.RUNS ?? 30) }, (_, k) => k + 1);
const STEPS = 200;
/** What the ends are certified to, and by how much a step of the burn by hand may pass a top by, mm. */
const [CERTAIN_MM, STEP_MM] = [0.1, 0.3];

/** That an end was found where the sums have it: short of theirs by no more than is certified. */
function expectEnd(foundMm: number, handMm: number, way: 1 | -1, seed: number) {
  expect(way * (handMm - foundMm), `seed ${seed}`).toBeLessThan(CERTAIN_MM);
  expect(way * (foundMm - handMm), `seed ${seed}`).toBeLessThan(STEP_MM);
}

describe('the ends of the CG over all load states, against sums of mass × arm', () => {
  const cases = SEEDS.map((seed) => {
    const aircraft = boxAircraft(seed);
    return { seed, aircraft, byHand: endsByHand(aircraft, STEPS) };
  });

  test('as the search through the load states finds them', () => {
    for (const { seed, aircraft, byHand } of cases) {
      const { foremost, aftmost, leftmost, rightmost, lightest, heaviest } = loadEnvelopeOf(aircraft, LEVEL)!;
      expectEnd(foremost.cgMm[0], byHand.station[0], -1, seed);
      expectEnd(aftmost.cgMm[0], byHand.station[1], 1, seed);
      expectEnd(leftmost.cgMm[1], byHand.buttline[0], -1, seed);
      expectEnd(rightmost.cgMm[1], byHand.buttline[1], 1, seed);
      expect(lightest.massG, `seed ${seed}`).toBeCloseTo(byHand.massG[0], 6);
      expect(heaviest.massG, `seed ${seed}`).toBeCloseTo(byHand.massG[1], 6);
    }
  });

  test('as the judgement has them', () => {
    for (const { seed, aircraft, byHand } of cases) {
      const { foremost, aftmost } = judgeFully(aircraft, { down: LEVEL, estimate: null });
      expectEnd(foremost!.cgMm[0], byHand.station[0], -1, seed);
      expectEnd(aftmost!.cgMm[0], byHand.station[1], 1, seed);
    }
  });

  test('with much of everything among them', () => {
    const have = (what: (aircraft: (typeof cases)[number]['aircraft']) => boolean) =>
      cases.filter(({ aircraft }) => what(aircraft)).length;
    expect(have(({ tanks }) => tanks.some(({ feeds }) => feeds !== 'outlet'))).toBeGreaterThan(5);
    expect(have(({ leads = [] }) => leads.some(({ waypointsMm }) => waypointsMm.length > 0))).toBeGreaterThan(
      10,
    );
    expect(have(({ bareAirframe }) => bareAirframe !== null)).toBeGreaterThan(10);
    expect(have(({ switches = [] }) => switches.length > 2)).toBeGreaterThan(10);
  });
});
