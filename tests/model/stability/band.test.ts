import { describe, expect, test } from 'vitest';
import type { Aircraft, Surface } from '../../../src/model/document/types';
import { bandStations, wingPlanform } from '../../../src/model/stability/band';
import { liftingSurface, liftingSurfaces } from '../../../src/model/stability/liftingSurfaces';
import { aircraftOf } from '../aircraft';

const wing = (change: Partial<Surface> = {}): Surface => ({
  id: 'wing',
  kind: 'surface',
  name: 'Wing',
  role: 'wing',
  sides: 'both',
  rootMm: [400, 0, 0],
  cantDeg: 0,
  incidenceDeg: 0,
  rootChordMm: 300,
  rootThicknessPct: 12,
  panels: [{ spanMm: 900, tipChordMm: 150, sweepMm: 75, dihedralDeg: 0, twistDeg: 0, tipThicknessPct: 12 }],
  mass: { by: 'weighed', massG: 500 },
  ...change,
});

const banded = (structure: readonly Surface[], forwardPct: number, aftPct: number): Aircraft => ({
  ...aircraftOf(structure),
  targetBand: { by: 'mac', surfaceId: 'wing', forwardPct, aftPct },
});

describe('bandStations', () => {
  test('turns % MAC into stations by the trapezium formulas', () => {
    // One trapezium (e.g. Raymer, Aircraft Design, ch. 4, from memory): MAC = 2/3·c·(1 + λ + λ²)/(1 + λ),
    // at (b/6)(1 + 2λ)/(1 + λ) of the half span; LEMAC = root + that share of the sweep.
    const taper = 0.5;
    const mac = ((2 / 3) * 300 * (1 + taper + taper ** 2)) / (1 + taper);
    const share = (1 + 2 * taper) / (3 * (1 + taper));
    const lemac = 400 + share * 75;
    const band = bandStations(banded([wing()], 25, 33));
    expect(band?.forwardMm).toBeCloseTo(lemac + 0.25 * mac, 9);
    expect(band?.aftMm).toBeCloseTo(lemac + 0.33 * mac, 9);
  });

  test('stations are taken as they stand, and none are none', () => {
    const aircraft = aircraftOf([]);
    expect(bandStations(aircraft)).toBeNull();
    expect(bandStations({ ...aircraft, targetBand: { by: 'station', forwardMm: 580, aftMm: 610 } })).toEqual({
      forwardMm: 580,
      aftMm: 610,
    });
    expect(bandStations(banded([], 25, 33))).toBeNull();
  });
});

describe('wingPlanform', () => {
  const tandem = wing({ id: 'rear', rootChordMm: 350 });

  test('is the named surface’s, or else the largest wing’s', () => {
    expect(wingPlanform(banded([tandem, wing()], 25, 33))?.rootChordMm).toBe(300);
    expect(wingPlanform(aircraftOf([wing(), tandem]))?.rootChordMm).toBe(350);
    expect(wingPlanform(aircraftOf([wing({ role: 'tailplane' })]))).toBeNull();
  });
});

describe('liftingSurfaces', () => {
  test('panels begin with the chord and twist at which the one before ends', () => {
    const [first] = wing().panels;
    const two = wing({
      panels: [
        { ...first!, twistDeg: -1 },
        { ...first!, tipChordMm: 90, twistDeg: -3 },
      ],
    });
    const [made] = liftingSurfaces(aircraftOf([two]));
    expect(made?.panels.map((p) => [p.rootChordMm, p.tipChordMm, p.rootTwistDeg, p.tipTwistDeg])).toEqual([
      [300, 150, 0, -1],
      [150, 90, -1, -3],
    ]);
    expect(liftingSurface(two)).toBe(made);
  });
});
