import { expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { type Beginning, beginAircraft } from '../../../src/model/begin/beginAircraft';
import { containsWords, type Kit } from '../../../src/model/begin/finishedKit';
import { readAircraft } from '../../../src/model/reading/read';

const wish: Beginning = {
  arrangement: 'high-wing',
  typed: { spanMm: 1500 },
  construction: 'balsa',
  motor: 'electric',
  massG: null,
  kit: null,
  band: null,
};
const weighed = (change: Partial<Kit> = {}): Kit => ({
  massG: 900,
  balancesMm: 400,
  contains: [],
  ...change,
});
const whole = (kit: Kit | null, massG: number | null = null) => beginAircraft({ ...wish, kit, massG });

test('the weighed airframe stands for all its shapes: the sum is the scales’ figure and what is listed beside', () => {
  // Without propeller and spinner all that is listed is a box, whose CG is its middle.
  const aircraft = whole(weighed({ contains: ['motor'] }));
  expect(readAircraft(structuredClone(aircraft))).toMatchObject({ ok: true });
  const { massG, cgMm } = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });
  const listed = aircraft.parts.reduce((sum, part) => sum + part.massG, 0);
  expect(massG).toBeCloseTo(900 + listed, 6);
  const moment = aircraft.parts.reduce((sum, part) => sum + part.massG * part.positionMm[0], 900 * 400);
  expect(cgMm?.[0]).toBeCloseTo(moment / (900 + listed), 6);
});

test('what was on the scales is not listed again, and the file says what was', () => {
  const aircraft = whole(weighed({ contains: ['servos', 'motor'] }));
  expect(aircraft.parts.filter(({ role }) => role === 'control')).toEqual([]);
  expect(aircraft.parts.map(({ id }) => id).filter((id) => /motor|propeller|spinner/.test(id))).toEqual([]);
  expect(aircraft.parts.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['controller', 'receiver', 'flight-pack']),
  );
  expect(aircraft.bareAirframe?.contains).toBe('the structure, servos and motor with propeller');
});

test('with all but the pack ticked, airframe and pack are the aircraft', () => {
  const aircraft = whole(weighed({ contains: ['servos', 'motor', 'controller', 'receiver'] }), 1200);
  expect(aircraft.parts.map(({ id }) => id)).toEqual(['flight-pack']);
  expect(balanceAt(aircraft, { fuelFraction: 1, down: LEVEL }).massG).toBeCloseTo(1200, 0);
});

test('an airframe that nobody balanced is given a large ±', () => {
  const { bareAirframe } = whole(weighed({ balancesMm: null }));
  expect(bareAirframe?.plusMinusMm).toBeGreaterThan(30);
  expect(whole(weighed()).bareAirframe?.plusMinusMm).toBeUndefined();
});

test('in words', () => {
  expect(containsWords([])).toBe('the structure alone');
  expect(containsWords(['receiver'])).toBe('the structure and receiver');
});

test('an airframe that has everything in it is the whole aircraft', () => {
  const aircraft = whole(weighed({ contains: ['servos', 'motor', 'controller', 'receiver', 'pack'] }));
  expect(readAircraft(structuredClone(aircraft))).toMatchObject({ ok: true });
  expect(balanceAt(aircraft, { fuelFraction: 1, down: LEVEL })).toMatchObject({ massG: 900 });
});
