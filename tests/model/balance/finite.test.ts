import { describe, expect, test } from 'vitest';
import { sayIn } from '../../../src/commands/say';
import { bandFit } from '../../../src/engine/balance/band';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { verdict } from '../../../src/model/words/verdict';
import { aircraftOf, boxPart } from '../aircraft';

const say = sayIn('metric', null);
const words = (aircraft: Aircraft) =>
  verdict(aircraft, judgeFully(aircraft, { down: LEVEL, estimate: null }), say);
const withBand = (aircraft: Aircraft): Aircraft => ({
  ...aircraft,
  targetBand: { by: 'station', forwardMm: 0, aftMm: 100 },
});

describe('a figure that is no number', () => {
  test.each([
    ['two masses whose sum is infinite', [1e308, 1e308], 50],
    ['a moment that is infinite', [1e300, 1], 1e10],
    ['a mass that is none', [Number.NaN, 1], 50],
  ])('%s: no verdict, and the heaviest is named', (_, masses, stationMm) => {
    const parts = masses.map((massG, at) => boxPart(`p${at}`, massG, [stationMm, 0, 0]));
    const aircraft = withBand(aircraftOf([], parts));
    const balance = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });
    expect(balance).toMatchObject({ finite: false, cgMm: null, fit: null, travel: [] });
    const { tone, headline, cause } = words(aircraft);
    expect(tone).not.toBe('good');
    expect(headline).not.toMatch(/in the band/i);
    expect(cause).toContain('“p0”');
  });

  test('the same with masses that anybody has is in the band', () => {
    const aircraft = withBand(aircraftOf([], [boxPart('p0', 100, [50, 0, 0])]));
    const balance = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });
    expect(balance.finite).toBe(true);
    expect(words(aircraft).headline).toMatch(/^In the band/);
  });

  test('a station that is no number lies in no band', () => {
    const point = { fuelFraction: 1, massG: 1, cgMm: [Number.NaN, 0, 0] as const };
    expect(bandFit([point], { forwardMm: 0, aftMm: 100 })).toBeNull();
    expect(bandFit([{ ...point, cgMm: [5, 0, 0] }], { forwardMm: 0, aftMm: Number.NaN })).toBeNull();
  });
});
