import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import {
  ATTITUDES,
  attitudeName,
  attitudeTravel,
  downOf,
  LEVEL_ATTITUDE,
} from '../../../src/model/loads/attitude';
import { readAircraft } from '../../../src/model/reading/read';
import { createBench } from '../../../src/store/bench';
import { setAttitude, setSwitch } from '../../../src/store/viewStore';
import { dunlinJson } from '../aircraft';

const read = readAircraft(dunlinJson());
if (!read.ok) throw new Error(read.faults[0]?.sentence);
const { aircraft } = read;

describe('the attitude travel', () => {
  const half = balanceAt(aircraft, { fuelFraction: 0.5, down: LEVEL });

  test('its ends are the CGs of the balance in those very attitudes', () => {
    const all = ATTITUDES.map((attitude) => ({
      name: attitude.name,
      mm: balanceAt(aircraft, { fuelFraction: 0.5, down: downOf(attitude) }).cgMm![0],
    }));
    const { station } = attitudeTravel(half)!;
    const [least, most] = [
      all.reduce((a, b) => (b.mm < a.mm ? b : a)),
      all.reduce((a, b) => (b.mm > a.mm ? b : a)),
    ];
    expect(station.least.mm).toBeCloseTo(least.mm, 9);
    expect(station.most.mm).toBeCloseTo(most.mm, 9);
    expect([station.least.attitude, station.most.attitude]).toEqual([least.name, most.name]);
    // Nose down liquid runs forward, nose up or thrown forward it runs aft.
    expect(station.least.attitude).toBe('45° dive');
    expect(station.most.mm).toBeGreaterThan(station.least.mm + 0.1);
  });

  test('brim-full tanks do not move the CG', () => {
    const brim = {
      ...aircraft,
      tanks: aircraft.tanks.map((tank) => ({ ...tank, startMl: null })),
    };
    const { station, buttline } = attitudeTravel(balanceAt(brim, { fuelFraction: 1, down: LEVEL }))!;
    expect(station.most.mm - station.least.mm).toBeLessThan(1e-6);
    expect(buttline.most.mm - buttline.least.mm).toBeLessThan(1e-6);
  });
});

test.each([
  [{ pitchDeg: 10, rollDeg: 0, forwardG: 3 }, 'Launch, 3 g'],
  [{ pitchDeg: 5, rollDeg: 0, forwardG: 3 }, '5° climb, 3 g forward'],
  [{ pitchDeg: 0, rollDeg: 0, forwardG: 3 }, 'Level, 3 g forward'],
  [{ pitchDeg: -20, rollDeg: 90, forwardG: 0 }, '20° dive, knife edge'],
  [{ pitchDeg: 5, rollDeg: 180, forwardG: 0 }, '5° climb, inverted'],
  [{ pitchDeg: 0, rollDeg: -30, forwardG: 0 }, '30° left bank'],
  [{ pitchDeg: -5, rollDeg: 0, forwardG: -0.5 }, '5° dive, 0.5 g braking'],
  [{ pitchDeg: 0, rollDeg: 0, forwardG: -0.5 }, 'Braking, 0.5 g'],
  [{ pitchDeg: 0, rollDeg: 180, forwardG: 0 }, 'Inverted'],
])('the name says all that is applied: %o is %s', (attitude, name) => {
  expect(attitudeName(attitude)).toBe(name);
});

test('after the launch is chosen the slider changes the nose alone, and the name says that 3 g are still on', () => {
  const bench = createBench(aircraft);
  const launch = ATTITUDES.find(({ id }) => id === 'launch')!;
  setAttitude(bench.view, launch);
  setAttitude(bench.view, { pitchDeg: 5 });
  expect(attitudeName(bench.view.getState().attitude)).toBe('5° climb, 3 g forward');
  // By hand: (sin 5° + 3, 0, −cos 5°), made a unit.
  const [x, , z] = bench.view.getState().down;
  expect(x / -z).toBeCloseTo((Math.sin(Math.PI / 36) + 3) / Math.cos(Math.PI / 36), 9);
});

test('inverted, liquid lies on the roof; braking, it runs forward', () => {
  const downOfId = (id: string) => downOf(ATTITUDES.find((one) => one.id === id)!);
  expect(downOfId('inverted').map((mm) => mm + 0)).toEqual([0, 0, 1]);
  expect(downOfId('braking')[0]).toBeLessThan(0);
});

test('level is one and the same vector, and every attitude has a name', () => {
  expect(downOf(LEVEL_ATTITUDE)).toBe(LEVEL);
  expect(attitudeName({ pitchDeg: -45, rollDeg: 0, forwardG: 0 })).toBe('45° dive');
  expect(attitudeName({ pitchDeg: 12, rollDeg: 0, forwardG: 0 })).toBe('12° climb');
});

test('on the bench the CG follows attitude and switches', () => {
  const bench = createBench({
    ...aircraft,
    switches: [
      {
        id: 'first',
        name: 'First',
        positions: [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: [aircraft.parts[0]!.id] },
        ],
      },
    ],
  });
  bench.view.setState({ fuelFraction: 0.5 });
  let told = 0;
  bench.balance.subscribe(() => {
    told += 1;
  });
  const level = bench.balance.get();
  setAttitude(bench.view, { pitchDeg: 30 });
  expect(bench.balance.get().cgMm![0]).toBeGreaterThan(level.cgMm![0]);
  expect(bench.balance.get().liquids[0]!.surface!.down[0]).toBeCloseTo(0.5, 12);
  setAttitude(bench.view, LEVEL_ATTITUDE);
  expect(bench.balance.get().cgMm).toEqual(level.cgMm);
  setSwitch(bench.view, 'first', 'off');
  expect(bench.balance.get().massG).toBeCloseTo(level.massG - aircraft.parts[0]!.massG, 9);
  expect(told).toBe(3);
});

test.each([
  [{ pitchDeg: 0, rollDeg: -30, forwardG: 0 }, '30° left bank'],
  [{ pitchDeg: 0, rollDeg: 30, forwardG: 0 }, '30° right bank'],
  [{ pitchDeg: 0, rollDeg: 90, forwardG: 0 }, 'knife edge'],
])('a bank is told by the wing that is low: %o', (attitude, words) => {
  expect(attitudeName({ ...LEVEL_ATTITUDE, ...attitude }).toLowerCase()).toContain(words);
});
