import { describe, expect, test } from 'vitest';
import {
  bodyMeasurements,
  densityMeasurement,
  type Measurement,
  probabilityIfPerfect,
  probabilityInBand,
  ranking,
} from '../../../src/engine/balance/bandProbability';
import { normalBelow } from '../../../src/engine/balance/bivariateNormal';
import { cgTravel, type LiquidMoment } from '../../../src/engine/balance/travel';
import type { MeasuredBody } from '../../../src/engine/balance/uncertainty';
import { massPoint, massSum } from '../../../src/engine/mass/massProperties';
import { gaussians } from './gaussians';

const bodies: MeasuredBody[] = [
  { id: 'airframe', mass: massPoint(2400, [520, 0, 0]), sigmaG: 10, sigmaMm: [3, 1, 1] },
  { id: 'pack', mass: massPoint(310, [190, 0, 0]), sigmaG: 2, sigmaMm: [4, 1, 1] },
  { id: 'engine', mass: massPoint(760, [70, 0, 0]), sigmaG: 5, sigmaMm: [2, 1, 1] },
];
const DENSITY = 0.8;
/** 500 ml at 450 mm, behind the CG of the rest. */
const momentsAt = (density: number): LiquidMoment[] =>
  [1, 0.5, 0].map((fuelFraction) => {
    const massG = 500 * density * fuelFraction;
    return { fuelFraction, massG, momentGmm: [massG * 450, 0, 0] };
  });
const fixed = massSum(bodies.map(({ mass }) => mass));
const moments = momentsAt(DENSITY);
const travel = cgTravel(fixed, moments);
const measurements: Measurement[] = [
  ...bodyMeasurements(bodies, travel),
  densityMeasurement(DENSITY, 0.02, moments, travel),
];
const [aftmostMm, foremostMm] = [travel[0]!.cgMm[0], travel[2]!.cgMm[0]];
const exact = measurements.map((one) => ({ ...one, sigma: 0 }));
const sigmaAt = (k: number) =>
  Math.hypot(...measurements.map(({ sigma, perUnitMm }) => sigma * perUnitMm[k]!));

describe('how measurements bear on the travel', () => {
  /** Against summing anew with a little more of it: a central difference, whose error goes with the step squared. */
  test('slopes are those of the whole sum', () => {
    const stationsWith = (id: string, addG: number, addMm: number, density = DENSITY) =>
      cgTravel(
        massSum(
          bodies.map(({ id: own, mass: { massG, cgMm } }) =>
            own === id ? massPoint(massG + addG, [cgMm![0] + addMm, 0, 0]) : massPoint(massG, cgMm!),
          ),
        ),
        momentsAt(density),
      ).map(({ cgMm }) => cgMm[0]);
    for (const { bodyId, quantity, perUnitMm } of measurements) {
      const step = 1e-3;
      const by = (h: number) =>
        quantity === 'mass'
          ? stationsWith(bodyId, h, 0)
          : quantity === 'station'
            ? stationsWith(bodyId, 0, h)
            : stationsWith('', 0, 0, DENSITY + h);
      const [more, less] = [by(step), by(-step)];
      perUnitMm.forEach((slope, k) => {
        expect(Math.abs((more[k]! - less[k]!) / (2 * step) - slope)).toBeLessThan(
          1e-4 * Math.abs(slope) + 1e-8,
        );
      });
    }
  });
});

describe('probability that the travel lies in the band', () => {
  test('known exactly, it is 0 or 1, and the limits are inside', () => {
    expect(probabilityInBand(travel, exact, { forwardMm: foremostMm, aftMm: aftmostMm })).toBe(1);
    expect(probabilityInBand(travel, exact, { forwardMm: foremostMm + 0.1, aftMm: 900 })).toBe(0);
    expect(probabilityInBand(travel, exact, { forwardMm: 0, aftMm: aftmostMm - 0.1 })).toBe(0);
    const nearly = measurements.map((one) => ({ ...one, sigma: one.sigma * 1e-6 }));
    expect(probabilityInBand(travel, nearly, { forwardMm: foremostMm - 0.1, aftMm: aftmostMm + 0.1 })).toBe(
      1,
    );
    expect(probabilityInBand(travel, nearly, { forwardMm: foremostMm + 0.1, aftMm: 900 })).toBe(0);
    expect(probabilityInBand([], measurements, { forwardMm: 0, aftMm: 1 })).toBeNull();
  });

  test('a CG on a limit, the other far off, is as likely in as out', () => {
    expect(probabilityInBand(travel, measurements, { forwardMm: foremostMm, aftMm: 9000 })).toBeCloseTo(
      0.5,
      12,
    );
    expect(probabilityInBand(travel, measurements, { forwardMm: -9000, aftMm: aftmostMm })).toBeCloseTo(
      0.5,
      12,
    );
  });

  test('with one limit it is the normal distribution of the margin', () => {
    const band = { forwardMm: -9000, aftMm: aftmostMm + 1.5 };
    expect(probabilityInBand(travel, measurements, band)).toBeCloseTo(normalBelow(1.5 / sigmaAt(0)), 12);
  });

  test('one point in a band is what lies between two limits', () => {
    const still = [travel[2]!];
    const one = measurements.map((m) => ({ ...m, perUnitMm: [m.perUnitMm[2]!] }));
    const expected = normalBelow(2 / sigmaAt(2)) - normalBelow(-1 / sigmaAt(2));
    const band = { forwardMm: foremostMm - 1, aftMm: foremostMm + 2 };
    expect(probabilityInBand(still, one, band)).toBeCloseTo(expected, 10);
  });

  /** 100 000 aircraft, each summed and burnt afresh: five sigmas of √(p(1 − p)/N), and 0.002 for the second order. */
  test('a Monte Carlo of the whole travel finds the same', () => {
    const normal = gaussians(7);
    const bands = [
      { forwardMm: foremostMm - 1, aftMm: aftmostMm + 1 },
      { forwardMm: foremostMm - 4, aftMm: aftmostMm + 0.5 },
      { forwardMm: foremostMm + 1, aftMm: aftmostMm + 3 },
    ];
    const inside = bands.map(() => 0);
    const count = 100_000;
    for (let n = 0; n < count; n += 1) {
      const drawn = bodies.map(({ mass: { massG, cgMm }, sigmaG, sigmaMm }) =>
        massPoint(massG + sigmaG * normal(), [cgMm![0] + sigmaMm[0] * normal(), 0, 0]),
      );
      const burnt = cgTravel(massSum(drawn), momentsAt(DENSITY + 0.02 * normal())).map(({ cgMm }) => cgMm[0]);
      bands.forEach(({ forwardMm, aftMm }, k) => {
        if (burnt.every((x) => x >= forwardMm && x <= aftMm)) inside[k]! += 1;
      });
    }
    bands.forEach((band, k) => {
      const p = probabilityInBand(travel, measurements, band)!;
      expect(p).toBeGreaterThan(0.05);
      expect(p).toBeLessThan(0.95);
      expect(Math.abs(inside[k]! / count - p)).toBeLessThan(5 * Math.sqrt((p * (1 - p)) / count) + 0.002);
    });
  });
});

describe('ranking', () => {
  const band = { forwardMm: foremostMm - 9, aftMm: aftmostMm + 2 };
  const ranked = ranking(travel, measurements, band);

  test('the variances sum to the whole at the end nearest its limit, the greatest first', () => {
    const total = ranked.reduce((sum, { varianceMm2 }) => sum + varianceMm2, 0);
    expect(total).toBeCloseTo(sigmaAt(0) ** 2, 12);
    expect(ranked.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(ranked.map(({ varianceMm2 }) => varianceMm2)).toEqual(
      ranked.map(({ varianceMm2 }) => varianceMm2).sort((a, b) => b - a),
    );
    // By hand: the airframe's 3 mm of tape on 2400 of 3870 g.
    expect(ranked[0]).toMatchObject({ bodyId: 'airframe', quantity: 'station' });
    expect(ranked[0]!.varianceMm2).toBeCloseTo(((3 * 2400) / 3870) ** 2, 10);
  });

  test('inside the band, knowing what ranks first makes it likeliest', () => {
    const now = probabilityInBand(travel, measurements, band)!;
    const chances = ranked.map((one) => probabilityIfPerfect(travel, measurements, band, one)!);
    expect(Math.max(...chances)).toBe(chances[0]);
    for (const chance of chances) expect(chance).toBeGreaterThanOrEqual(now - 1e-12);
    const without = measurements.map((m) =>
      m.bodyId === 'airframe' && m.quantity === 'station' ? { ...m, sigma: 0 } : m,
    );
    expect(chances[0]).toBeCloseTo(probabilityInBand(travel, without, band)!, 12);
  });

  test('nothing to rank', () => {
    expect(ranking([], measurements, band)).toEqual([]);
    expect(ranking(travel, exact, band).every(({ share }) => share === 0)).toBe(true);
  });
});
