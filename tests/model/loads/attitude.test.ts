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
