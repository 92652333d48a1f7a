import { expect, it } from 'vitest';
import { packWays } from '../../../src/model/advice/packWays';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { addPart } from '../../../src/model/document/edit';
import type { Aircraft, Part, PartPower, PowerUse } from '../../../src/model/document/types';
import { aircraftFaults } from '../../../src/model/reading/faults';
import { aircraftOf, boxPart } from '../aircraft';
import { squareHull } from '../fit/fitAircraft';

const given = { down: LEVEL, estimate: null };
const servo: PowerUse = { kind: 'servo', minV: 4.8, maxV: 8.4, meanA: 1, peakA: 2 };
const ignition: PowerUse = { kind: 'ignition', minV: 4.8, maxV: 8.4, meanA: 0.5, peakA: 1 };
const lipo = (capacityMah: number): PartPower => ({ pack: { chemistry: 'lipo', cells: 2, capacityMah } });
const wired = (id: string, massG: number, x: number, power: PartPower): Part => ({
  ...boxPart(id, massG, [x, 0, 0]),
  power,
});

/** A hull without mass, 0 to 600 mm, a receiver pack and an ignition pack. Ten minutes, with no reserve. */
const twoPacks = (aftMm: number): Aircraft => ({
  ...aircraftOf(
    [{ ...squareHull, mass: { by: 'weighed', massG: 0 } }],
    [
      wired('control', 200, 300, lipo(2000)),
      wired('engine', 100, 100, lipo(1000)),
      wired('servo', 100, 500, { use: servo, fedBy: [{ from: 'control' }] }),
      wired('ignition', 100, 200, { use: ignition, fedBy: [{ from: 'engine' }] }),
    ],
  ),
  kind: 'petrol',
  targetBand: { by: 'station', forwardMm: aftMm - 60, aftMm },
  lateralToleranceMm: 0,
  powerFlight: { phases: [{ name: 'Flight', durationS: 600, throttlePct: 100 }], reservePct: 0 },
});

it('one for all is the larger one, no larger than it must be; two for one where it carries control alone', () => {
  const ways = packWays(twoPacks(300), given);
  expect(ways.map(({ name }) => name)).toEqual([
    'As it is',
    'control for all',
    'Two packs in place of control',
  ]);
  const [asIs, forAll, two] = ways;
  // 200 + 100 + 100 + 100.
  expect(asIs?.massG).toBe(500);
  // (200·300 + 100·100 + 100·500 + 100·200)/500.
  expect(asIs?.cgMm?.full).toBeCloseTo(280, 6);
  // 1.5 A for ten minutes: 250 mAh ÷ 80 % = 312.5, so 450 mAh: 200 g · 450/2000 = 45 g, and no second pack.
  expect(forAll?.massG).toBe(245);
  expect(forAll?.lastsS).toBeCloseTo((450 * 0.8 * 3.6) / 1.5, 3);
  expect(forAll?.falls).toMatchObject([{ control: true, engine: true }]);
  expect(forAll?.problems.map(({ kind }) => kind)).toEqual(['falls-together']);
  // Two of 1000 mAh and 100 g each in place of 2000 mAh and 200 g.
  expect(two?.massG).toBe(500);
  expect(two?.falls.filter(({ control }) => control)).toEqual([]);
  for (const { aircraft } of ways) expect(aircraftFaults(aircraft)).toEqual([]);
});

it('as it is, each pack lasts by its own current', () => {
  // The ignition's: 1000 mAh · 0.8 ÷ 0.5 A = 96 min; the servo's: 2000 · 0.8 ÷ 1 A = 96 min.
  expect(packWays(twoPacks(300), given)[0]?.lastsS).toBeCloseTo(96 * 60, 3);
});

it('the ballast that it asks for is W · (distance out) / (arm), and brings it in', () => {
  expect(packWays(twoPacks(300), given)[0]?.ballast).toBe('none');
  // The CG is at 280, the aft limit at 260; lead stands at 30: 500 · 20 / 230 = 43.5 g.
  // Source of the formula: FAA Aviation Maintenance Technician Handbook – General, p. 4-23.
  const aircraft = twoPacks(260);
  expect(packWays(aircraft, given)[0]?.ballast).toEqual({ massG: 44, at: 'nose' });
  // Ahead of the forward limit of 340: lead at 570: 500 · 60 / 230 = 130.4 g.
  expect(packWays(twoPacks(400), given)[0]?.ballast).toEqual({ massG: 131, at: 'tail' });
  // No band, no figure.
  expect(packWays({ ...aircraft, targetBand: null }, given)[0]?.ballast).toBe('not known');
});

it('a heavy load state that is a little outside may ask for more than a light one far outside', () => {
  const aircraft = twoPacks(260);
  const payload = wired('payload', 4000, 285, {
    use: { ...servo, kind: 'camera' },
    fedBy: [{ from: 'control' }],
  });
  const { power: _, ...cargo } = payload;
  const switched: Aircraft = {
    ...aircraft,
    targetBand: { by: 'station', forwardMm: 100, aftMm: 260 },
    parts: [...aircraft.parts, cargo],
    switches: [
      {
        id: 'cargo',
        name: 'Cargo',
        positions: [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: ['payload'] },
        ],
      },
    ],
  } as Aircraft;
  expect(aircraftFaults(switched)).toEqual([]);
  const [asIs] = packWays(switched, given);
  if (!asIs || typeof asIs.ballast === 'string') throw new Error('expected a figure');
  // With it: 4500 g at (500·280 + 4000·285)/4500 = 284.4: 4500 · 24.44 / 230 = 478.3 g; without it 43.5 g.
  expect(asIs.ballast).toEqual({ massG: 479, at: 'nose' });
  const lead = { ...boxPart('lead', asIs.ballast.massG, [30, 0, 0]), role: 'ballast' as const };
  const mended = addPart(switched, lead).aircraft;
  const { cgMm } = balanceAt(mended, { fuelFraction: 1, down: LEVEL });
  expect(cgMm?.[0]).toBeLessThanOrEqual(260);
});

it('packs that cannot give what is drawn are compared all the same', () => {
  const aircraft = twoPacks(300);
  const starved: Aircraft = {
    ...aircraft,
    parts: aircraft.parts.map((part) =>
      part.power?.use
        ? { ...part, power: { ...part.power, use: { ...part.power.use, meanA: 900, peakA: 900 } } }
        : part,
    ),
  };
  const [asIs] = packWays(starved, given);
  expect(asIs?.lastsS).toBeNull();
  expect(asIs?.problems.map(({ kind }) => kind)).toContain('starved');
});
