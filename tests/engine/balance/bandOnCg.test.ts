import { describe, expect, test } from 'vitest';
import {
  bodyMeasurements,
  densityMeasurement,
  limitsMeasurement,
  type Measurement,
  probabilityInBand,
} from '../../../src/engine/balance/bandProbability';
import { cgTravel, type LiquidMoment } from '../../../src/engine/balance/travel';
import { cgPerMm, type MeasuredBody } from '../../../src/engine/balance/uncertainty';
import { massPoint, massSum } from '../../../src/engine/mass/massProperties';
import { gaussians } from './gaussians';

const DENSITY = 0.75;
const bodies: MeasuredBody[] = [
  { id: 'airframe', mass: massPoint(3000, [500, 0, 0]), sigmaG: 5, sigmaMm: [1, 0, 0] },
  { id: 'pack', mass: massPoint(500, [300, 0, 0]), sigmaG: 2, sigmaMm: [1, 0, 0] },
  { id: 'engine', mass: massPoint(800, [625, 0, 0]), sigmaG: 2, sigmaMm: [1, 0, 0] },
];
const fixed = massSum(bodies.map(({ mass }) => mass));
const CG = fixed.cgMm![0];

/** A tank of a box with its liquid's middle at a station that is known to so much. */
interface Liquid {
  readonly ml: number;
  readonly stationMm: number;
  readonly sigmaMm: number;
}

/** Each tank empties before the next begins. */
function momentsOf(tanks: readonly Liquid[], density: number): { moment: LiquidMoment; massesG: number[] }[] {
  const total = tanks.reduce((sum, { ml }) => sum + ml, 0);
  return Array.from({ length: 9 }, (_, i) => {
    let drawn = (total * i) / 8;
    const massesG = tanks.map(({ ml }) => {
      const gone = Math.min(ml, drawn);
      drawn -= gone;
      return (ml - gone) * density;
    });
    const massG = massesG.reduce((a, b) => a + b, 0);
    const moment = massesG.reduce((sum, g, k) => sum + g * tanks[k]!.stationMm, 0);
    return { massesG, moment: { fuelFraction: 1 - i / 8, massG, momentGmm: [moment, 0, 0] } };
  });
}

/** The probability told, and that of so many aircraft drawn at random, each summed and burnt afresh. */
function both(
  tanks: readonly Liquid[],
  halfBandMm: number,
  densitySigma: number,
  bandSigmaMm: number,
  seed: number,
) {
  const rows = momentsOf(tanks, DENSITY);
  const moments = rows.map(({ moment }) => moment);
  const travel = cgTravel(fixed, moments);
  const stations = travel.map(({ cgMm }) => cgMm[0]);
  const middle = (Math.min(...stations) + Math.max(...stations)) / 2;
  const band = { forwardMm: middle - halfBandMm, aftMm: middle + halfBandMm };
  const measurements: Measurement[] = [
    ...bodyMeasurements(bodies, travel),
    densityMeasurement(DENSITY, densitySigma, moments, travel),
    ...tanks.map(
      (tank, t): Measurement => ({
        bodyId: `tank ${t}`,
        quantity: 'station',
        sigma: tank.sigmaMm,
        perUnitMm: travel.map(({ massG }, k) => cgPerMm(rows[k]!.massesG[t]!, massG)),
      }),
    ),
    ...(bandSigmaMm > 0 ? [limitsMeasurement(bandSigmaMm, travel)] : []),
  ];
  const normal = gaussians(seed);
  const count = 20_000;
  let inside = 0;
  for (let n = 0; n < count; n += 1) {
    const drawn = bodies.map(({ mass: { massG, cgMm }, sigmaG, sigmaMm }) =>
      massPoint(massG + sigmaG * normal(), [cgMm![0] + sigmaMm[0] * normal(), 0, 0]),
    );
    const moved = tanks.map((tank) => ({ ...tank, stationMm: tank.stationMm + tank.sigmaMm * normal() }));
    const shift = bandSigmaMm * normal();
    const burnt = cgTravel(
      massSum(drawn),
      momentsOf(moved, DENSITY + densitySigma * normal()).map(({ moment }) => moment),
    );
    const good = burnt.every(({ cgMm: [x] }) => x >= band.forwardMm + shift && x <= band.aftMm + shift);
    if (good) inside += 1;
  }
  const drawnShare = inside / count;
  return {
    computed: probabilityInBand(travel, measurements, band)!,
    drawnShare,
    noise: 5 * Math.sqrt((drawnShare * (1 - drawnShare)) / count),
  };
}

describe('tanks on the CG, where any fuel state may turn out to be the extreme', () => {
  test.each([
    ['one tank on the CG', [{ ml: 1500, stationMm: CG, sigmaMm: 8 }], 1.2, 0.01, 0],
    ['one tank a little ahead of it', [{ ml: 1500, stationMm: CG - 2, sigmaMm: 8 }], 1.5, 0.01, 0],
    [
      'two tanks, one ahead and one behind',
      [
        { ml: 900, stationMm: CG - 20, sigmaMm: 8 },
        { ml: 900, stationMm: CG + 20, sigmaMm: 8 },
      ],
      2.5,
      0.02,
      0,
    ],
    [
      'four tanks about it and limits that hang on an estimate',
      [-30, 25, 10, -5].map((offMm) => ({ ml: 450, stationMm: CG + offMm, sigmaMm: 10 })),
      3,
      0.02,
      1,
    ],
  ] as const)('%s', (_, tanks, halfBandMm, densitySigma, bandSigmaMm) => {
    const { computed, drawnShare, noise } = both(tanks, halfBandMm, densitySigma, bandSigmaMm, 11);
    expect(drawnShare).toBeGreaterThan(0.3);
    expect(drawnShare).toBeLessThan(0.97);
    // Never told too high, but for the noise of the drawing and 0.002 for the second order; nor much too low.
    expect(computed).toBeLessThan(drawnShare + noise + 0.002);
    expect(computed).toBeGreaterThan(drawnShare - noise - 0.012);
  });

  test('the same figure every time', () => {
    const once = () => both([{ ml: 1500, stationMm: CG, sigmaMm: 8 }], 1.2, 0.01, 0, 3).computed;
    expect(once()).toBe(once());
  });
});

test('limits that hang on an estimate widen the doubt as a wider CG would', () => {
  const still = cgTravel(fixed, [{ fuelFraction: 0, massG: 0, momentGmm: [0, 0, 0] }]);
  const own = bodyMeasurements(bodies, still);
  const sigma = Math.hypot(...own.map((one) => one.sigma * one.perUnitMm[0]!));
  const band = { forwardMm: 0, aftMm: CG + 2 };
  const p = probabilityInBand(still, [...own, limitsMeasurement(3, still)], band)!;
  // One limit and one point: Φ(2/√(σ² + 3²)), by the complementary error function's series in any table.
  const z = 2 / Math.hypot(sigma, 3);
  let [term, sum] = [z, z];
  for (let k = 3; k < 60; k += 2) sum += term *= (z * z) / k;
  expect(p).toBeCloseTo(0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI), 10);
});
