import { describe, expect, test } from 'vitest';
import { volumeProperties } from '../../src/engine/mass/volumeProperties';
import { planform } from '../../src/engine/wing/planform';
import type { Fuel } from '../../src/model/document/types';
import { estimateStability } from '../../src/model/stability/estimateStability';
import { liftingSurface } from '../../src/model/stability/liftingSurfaces';
import { stabilityInput } from '../../src/model/stability/stability';
import { balanced, type DemoName, demo, NAMES, partOf, surfaceOf } from './demoAircraft';

const DEG = Math.PI / 180;

describe('sizes that a modeller would believe (common practice, no source)', () => {
  /** [least, most] of take-off mass g, span mm, wing loading g/dm². */
  const usual: Record<DemoName, { massG: number[]; spanMm: number[]; loading: number[] }> = {
    sandmartin: { massG: [7000, 8000], spanMm: [2400, 2800], loading: [70, 110] },
    fieldfare: { massG: [9000, 13000], spanMm: [1300, 1700], loading: [120, 190] },
    whimbrel: { massG: [2000, 3500], spanMm: [2000, 2500], loading: [30, 60] },
    corncrake: { massG: [6000, 8000], spanMm: [4000, 5000], loading: [45, 80] },
  };

  test.each(NAMES)('%s: mass, span and wing loading', (name) => {
    const aircraft = demo(name);
    const { massG, spanMm, loading } = usual[name];
    const wing = planform(liftingSurface(surfaceOf(aircraft, 'wing')));
    const full = balanced(aircraft, 1).massG;
    const within = (value: number, [least, most]: number[]) => {
      expect(value).toBeGreaterThan(least!);
      expect(value).toBeLessThan(most!);
    };
    within(full, massG);
    within(wing.spanMm, spanMm);
    within(full / (wing.areaMm2 / 1e4), loading);
  });

  test('a petrol engine weighs 28 to 40 g for each cc, without silencer and ignition', () => {
    const aircraft = demo('sandmartin');
    const crankcase = partOf(aircraft, 'crankcase');
    const cc = Number(/(\d+) cc/.exec(crankcase.name)?.[1]);
    const gPerCc = (crankcase.massG + partOf(aircraft, 'cylinder').massG) / cc;
    expect(gPerCc).toBeGreaterThan(28);
    expect(gPerCc).toBeLessThan(40);
  });

  test('a turbine weighs 10 to 16 g for each newton', () => {
    const turbine = partOf(demo('fieldfare'), 'turbine');
    const gPerN = turbine.massG / Number(/(\d+) N/.exec(turbine.name)?.[1]);
    expect(gPerN).toBeGreaterThan(10);
    expect(gPerN).toBeLessThan(16);
  });

  test.each(NAMES)('%s: packs weigh 1.5 to 2.4 g/ml', (name) => {
    const packs = demo(name).parts.filter(({ role }) => role === 'energy');
    expect(packs.length).toBeGreaterThan(1);
    for (const { shape, massG } of packs) {
      const gPerMl = massG / (volumeProperties(shape).volumeMm3 / 1000);
      expect(gPerMl).toBeGreaterThan(1.5);
      expect(gPerMl).toBeLessThan(2.4);
    }
  });
});

test.each(NAMES)('%s: no part is denser than lead, 11.34 g/ml (CRC Handbook, from memory)', (name) => {
  for (const { shape, massG } of demo(name).parts)
    expect(massG / (volumeProperties(shape).volumeMm3 / 1000)).toBeLessThan(11.34);
});

test.each(['sandmartin', 'fieldfare'] as const)(
  '%s: the fuel profile lands with the reserve aboard',
  (name) => {
    const aircraft = demo(name);
    const { flow, profile, reservePct } = aircraft.fuel as Fuel;
    const { idleMlPerMin: idle, fullMlPerMin: full } = flow;
    const burntMl = profile.phases.reduce(
      (sum, { durationS, throttlePct }) =>
        sum + (durationS / 60) * (idle + (throttlePct / 100) * (full - idle)),
      0,
    );
    const left = 1 - burntMl / balanced(aircraft, 1).usableMl;
    expect(left).toBeGreaterThan(reservePct / 100);
    expect(left).toBeLessThan(0.5);
  },
);

test('corncrake: the dump phase is long enough to empty both tanks', () => {
  const aircraft = demo('corncrake');
  const { flow, profile } = aircraft.fuel as Fuel;
  const dumpS = profile.phases.find(({ throttlePct }) => throttlePct === 100)!.durationS;
  expect((dumpS / 60) * flow.fullMlPerMin).toBeGreaterThan(balanced(aircraft, 1).usableMl);
});

describe('the band is sound: static margin at its limits', { timeout: 60_000 }, () => {
  /** Least at the aft limit, most at the forward one, % MAC; common practice, no source. */
  const margins: Record<DemoName, readonly [aft: number, forward: number]> = {
    sandmartin: [8, 15],
    fieldfare: [5, 8.5],
    whimbrel: [5, 9],
    corncrake: [8, 14.5],
  };

  test.each(NAMES)('%s, by the estimate that the bench shows', (name) => {
    const aircraft = demo(name);
    const estimate = estimateStability(stabilityInput(aircraft), 'fine');
    if (!estimate || 'fault' in estimate) throw new Error(`${name} has no estimate`);
    const { band } = balanced(aircraft, 1);
    const margin = (stationMm: number) => (100 * (estimate.neutralPointMm - stationMm)) / estimate.macMm;
    const [aft, forward] = margins[name];
    expect(Math.abs(margin(band!.aftMm) - aft)).toBeLessThan(0.5);
    expect(Math.abs(margin(band!.forwardMm) - forward)).toBeLessThan(0.5);
  });

  /**
   * h_n = 0.25 + (a_t/a_w)(1 − dε/dα)·η·V_h with a = 2πA/(A + 2), dε/dα = 2a_w/(πA) and η = 0.9: the usual
   * first estimate (Perkins and Hage, Airplane Performance, Stability and Control, 1949; from memory). A
   * V-tail counts with cos² of its dihedral (NACA Report 823, 1945; from memory). No fuselage.
   */
  test.each(['sandmartin', 'corncrake'] as const)('%s, by tail volume', (name) => {
    const aircraft = demo(name);
    const wing = planform(liftingSurface(surfaceOf(aircraft, 'wing')));
    const tail = surfaceOf(aircraft, name === 'sandmartin' ? 'tail' : 'tailplane');
    const own = planform(liftingSurface(tail), 'own');
    const slope = (aspect: number) => (2 * Math.PI * aspect) / (aspect + 2);
    const [aw, at] = [slope(wing.aspectRatio), slope(own.aspectRatio)];
    const downwash = (2 * aw) / (Math.PI * wing.aspectRatio);
    const wingAcMm = wing.lemacMm + 0.25 * wing.macMm;
    const armMm = own.lemacMm + 0.25 * own.macMm - wingAcMm;
    const areaMm2 = own.areaMm2 * Math.cos(tail.cantDeg * DEG) ** 2;
    const volume = (areaMm2 * armMm) / (wing.areaMm2 * wing.macMm);
    const neutralMm = wingAcMm + (at / aw) * (1 - downwash) * 0.9 * volume * wing.macMm;
    const { band } = balanced(aircraft, 1);
    expect(volume).toBeGreaterThan(0.35);
    expect(volume).toBeLessThan(0.65);
    expect((100 * (neutralMm - band!.aftMm)) / wing.macMm).toBeGreaterThan(5);
    expect((100 * (neutralMm - band!.forwardMm)) / wing.macMm).toBeLessThan(20);
  });
});
