import { describe, expect, test } from 'vitest';
import type { TravelPoint } from '../../../src/engine/balance/travel';
import type { Positions } from '../../../src/model/airframe/loadSwitches';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft, SwitchItem } from '../../../src/model/document/types';
import { type StateBalance, stateBalances } from '../../../src/model/judgement/flyingStates';
import { cgPoint, farthestOut, isFinitePoint, judgedState } from '../../../src/model/judgement/states';
import type { Judgement, Known } from '../../../src/model/judgement/types';
import { aircraftOf, boxPart } from '../aircraft';

const band = { forwardMm: 500, aftMm: 540, from: 'stated' } as const;
const neutralPoint = { stationMm: 560, macMm: 200 };
const against = { band, neutralPoint };
const travelAt = (fuelFraction: number, x: number, y = 0): TravelPoint => ({
  ...{ fuelFraction, massG: 1000, cgMm: [x, y, 0] },
});

describe('how a point lies', () => {
  test.each([
    [540, 0],
    [540 + 1e-10, 0],
    [540.001, 0.001],
    [500, 0],
    [500 - 1e-10, 0],
    [499.999, -0.001],
  ])('at %d', (stationMm, outsideMm) => {
    expect(cgPoint(travelAt(1, stationMm), {}, against).outsideMm).toBeCloseTo(outsideMm, 9);
  });

  test('what may lie farther aft counts aft, never forward', () => {
    expect(cgPoint(travelAt(1, 539.5), {}, against, 1).outsideMm).toBeCloseTo(0.5, 9);
    expect(cgPoint(travelAt(1, 499.5), {}, against, 1).outsideMm).toBeCloseTo(-0.5, 9);
    // (560 − 521)/200.
    expect(cgPoint(travelAt(1, 520), {}, against, 1).marginPct).toBeCloseTo(19.5, 9);
  });

  test('without a band or a neutral point there is nothing to say of them', () => {
    const { outsideMm, marginPct } = cgPoint(travelAt(1, 520), {}, { band: null, neutralPoint: null });
    expect([outsideMm, marginPct]).toEqual([null, null]);
  });
});

describe('a load state over its burn', () => {
  const state = (travel: readonly TravelPoint[], travelWithinMm = 0): StateBalance =>
    ({ positions: { a: 'b' }, flies: true, balance: { travel, travelWithinMm } }) as unknown as StateBalance;

  test('its ends need not be its extremes', () => {
    const travel = [travelAt(1, 520, 1), travelAt(0.6, 530, -4), travelAt(0.3, 510, 3), travelAt(0, 515, 2)];
    const judged = judgedState(state(travel, 0.2), against);
    expect(judged).toMatchObject({
      positions: { a: 'b' },
      flies: true,
      burns: true,
      full: { fuelFraction: 1 },
      dry: { fuelFraction: 0 },
      foremost: { fuelFraction: 0.3, maybeAftMm: 0 },
      aftmost: { fuelFraction: 0.6, maybeAftMm: 0.2 },
      mostLateral: { fuelFraction: 0.6 },
    });
  });

  test('of several that lie equally far out the first is named', () => {
    const travel = [travelAt(1, 520, 2), travelAt(0.5, 520, -2), travelAt(0, 520, 2)];
    const { foremost, aftmost, mostLateral } = judgedState(state(travel), against)!;
    expect([foremost, aftmost, mostLateral].map(({ fuelFraction }) => fuelFraction)).toEqual([1, 1, 1]);
  });

  test('a point that is no number is found, wherever it stands', () => {
    const travel = [travelAt(1, 520), travelAt(0.5, Number.NaN, Number.NaN), travelAt(0, 515)];
    const { foremost, aftmost, mostLateral } = judgedState(state(travel), against)!;
    for (const point of [foremost, aftmost, mostLateral]) expect(isFinitePoint(point)).toBe(false);
    expect(isFinitePoint(travelAt(1, 520))).toBe(true);
    expect(isFinitePoint({ ...travelAt(1, 520), massG: Number.POSITIVE_INFINITY })).toBe(false);
  });

  test('one point is no burn, and none is no state', () => {
    expect(judgedState(state([travelAt(1, 520)]), against)?.burns).toBe(false);
    expect(judgedState(state([]), against)).toBeNull();
  });
});

describe('which of all load states lies farthest out', () => {
  const judgement = (foremostMm: number, aftmostMm: number, withBand = true) =>
    ({
      foremost: cgPoint(travelAt(0.1, foremostMm), {}, against),
      aftmost: cgPoint(travelAt(0.9, aftmostMm), {}, against),
      band: withBand ? band : null,
    }) as unknown as Judgement;
  const farthest = (...given: Parameters<typeof judgement>) =>
    farthestOut(judgement(...given))?.fuelFraction === 0.9 ? 'aftmost' : 'foremost';

  test.each([
    // Behind the aft limit it is that, however far ahead another lies.
    [400, 541, 'aftmost'],
    // Between the limits the one that is nearer to its own; both as near: aft, the dangerous side.
    [505, 530, 'foremost'],
    [515, 530, 'aftmost'],
    [510, 530, 'aftmost'],
    [490, 530, 'foremost'],
  ])('from %d to %d', (foremostMm, aftmostMm, which) => {
    expect(farthest(foremostMm, aftmostMm)).toBe(which);
  });

  test('without a band the aftmost; without a CG none', () => {
    expect(farthest(400, 530, false)).toBe('aftmost');
    expect(farthestOut({ foremost: null, aftmost: null, band } as unknown as Judgement)).toBeNull();
  });
});

describe('the load states that are looked at one by one', () => {
  const known: Known = {
    ...{ down: LEVEL, estimate: null, loads: { status: 'unfinished' }, fit: null, certainty: null },
  };
  const switchOf = (id: string, onStand = false): SwitchItem => ({
    id,
    name: id,
    positions: [
      { id: 'on', name: 'on' },
      { id: 'off', name: 'off', without: [`${id}-part`], ...(onStand && { onStand: true }) },
    ],
  });
  const aircraft = (switches: readonly SwitchItem[]): Aircraft => ({
    ...aircraftOf(
      [],
      switches.map(({ id }, i) => boxPart(`${id}-part`, 100, [200 * i, 0, 0])),
    ),
    switches,
  });
  const looked = (of: Aircraft, positions?: Positions) =>
    stateBalances(of, positions ? { ...known, positions } : known);
  const named = (count: number) => Array.from({ length: count }, (_, i) => switchOf(`s${i}`));

  test('all of them up to sixteen, each once, with the one shown first', () => {
    const { states, all, shown } = looked(aircraft(named(4)), { s1: 'off' });
    expect([states.length, all]).toEqual([16, true]);
    expect(states[0]).toBe(shown);
    const keys = states.map(({ positions }) => [0, 1, 2, 3].map((i) => positions[`s${i}`] ?? 'on').join());
    expect(new Set(keys).size).toBe(16);
  });

  test('beyond sixteen only the one shown', () => {
    const { states, all, shown } = looked(aircraft(named(5)), { s1: 'off' });
    expect([states, all]).toEqual([[shown], false]);
  });

  test('one of the stand is shown, and the others judged; it is not among them', () => {
    const of = aircraft([switchOf('lid', true), switchOf('camera')]);
    const { states, shown } = looked(of, { lid: 'off' });
    expect(shown.flies).toBe(false);
    expect(states).toHaveLength(2);
    expect(states.every(({ flies }) => flies)).toBe(true);
    expect(states).not.toContain(shown);
  });

  test('beyond sixteen, with one of the stand shown, the start is judged in its place', () => {
    const { states, shown } = looked(aircraft([switchOf('lid', true), ...named(5)]), { lid: 'off' });
    expect(shown.flies).toBe(false);
    expect(states).toHaveLength(1);
    expect(states[0]?.flies).toBe(true);
  });

  test('a balance at hand is taken, and the others are worked out with the same estimate and down', () => {
    const of = aircraft(named(1));
    const { shown } = looked(of);
    const again = stateBalances(of, { ...known, balance: shown.balance });
    expect(again.shown.balance).toBe(shown.balance);
    const stale = stateBalances(of, { ...known, estimateFresh: false });
    expect(stale.states.map(({ balance }) => balance.estimateFresh)).toEqual([false, false]);
  });
});
