import { describe, expect, test } from 'vitest';
import { burnClock, endOf, fractionAt, phaseAt, timeOfFraction } from '../../src/panels/burn/burnClock';
import { burnProfiles, dumpProfiles } from '../../src/panels/burn/profiles';
import { waterTank } from './builders';

const { fuel } = waterTank(0);
if (!fuel) throw new Error('the tank must hold water');
const clock = burnClock(fuel, 200);
if (!clock) throw new Error('the water must run');

describe('the burn’s clock', () => {
  test('200 ml at 60 ml/min are gone after 200 s', () => {
    expect(endOf(clock)).toBeCloseTo(200, 9);
    expect(fractionAt(clock, 0)).toBe(1);
    expect(fractionAt(clock, 50)).toBeCloseTo(0.75, 12);
    expect(fractionAt(clock, 999)).toBeCloseTo(0, 12);
  });

  test('time and fraction undo each other', () => {
    for (const atS of [0, 12.5, 100, 199]) {
      expect(timeOfFraction(clock, fractionAt(clock, atS))).toBeCloseTo(atS, 5);
    }
  });

  test('a profile that ends with water left never comes to dry', () => {
    const short = {
      ...fuel,
      profile: { name: 'Short', phases: [{ name: 'Open', durationS: 60, throttlePct: 100 }] },
    };
    const half = burnClock(short, 200);
    expect(half && timeOfFraction(half, 0)).toBeNull();
    expect(half && endOf(half)).toBe(60);
    expect(half && fractionAt(half, 60)).toBeCloseTo(0.7, 12);
  });

  test('nothing burns without fuel, without anything in the tanks, or without a phase', () => {
    expect(burnClock(null, 200)).toBeNull();
    expect(burnClock(fuel, 0)).toBeNull();
    expect(burnClock({ ...fuel, profile: { name: 'None', phases: [] } }, 200)).toBeNull();
  });

  test('names the phase that is being flown', () => {
    const phases = [
      { name: 'Shut', durationS: 10, throttlePct: 0 },
      { name: 'Open', durationS: 10, throttlePct: 100 },
    ];
    const two = { ...fuel, profile: { name: 'Two', phases } };
    expect([0, 9.9, 10, 25].map((atS) => phaseAt(two, atS))).toEqual(['Shut', 'Shut', 'Open', 'Open']);
  });

  test('every ready-made profile can be flown', () => {
    for (const profile of [...burnProfiles, ...dumpProfiles]) {
      expect(burnClock({ ...fuel, profile }, 200), profile.name).not.toBeNull();
    }
  });
});
