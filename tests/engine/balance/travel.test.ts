import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cgTravel, type LiquidMoment, travelExtremes } from '../../../src/engine/balance/travel';
import type { MassProperties } from '../../../src/engine/mass/types';
import { between } from '../../between';

const none = { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };
const point = (massG: number, x: number): MassProperties => ({
  massG,
  cgMm: massG > 0 ? [x, 0, 0] : null,
  inertiaAboutCgGmm2: none,
});
const liquid = (fuelFraction: number, massG: number, armMm: number): LiquidMoment => ({
  fuelFraction,
  massG,
  momentGmm: [massG * armMm, 0, 0],
});

describe('CG travel', () => {
  /**
   * FAA Pilot's Handbook of Aeronautical Knowledge, weight and balance chapter, loading table: empty 2100 lb
   * @ 78.3 in, front seats 340 @ 85.0, rear 350 @ 121.0, baggage 80 @ 150.0, fuel 450 @ 75.0: 3320 lb and
   * 84.8 in (weights and result read in a re-publisher's copy, arms from memory).
   */
  test('the handbook loading table, full, gives its printed CG', () => {
    const fixedMoment = 2100 * 78.3 + 340 * 85 + 350 * 121 + 80 * 150;
    const fixedMass = 2100 + 340 + 350 + 80;
    const travel = cgTravel(point(fixedMass, fixedMoment / fixedMass), [
      liquid(1, 450, 75),
      liquid(0, 0, 75),
    ]);
    expect(travel[0]?.massG).toBe(3320);
    expect(Math.abs((travel[0]?.cgMm[0] ?? 0) - 84.8)).toBeLessThanOrEqual(0.05);
    // Without fuel the sum is the table without its fuel row.
    expect(travel[1]?.cgMm[0]).toBeCloseTo(fixedMoment / fixedMass, 10);
  });

  test('the lever rule holds along all three axes', () => {
    const fixed: MassProperties = { massG: 1000, cgMm: [100, 20, 30], inertiaAboutCgGmm2: none };
    const travel = cgTravel(fixed, [
      { fuelFraction: 1, massG: 500, momentGmm: [500 * 400, 500 * -10, 500 * 60] },
    ]);
    // A third of the way from the fixed mass to the liquid.
    expect(travel[0]?.cgMm.map((mm) => Math.round(mm * 1e9) / 1e9)).toEqual([200, 10, 40]);
  });

  test('no mass gives no point', () => {
    expect(cgTravel(point(0, 0), [liquid(0, 0, 0)])).toEqual([]);
    expect(cgTravel(point(0, 0), [liquid(1, 10, 30), liquid(0, 0, 0)])).toHaveLength(1);
  });

  test('burning liquid moves the CG away from the tank, always', () => {
    fc.assert(
      fc.property(
        between(100, 20_000),
        between(-500, 2000),
        between(1, 5000),
        between(1, 800),
        (massG, x, liquidG, behind) => {
          const armMm = x + behind;
          const travel = cgTravel(point(massG, x), [
            liquid(1, liquidG, armMm),
            liquid(0.5, liquidG / 2, armMm),
            liquid(0, 0, armMm),
          ]);
          const stations = travel.map((p) => p.cgMm[0]);
          expect(stations[0]).toBeGreaterThan(stations[1] as number);
          expect(stations[1]).toBeGreaterThan(stations[2] as number);
          const extremes = travelExtremes(travel);
          expect(extremes?.aftmost.fuelFraction).toBe(1);
          expect(extremes?.foremost.fuelFraction).toBe(0);
        },
      ),
    );
  });
});
