import { describe, expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { loadEnvelopeOf } from '../../../src/model/loads/loadStates';
import { boxAircraft } from './boxAircraft';
import { endsByHand } from './sumsByHand';

/** RUNS=1000 looks longer. */
const SEEDS = Array.from({ length: Number(process.env.RUNS ?? 30) }, (_, k) => k + 1);
/** A step of the burn moves the CG by less than the rest of the tenth of a millimetre that is certified. */
const STEPS = 200;

describe('the ends of the CG over all load states, against sums of mass × arm', () => {
  const cases = SEEDS.map((seed) => {
    const aircraft = boxAircraft(seed);
    return { seed, aircraft, byHand: endsByHand(aircraft, STEPS) };
  });

  test('as the search through the load states finds them', () => {
    for (const { seed, aircraft, byHand } of cases) {
      const { foremost, aftmost, leftmost, rightmost, lightest, heaviest } = loadEnvelopeOf(aircraft, LEVEL)!;
      const pairs = [
        [foremost.cgMm[0], byHand.station[0]],
        [aftmost.cgMm[0], byHand.station[1]],
        [leftmost.cgMm[1], byHand.buttline[0]],
        [rightmost.cgMm[1], byHand.buttline[1]],
      ] as const;
      for (const [mm, handMm] of pairs) expect(Math.abs(mm - handMm), `seed ${seed}`).toBeLessThan(0.1);
      expect(lightest.massG, `seed ${seed}`).toBeCloseTo(byHand.massG[0], 6);
      expect(heaviest.massG, `seed ${seed}`).toBeCloseTo(byHand.massG[1], 6);
    }
  });

  test('as the judgement has them', () => {
    for (const { seed, aircraft, byHand } of cases) {
      const { foremost, aftmost } = judgeFully(aircraft, { down: LEVEL, estimate: null });
      expect(Math.abs(foremost!.cgMm[0] - byHand.station[0]), `seed ${seed}`).toBeLessThan(0.1);
      expect(Math.abs(aftmost!.cgMm[0] - byHand.station[1]), `seed ${seed}`).toBeLessThan(0.1);
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
