import { describe, expect, test } from 'vitest';
import { writeAircraft } from '../../src/model/document/write';
import { bandStations } from '../../src/model/stability/band';
import {
  balanced,
  cgOf,
  type DemoName,
  demo,
  demoText,
  NAMES,
  partOf,
  surfaceOf,
  without,
  withPartAt,
} from './demoAircraft';

test.each(NAMES)('%s reads without faults and is written back to the letter', (name) => {
  expect(writeAircraft(demo(name))).toBe(demoText(name));
});

/** Full and dry CG against the band. */
function stateOf(name: DemoName) {
  const aircraft = demo(name);
  const [full, dry] = [balanced(aircraft, 1), balanced(aircraft, 0)];
  const { band, fit } = full;
  if (!band || !fit) throw new Error(`${name} has no target band`);
  return { aircraft, full, dry, band, fit, fullMm: cgOf(full), dryMm: cgOf(dry) };
}

describe('sandmartin: tail-heavy by nature, and a camera off the centre line', () => {
  const { aircraft, full, dry, band, fit, fullMm, dryMm } = stateOf('sandmartin');

  test('stays in the band from full to dry, nearest the aft limit once the main tank is empty', () => {
    expect(fit.where).toBe('inside');
    expect(fit.aftmost.fuelFraction).toBeLessThan(0.1);
    expect(band.aftMm - dryMm[0]).toBeLessThan((band.aftMm - band.forwardMm) / 3);
  });

  test('the CG drifts aft as the tank empties: the tank stands ahead of it', () => {
    expect(dryMm[0]).toBeGreaterThan(fullMm[0] + 5);
    expect(aircraft.tanks[0]!.positionMm[0]).toBeLessThan(fullMm[0]);
  });

  test('without what the nose carries it is hopelessly tail-heavy', () => {
    const bare = without(aircraft, 'nose-ballast', 'camera', 'flight-pack');
    expect(cgOf(balanced(bare, 0))[0]).toBeGreaterThan(band.aftMm + 50);
  });

  test('the wing on the camera’s side is heavy, by 1 to 3 mm at every fuel state', () => {
    expect(partOf(aircraft, 'camera').positionMm[1]).toBeGreaterThan(0);
    for (const { cgMm } of full.travel) {
      expect(cgMm[1]).toBeGreaterThan(1);
      expect(cgMm[1]).toBeLessThan(3);
      expect(cgMm[1]).toBeGreaterThan(aircraft.lateralToleranceMm);
    }
  });

  test('moving the camera to the centre line takes its moment out: mass × buttline / total mass', () => {
    const { massG, positionMm } = partOf(aircraft, 'camera');
    const centred = balanced(withPartAt(aircraft, 'camera', [positionMm[0], 0, positionMm[2]]), 0);
    expect(dryMm[1] - cgOf(centred)[1]).toBeCloseTo((massG * positionMm[1]) / dry.massG, 9);
    expect(Math.abs(cgOf(centred)[1])).toBeLessThan(aircraft.lateralToleranceMm);
  });

  test('its two wings were weighed one by one, and differ by a few grams', () => {
    const { mass } = surfaceOf(aircraft, 'wing');
    if (mass.by !== 'weighed') throw new Error('expected a weighed wing');
    const apartG = Math.abs(mass.massG - mass.leftMassG!);
    expect(apartG).toBeGreaterThan(0);
    expect(apartG).toBeLessThan(0.02 * mass.massG);
  });
});

describe('fieldfare: a great share of fuel, and a header tank', () => {
  const { aircraft, full, dry, band, fit, dryMm, fullMm } = stateOf('fieldfare');
  const volumes = (fraction: number) =>
    new Map(balanced(aircraft, fraction).liquids.map(({ tankId, volumeMl }) => [tankId, volumeMl]));

  test('more than a quarter of the take-off mass is fuel', () => {
    expect((full.massG - dry.massG) / full.massG).toBeGreaterThan(0.25);
  });

  test('the header stays full until both saddles have given all they can', () => {
    const brimful = volumes(1).get('header-tank')!;
    const unusable = aircraft.tanks.find(({ id }) => id === 'saddle-left')!.unusableMl;
    const usableShare = (brimful - 10) / full.usableMl;
    for (const fraction of [1, 0.8, 0.5, 0.3, usableShare + 0.01]) {
      const now = volumes(fraction);
      expect(now.get('header-tank')).toBeCloseTo(brimful, 6);
      expect(now.get('saddle-left')!).toBeGreaterThan(unusable);
      expect(now.get('saddle-right')).toBeCloseTo(now.get('saddle-left')!, 6);
    }
    const late = volumes(usableShare / 2);
    expect(late.get('header-tank')).toBeLessThan(brimful);
    expect(late.get('saddle-left')).toBeCloseTo(unusable, 6);
    expect(late.get('saddle-right')).toBeCloseTo(unusable, 6);
  });

  test('in the band to land, a little ahead of it with all tanks full, never behind it', () => {
    expect(fit.where).toBe('nose-heavy');
    const saddlesEmpty = cgOf(balanced(aircraft, 0.1))[0];
    for (const station of [saddlesEmpty, dryMm[0]]) {
      expect(station).toBeGreaterThan(band.forwardMm);
      expect(station).toBeLessThan(band.aftMm);
    }
    expect(fullMm[0]).toBeLessThan(band.forwardMm);
    expect(fullMm[0]).toBeGreaterThan(band.forwardMm - 4);
  });
});

describe('whimbrel: no tail, no fuel, and awkward from left to right', () => {
  const { aircraft, full, band, fit } = stateOf('whimbrel');

  test('burns nothing, so its travel is one point, in the band', () => {
    expect(aircraft.fuel).toBeNull();
    expect(aircraft.tanks).toEqual([]);
    expect(full.travel).toHaveLength(1);
    expect(fit.where).toBe('inside');
  });

  test('the band is short: under 15 mm and under 5 % of the MAC', () => {
    expect(band.aftMm - band.forwardMm).toBeLessThan(15);
    const { targetBand } = aircraft;
    if (targetBand?.by !== 'mac') throw new Error('expected a band in % MAC');
    expect(targetBand.aftPct - targetBand.forwardPct).toBeLessThan(5);
    expect(bandStations(aircraft)).toEqual(band);
  });

  test('the CG lies off centre by more than is allowed, by a few mm', () => {
    const offCentre = Math.abs(cgOf(full)[1]);
    expect(offCentre).toBeGreaterThan(aircraft.lateralToleranceMm);
    expect(offCentre).toBeLessThan(3 * aircraft.lateralToleranceMm);
  });
});

describe('corncrake: water ballast in the wings', () => {
  const { aircraft, full, dry, band, fullMm, dryMm } = stateOf('corncrake');

  test('in the band dry, a little tail-heavy full: dumping brings the CG forward', () => {
    expect(aircraft.fuel).toMatchObject({ kind: 'water', use: 'dump' });
    expect(dryMm[0]).toBeGreaterThan(band.forwardMm);
    expect(dryMm[0]).toBeLessThan(band.aftMm);
    expect(fullMm[0]).toBeGreaterThan(band.aftMm);
    expect(fullMm[0]).toBeLessThan(band.aftMm + 3);
    expect(fullMm[0]).toBeGreaterThan(dryMm[0]);
  });

  test('each gram in the nose works with the whole arm: mass × arm / total mass', () => {
    const ballast = partOf(aircraft, 'nose-ballast');
    const lighter = balanced(without(aircraft, 'nose-ballast'), 0);
    const own = dry.bodies.find((body) => body.id === 'nose-ballast')!.mass.cgMm!;
    const shift = (ballast.massG * (dryMm[0] - own[0])) / (dry.massG - ballast.massG);
    expect(cgOf(lighter)[0] - dryMm[0]).toBeCloseTo(shift, 9);
    expect(cgOf(lighter)[0]).toBeGreaterThan(band.aftMm + 20);
  });

  test('the water is shared evenly, so it does not tip the wings', () => {
    const [right, left] = full.liquids;
    expect(right!.mass.massG).toBeCloseTo(left!.mass.massG, 6);
    expect(right!.mass.cgMm![1]).toBeCloseTo(-left!.mass.cgMm![1], 6);
    expect(right!.mass.cgMm![0]).toBeCloseTo(left!.mass.cgMm![0], 6);
  });
});
