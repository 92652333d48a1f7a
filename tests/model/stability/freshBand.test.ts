import { describe, expect, test } from 'vitest';
import { COMMON_MARGINS } from '../../../src/engine/wing/margin';
import type { Aircraft, Surface } from '../../../src/model/document/types';
import { bandStations, macMode, wingPlanform } from '../../../src/model/stability/band';
import { withBandBy } from '../../../src/model/stability/freshBand';
import { withMacMode } from '../../../src/model/stability/macMode';
import { likelyMarginKind, marginKind, usualMargins } from '../../../src/model/stability/marginKind';
import { changeStability } from '../../../src/model/stability/stability';
import { aircraftOf, weightlessWing } from '../aircraft';

const surface = (given: Partial<Surface> = {}): Surface => ({
  id: 'wing',
  kind: 'surface',
  name: 'Wing',
  role: 'wing',
  sides: 'both',
  rootMm: [500, 60, 0],
  cantDeg: 0,
  incidenceDeg: 0,
  rootChordMm: 300,
  rootThicknessPct: 10,
  panels: [{ spanMm: 600, tipChordMm: 150, sweepMm: 150, dihedralDeg: 0, twistDeg: 0, tipThicknessPct: 10 }],
  joinsBody: 'yes',
  mass: { by: 'weighed', massG: 500 },
  ...given,
});
const bare: Aircraft = { ...aircraftOf([surface()]), targetBand: null };
const estimate = { neutralPointMm: 640.03, macMm: 230 };

describe('a fresh band', () => {
  test.each(['glider', 'trainer', 'aerobatic'] as const)(
    'of a %s comes from the estimate and the usual margins of the kind, rounded inwards',
    (kind) => {
      const { minPct, maxPct } = COMMON_MARGINS[kind];
      const made = withBandBy(changeStability(bare, { kind }), 'station', estimate);
      const band = bandStations(made);
      const aft = 640.03 - (minPct / 100) * 230;
      const forward = 640.03 - (maxPct / 100) * 230;
      expect(band?.aftMm).toBeLessThanOrEqual(aft);
      expect(band?.aftMm).toBeGreaterThan(aft - 0.1);
      expect(band?.forwardMm).toBeGreaterThanOrEqual(forward);
      expect(band?.forwardMm).toBeLessThan(forward + 0.1);
    },
  );

  test('goes by the margin wanted where there is one, and in % MAC stands at the same stations', () => {
    const wanted = changeStability(bare, { marginRange: { minPct: 6, maxPct: 10 } });
    const byStation = bandStations(withBandBy(wanted, 'station', estimate));
    const byMac = withBandBy(wanted, 'mac', estimate);
    expect(byStation?.aftMm).toBeCloseTo(640.03 - 13.8, 0);
    // a tenth of a per cent of a MAC of some 240 mm
    expect(Math.abs((bandStations(byMac)?.aftMm ?? 0) - (byStation?.aftMm ?? 1))).toBeLessThan(0.35);
    expect(macMode(byMac)).toBe('gross');
  });

  test('without an estimate starts at the quarter of the MAC, and without a wing anywhere', () => {
    const made = bandStations(withBandBy(bare, 'station', null));
    const mac = wingPlanform(bare);
    expect(made?.forwardMm).toBeCloseTo((mac?.lemacMm ?? 0) + 0.22 * (mac?.macMm ?? 0), 0);
    expect(withBandBy(aircraftOf([]), 'station', null).targetBand).not.toBeNull();
  });

  test('a band that is there stays where it is, whatever the estimate', () => {
    const stated: Aircraft = { ...bare, targetBand: { by: 'station', forwardMm: 560, aftMm: 580 } };
    const there = bandStations(withBandBy(withBandBy(stated, 'mac', estimate), 'station', estimate));
    expect(there?.forwardMm).toBeGreaterThanOrEqual(560);
    expect(there?.forwardMm).toBeLessThan(560.5);
    expect(there?.aftMm).toBeLessThanOrEqual(580);
    expect(there?.aftMm).toBeGreaterThan(579.5);
    expect(withBandBy(stated, 'none', estimate).targetBand).toBeNull();
  });
});

describe('gross or as drawn', () => {
  const old: Aircraft = {
    ...bare,
    targetBand: { by: 'mac', surfaceId: 'wing', forwardPct: 25, aftPct: 33 },
  };

  test('gross unless said, but a band in % MAC from before the choice keeps its stations', () => {
    expect(macMode(bare)).toBe('gross');
    expect(macMode(old)).toBe('exposed');
    // Trapezium 300 to 150: MAC 2/3·300·(1 + 0.5 + 0.25)/1.5, at 4/9 of the sweep of 150 (Raymer, from memory).
    const mac = 350 / 1.5;
    expect(bandStations(old)?.forwardMm).toBeCloseTo(500 + 150 * (4 / 9) + 0.25 * mac, 9);
  });

  test('through the body: a rectangle of 60 by 300 more a side', () => {
    const [rectangle, trapezium] = [60 * 300, 600 * 225];
    const lemac = (rectangle * 500 + trapezium * (500 + 150 * (4 / 9))) / (rectangle + trapezium);
    expect(wingPlanform(bare)?.lemacMm).toBeCloseTo(lemac, 9);
  });

  test('changing it rewrites the limits so that they stay, never wider', () => {
    for (const mode of ['gross', 'exposed'] as const) {
      const before = bandStations(old);
      const after = bandStations(withMacMode(old, mode));
      expect(after?.forwardMm).toBeGreaterThanOrEqual((before?.forwardMm ?? 0) - 1e-6);
      expect(after?.forwardMm).toBeLessThan((before?.forwardMm ?? 0) + 0.03);
      expect(after?.aftMm).toBeLessThanOrEqual((before?.aftMm ?? 0) + 1e-6);
      expect(after?.aftMm).toBeGreaterThan((before?.aftMm ?? 0) - 0.03);
    }
  });
});

describe('the kind', () => {
  test('a canard with a turbine is a canard; a turbine alone is a jet', () => {
    const canard = surface({ id: 'canard', role: 'canard', rootMm: [100, 40, 0] });
    expect(likelyMarginKind({ ...aircraftOf([surface(), canard]), kind: 'turbine' })).toBe('canard');
    expect(likelyMarginKind({ ...aircraftOf([surface()]), kind: 'turbine' })).toBe('jet');
  });

  test.each(['trainer', 'aerobatic', 'scale'] as const)(
    '%s can be chosen, and its margins are offered',
    (kind) => {
      const chosen = changeStability(bare, { kind });
      expect(marginKind(chosen)).toBe(kind);
      expect(usualMargins(chosen)).toEqual(COMMON_MARGINS[kind]);
    },
  );
});

test('the load state that limits were stated for stays when they are stated another way', () => {
  const statedFor = { fuelPct: 0, switches: [] };
  const stated: Aircraft = {
    ...aircraftOf([weightlessWing]),
    targetBand: { by: 'station', forwardMm: 540, aftMm: 560, statedFor },
  };
  const byMac = withBandBy(stated, 'mac', null);
  expect(byMac.targetBand).toMatchObject({ by: 'mac', statedFor });
  expect(withBandBy(byMac, 'station', null).targetBand).toMatchObject({ by: 'station', statedFor });
});
