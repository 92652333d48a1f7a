import { describe, expect, test } from 'vitest';
import { type MeasuredBody, propagate, standardUncertainty } from '../../../src/engine/balance/uncertainty';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { massMove, massPoint, massScale, massSum, noMass } from '../../../src/engine/mass/massProperties';
import type { MassProperties } from '../../../src/engine/mass/types';
import { gaussians, xoshiro128 } from './gaussians';

const body = (id: string, mass: MassProperties, sigmaG: number, sigmaMm: Vec3): MeasuredBody => ({
  id,
  mass,
  sigmaG,
  sigmaMm,
});

const ofSize = (massG: number, cgMm: Vec3, xx: number, yy: number, zz: number): MassProperties => ({
  massG,
  cgMm,
  inertiaAboutCgGmm2: { xx, yy, zz, xy: 0, xz: 0, yz: 0 },
});

/** Wren, an invented model: airframe, pack, engine, receiver. */
const wren = [
  body('airframe', ofSize(2400, [520, 1, 20], 9e7, 6e7, 1.4e8), 10, [3, 1, 2]),
  body('pack', ofSize(310, [190, -8, -12], 8e4, 4e5, 4e5), 1, [2, 1, 1]),
  body('engine', massPoint(760, [70, 2, 5]), 2, [1, 0.5, 0.5]),
  body('receiver', massPoint(24, [410, 30, 15]), 0.5, [8, 4, 2]),
];

describe('propagation', () => {
  /** GUM equation 10 by hand: 100 ± 2 g at 0 ± 1 mm and 300 ± 3 g at 400 ± 2 mm, all one sigma. CG at 300 mm of 400 g. */
  test('two masses by hand', () => {
    const result = propagate([
      body('a', massPoint(100, [0, 0, 0]), 2, [1, 0, 0]),
      body('b', massPoint(300, [400, 0, 0]), 3, [2, 0, 0]),
    ])!;
    // (0 − 300)/400·2, (400 − 300)/400·3, 100/400·1, 300/400·2.
    const parts = [-1.5, 0.75, 0.25, 1.5].map((x) => x * x);
    expect(result.cgCovarianceMm2.xx).toBeCloseTo(2.25 + 0.5625 + 0.0625 + 2.25, 12);
    const listed = [
      result.contributions[0],
      result.contributions[2],
      result.contributions[1],
      result.contributions[3],
    ];
    listed.forEach((one, k) => {
      expect(one!.varianceMm2[0]).toBeCloseTo(parts[k]!, 12);
    });
    expect(result.massSigmaG).toBeCloseTo(Math.sqrt(13), 12);
    // Iyy = Σ m·x² with x = −300 and 100: slopes 90000·2, 10000·3, 2·100·(−300)·1, 2·300·100·2.
    expect(result.inertiaSigmaGmm2[1]).toBeCloseTo(Math.hypot(180_000, 30_000, 60_000, 120_000), 6);
    expect(result.inertiaSigmaGmm2[0]).toBe(0);
  });

  /** With one error alone, sigma is the slope times it; the slope by central difference of the whole sum. */
  test('every slope is that of summing everything anew', () => {
    const step = 1e-3;
    wren.forEach(({ id, mass: own }, k) => {
      const others = wren.toSpliced(k, 1).map(({ mass }) => mass);
      const slopes = (less: MassProperties, more: MassProperties) => {
        const [a, b] = [massSum([...others, less]), massSum([...others, more])];
        const of = ({ cgMm, inertiaAboutCgGmm2: { xx, yy, zz } }: MassProperties) => [...cgMm!, xx, yy, zz];
        const from = of(a);
        return of(b).map((value, i) => (value - from[i]!) / (2 * step));
      };
      const expectSigmas = (alone: MeasuredBody, expected: number[]) => {
        const found = propagate([
          ...wren.map((one) => body(one.id, one.mass, 0, [0, 0, 0])).toSpliced(k, 1),
          alone,
        ])!;
        [...found.cgSigmaMm, ...found.inertiaSigmaGmm2].forEach((sigma, i) => {
          expect(Math.abs(sigma - Math.abs(expected[i]!))).toBeLessThan(1e-5 * sigma + (i < 3 ? 1e-8 : 1e-1));
        });
      };
      const heavier = (addG: number) => massScale(own, 1 + addG / own.massG);
      expectSigmas(body(id, own, 1, [0, 0, 0]), slopes(heavier(-step), heavier(step)));
      for (const axis of [0, 1, 2]) {
        const along = (size: number): Vec3 => [
          axis === 0 ? size : 0,
          axis === 1 ? size : 0,
          axis === 2 ? size : 0,
        ];
        const expected = slopes(massMove(own, along(-step)), massMove(own, along(step)));
        expectSigmas(body(id, own, 0, along(1)), expected);
      }
    });
  });

  test('an entered ± is two sigmas, as GUM 6.2.1 expands with k = 2', () => {
    expect(standardUncertainty(3)).toBe(1.5);
  });

  test('what the measurements add sums to the variance of the CG', () => {
    const result = propagate(wren)!;
    for (const axis of [0, 1, 2] as const) {
      const sum = result.contributions.reduce((total, { varianceMm2 }) => total + varianceMm2[axis], 0);
      expect(sum).toBeCloseTo(result.cgSigmaMm[axis] ** 2, 12);
    }
    expect(result.lateralSigmaMm).toBe(result.cgSigmaMm[1]);
  });

  test('no mass, and a body of no mass', () => {
    expect(propagate([])).toBeNull();
    expect(propagate([body('nothing', noMass, 1, [1, 1, 1])])).toBeNull();
    expect(propagate([...wren, body('nothing', noMass, 1, [1, 1, 1])])).toEqual(propagate(wren));
  });
});

describe('propagation against chance', () => {
  test('the generator gives its authors’ numbers', () => {
    // State 1, 2, 3, 4: 2·5 = 10, turned by 7 is 1280, by 9 is 11520; then b = 0 gives 0.
    const next = xoshiro128(1, 2, 3, 4);
    expect([next(), next()]).toEqual([11520, 0]);
  });

  /**
   * 100 000 aircraft with errors drawn at random, each summed afresh. A sample variance is off by √(2/N) of itself
   * and a covariance by √((σ₁²σ₂² + σ₁₂²)/N), one sigma; five are allowed, plus the second order that propagation
   * leaves out, relative errors of 1 % squared.
   */
  test('a Monte Carlo finds the same covariance and inertia', () => {
    const result = propagate(wren)!;
    const normal = gaussians(20_260);
    const count = 100_000;
    const sums = new Array<number>(7).fill(0);
    const products = Array.from({ length: 7 }, () => new Array<number>(7).fill(0));
    const { mass } = result;
    const middle = [
      ...mass.cgMm!,
      mass.massG,
      mass.inertiaAboutCgGmm2.xx,
      mass.inertiaAboutCgGmm2.yy,
      mass.inertiaAboutCgGmm2.zz,
    ];
    for (let n = 0; n < count; n += 1) {
      const whole = massSum(
        wren.map(({ mass: own, sigmaG, sigmaMm }) => {
          const weighed = massScale(own, 1 + (sigmaG * normal()) / own.massG);
          const [x, y, z] = own.cgMm!;
          const cgMm: Vec3 = [
            x + sigmaMm[0] * normal(),
            y + sigmaMm[1] * normal(),
            z + sigmaMm[2] * normal(),
          ];
          return { ...weighed, cgMm };
        }),
      );
      const { xx, yy, zz } = whole.inertiaAboutCgGmm2;
      const off = [...whole.cgMm!, whole.massG, xx, yy, zz].map((value, k) => value - middle[k]!);
      off.forEach((a, i) => {
        sums[i]! += a;
        off.forEach((b, j) => {
          products[i]![j]! += a * b;
        });
      });
    }
    const found = (i: number, j: number) =>
      products[i]![j]! / count - (sums[i]! / count) * (sums[j]! / count);
    const { xx, yy, zz, xy, xz, yz } = result.cgCovarianceMm2;
    const expected = [
      [0, 0, xx],
      [1, 1, yy],
      [2, 2, zz],
      [0, 1, xy],
      [0, 2, xz],
      [1, 2, yz],
      [3, 3, result.massSigmaG ** 2],
      [4, 4, result.inertiaSigmaGmm2[0] ** 2],
      [5, 5, result.inertiaSigmaGmm2[1] ** 2],
      [6, 6, result.inertiaSigmaGmm2[2] ** 2],
    ] as const;
    const variance = (i: number) => expected.find(([a, b]) => a === i && b === i)![2];
    for (const [i, j, value] of expected) {
      const sigma = Math.sqrt((variance(i) * variance(j) + value ** 2) / count);
      const secondOrder = 1e-4 * Math.sqrt(variance(i) * variance(j));
      expect(Math.abs(found(i, j) - value), `${i}, ${j}`).toBeLessThan(5 * sigma + secondOrder);
    }
  });
});
