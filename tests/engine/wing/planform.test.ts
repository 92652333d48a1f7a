import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pctMacToStation, planform, stationToPctMac } from '../../../src/engine/wing/planform';
import type { LiftingSurface, WingPanel } from '../../../src/engine/wing/types';
import { between } from '../../between';
import { flatPanel, surfaceOf } from './builders';

const chord = between(10, 500);
const panels = fc.array(
  fc.record({
    spanMm: between(10, 900),
    sweepMm: between(-300, 300),
    rootChordMm: chord,
    tipChordMm: chord,
    dihedralDeg: between(-40, 40),
  }),
  { minLength: 1, maxLength: 5 },
);
const surfaces = fc
  .tuple(panels, between(-60, 60))
  .map(([list, cantDeg]) => surfaceOf(list.map(flatPanel), { rootMm: [310, 25, -40], cantDeg }));

/** Midpoint sums over narrow strips seen from above: the definition, without the closed forms. */
function byStrips(surface: LiftingSurface, strips = 4000) {
  const cant = (surface.cantDeg * Math.PI) / 180;
  let [x, y] = surface.rootMm;
  let area = 0;
  let square = 0;
  let areaX = 0;
  let areaY = 0;
  for (const panel of surface.panels) {
    const rise = panel.spanMm * Math.tan((panel.dihedralDeg * Math.PI) / 180);
    const across = panel.spanMm * Math.cos(cant) - rise * Math.sin(cant);
    for (let k = 0; k < strips; k++) {
      const t = (k + 0.5) / strips;
      const c = panel.rootChordMm * (1 - t) + panel.tipChordMm * t;
      const piece = (c * Math.abs(across)) / strips;
      area += piece;
      square += c * piece;
      areaX += (x + panel.sweepMm * t) * piece;
      areaY += (y + across * t) * piece;
    }
    x += panel.sweepMm;
    y += across;
  }
  return { area: 2 * area, mac: square / area, lemac: areaX / area, buttline: areaY / area };
}

describe('planform', () => {
  test('agrees with strip sums for any stack of panels', () => {
    fc.assert(
      fc.property(surfaces, (surface) => {
        const exact = planform(surface);
        const sums = byStrips(surface);
        expect(exact.areaMm2 / sums.area).toBeCloseTo(1, 5);
        expect(exact.macMm / sums.mac).toBeCloseTo(1, 5);
        expect(Math.abs(exact.lemacMm - sums.lemac)).toBeLessThan(1e-3);
        expect(Math.abs(exact.macButtlineMm - sums.buttline)).toBeLessThan(1e-3);
      }),
      { numRuns: 40 },
    );
  });

  test('cutting a panel in two changes nothing', () => {
    const whole = surfaceOf([
      flatPanel({ spanMm: 600, rootChordMm: 300, tipChordMm: 100, sweepMm: 150, dihedralDeg: 5 }),
    ]);
    const cut = surfaceOf([
      flatPanel({ spanMm: 150, rootChordMm: 300, tipChordMm: 250, sweepMm: 37.5, dihedralDeg: 5 }),
      flatPanel({ spanMm: 450, rootChordMm: 250, tipChordMm: 100, sweepMm: 112.5, dihedralDeg: 5 }),
    ]);
    const a = planform(whole);
    const b = planform(cut);
    for (const key of ['areaMm2', 'spanMm', 'macMm', 'lemacMm', 'macButtlineMm', 'macWaterlineMm'] as const) {
      expect(b[key]).toBeCloseTo(a[key], 8);
    }
  });

  test('lengths grow with scale, areas with its square; a datum shift moves stations only', () => {
    const base = surfaceOf([flatPanel({ tipChordMm: 120, sweepMm: 60 })], { rootMm: [100, 0, 10] });
    const big = surfaceOf([flatPanel({ spanMm: 1500, rootChordMm: 600, tipChordMm: 360, sweepMm: 180 })], {
      rootMm: [300, 0, 30],
    });
    const moved: LiftingSurface = { ...base, rootMm: [-900, 0, 10] };
    expect(planform(big).areaMm2).toBeCloseTo(9 * planform(base).areaMm2, 6);
    expect(planform(big).lemacMm).toBeCloseTo(3 * planform(base).lemacMm, 9);
    expect(planform(moved).lemacMm).toBeCloseTo(planform(base).lemacMm - 1000, 9);
    expect(planform(moved).macMm).toBeCloseTo(planform(base).macMm, 12);
  });

  test('a V-tail counts by its projection, a fin by its own plane', () => {
    const panel = flatPanel({ spanMm: 200, rootChordMm: 100, tipChordMm: 100 });
    const vTail = planform(surfaceOf([panel], { cantDeg: 60 }));
    expect(vTail.areaMm2).toBeCloseTo(2 * 200 * 100 * 0.5, 8);
    expect(vTail.macWaterlineMm).toBeCloseTo(100 * Math.sin(Math.PI / 3), 8);
    const fin = planform(surfaceOf([panel], { cantDeg: 90, sides: 'centre' }));
    expect(fin.areaMm2).toBe(200 * 100);
    expect(fin.aspectRatio).toBe(2);
    expect(fin.macWaterlineMm).toBeCloseTo(100, 9);
    expect(fin.macButtlineMm).toBeCloseTo(0, 9);
  });

  test('% MAC and station undo each other', () => {
    fc.assert(
      fc.property(surfaces, between(-2000, 2000), (surface, stationMm) => {
        const mac = planform(surface);
        expect(pctMacToStation(mac, stationToPctMac(mac, stationMm))).toBeCloseTo(stationMm, 6);
      }),
    );
  });

  test('the figures of a trapezium by hand, with a gap between its roots and without', () => {
    const panel = flatPanel({ spanMm: 400, rootChordMm: 300, tipChordMm: 100 });
    const pair = planform(surfaceOf([panel], { rootMm: [0, 50, 0] }));
    expect(pair).toMatchObject({
      plane: 'xy',
      areaMm2: 160_000,
      spanMm: 900,
      taper: 1 / 3,
      rootChordMm: 300,
      tipChordMm: 100,
      meanChordMm: 200,
    });
    expect(pair.aspectRatio).toBeCloseTo(900 ** 2 / 160_000, 12);
    // One that lies by itself has the span of itself, wherever it lies.
    const alone = planform(surfaceOf([panel], { rootMm: [0, 50, 0], sides: 'centre' }));
    expect([alone.plane, alone.areaMm2, alone.spanMm]).toEqual(['own', 80_000, 400]);
    // Outer panels that turn back inwards end no farther out than where they turned.
    const turned = surfaceOf([flatPanel({ spanMm: 400 }), flatPanel({ spanMm: 100, dihedralDeg: 80 })], {
      cantDeg: 30,
    });
    expect(planform(turned).spanMm).toBeCloseTo(2 * 400 * Math.cos(Math.PI / 6), 9);
  });

  test('up to a cant of 75° it is seen from above, steeper in its own plane, down as up', () => {
    const planeAt = (cantDeg: number) => planform(surfaceOf([flatPanel({})], { cantDeg })).plane;
    expect([75, 75.1, -75, -75.1].map(planeAt)).toEqual(['xy', 'own', 'xy', 'own']);
    expect(() => planform(surfaceOf([flatPanel({})], { cantDeg: 90 }), 'xy')).not.toThrow();
  });

  test('impossible geometry is refused with the place named', () => {
    const refused = (panel: Partial<WingPanel>, given: Partial<LiftingSurface> = {}) => {
      try {
        planform(surfaceOf([flatPanel({}), flatPanel(panel)], given));
        return '';
      } catch (error) {
        return String(error);
      }
    };
    expect(() => planform(surfaceOf([]))).toThrow(/"Wing": needs at least one panel, got none/);
    expect(refused({})).toBe('');
    expect(refused({ spanMm: 0 })).toMatch(/panel 2: spanMm must be above 0, got 0/);
    for (const field of [
      'spanMm',
      'rootChordMm',
      'tipChordMm',
      'sweepMm',
      'dihedralDeg',
      'rootTwistDeg',
      'tipTwistDeg',
    ] as const) {
      expect(refused({ [field]: Number.NaN })).toMatch(`panel 2: ${field} must be a number, got NaN`);
    }
    expect(refused({ rootChordMm: 0, tipChordMm: 0 })).toMatch(/nor both 0, got 0 and 0/);
    expect(refused({ rootChordMm: -5 })).toMatch(/must not be negative/);
    expect(refused({ tipChordMm: -5 })).toMatch(/must not be negative/);
    expect(refused({ tipChordMm: 0 })).toBe('');
    expect(refused({ rootChordMm: 0 })).toBe('');
    expect(refused({ dihedralDeg: 90 })).toMatch(/dihedralDeg must lie between -90 and 90, got 90/);
    expect(refused({ dihedralDeg: -90 })).toMatch(/got -90/);
    expect(refused({ dihedralDeg: 89 })).toBe('');
    expect(refused({}, { cantDeg: Number.NaN })).toMatch(/root, cant and incidence must be numbers/);
    expect(refused({}, { incidenceDeg: Number.NaN })).toMatch(/must be numbers/);
    expect(refused({}, { rootMm: [0, Number.POSITIVE_INFINITY, 0] })).toMatch(/must be numbers/);
    expect(refused({}, { rootMm: [0, -1, 0] })).toMatch(/cannot lie left of the plane of symmetry, got -1/);
    expect(refused({}, { rootMm: [0, -1, 0], sides: 'centre' })).toBe('');
  });
});
