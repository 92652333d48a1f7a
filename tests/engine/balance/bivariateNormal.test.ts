import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bivariateNormalBelow, normalBelow } from '../../../src/engine/balance/bivariateNormal';
import { between } from '../../between';

const deviate = between(-5, 5);
const correlation = between(-1, 1);

/** ∫ φ(x)·Φ((k − ρx)/√(1 − ρ²)) dx up to h: another formula and another rule (Simpson's). */
function byConditioning(h: number, k: number, rho: number): number {
  const spread = Math.sqrt(1 - rho * rho);
  const f = (x: number) =>
    (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * normalBelow((k - rho * x) / spread);
  const steps = 4000;
  const from = -9;
  const step = (h - from) / steps;
  let sum = f(from) + f(h);
  for (let i = 1; i < steps; i += 1) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * step);
  return (sum * step) / 3;
}

describe('the normal distribution', () => {
  test('agrees with the printed table', () => {
    // Abramowitz & Stegun, Handbook of Mathematical Functions, table 26.1, from memory, half a unit in the last digit.
    expect(Math.abs(normalBelow(1) - 0.841344746068543)).toBeLessThanOrEqual(5.1e-16);
    expect(Math.abs(normalBelow(2) - 0.977249868051821)).toBeLessThanOrEqual(5.1e-16);
    expect(normalBelow(0)).toBe(0.5);
    expect(normalBelow(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalBelow(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(() => normalBelow(Number.NaN)).toThrow('NaN');
  });

  test('is symmetric and rises', () => {
    fc.assert(
      fc.property(between(0, 12), (x) => {
        expect(normalBelow(x) + normalBelow(-x)).toBeCloseTo(1, 14);
        expect(normalBelow(x + 0.01)).toBeGreaterThanOrEqual(normalBelow(x) - 1e-15);
      }),
    );
  });
});

describe('the bivariate normal distribution', () => {
  /** Sheppard, Phil. Trans. R. Soc. A 192 (1898): the quadrant has 1/4 + asin ρ/(2π). */
  test('the quadrant is Sheppard’s', () => {
    fc.assert(
      fc.property(correlation, (rho) => {
        const quadrant = 0.25 + Math.asin(rho) / (2 * Math.PI);
        expect(Math.abs(bivariateNormalBelow(0, 0, rho) - quadrant)).toBeLessThan(1e-13);
      }),
    );
  });

  test('agrees with integrating over one variable', () => {
    const below99 = between(-0.99, 0.99);
    fc.assert(
      fc.property(deviate, deviate, below99, (h, k, rho) => {
        expect(Math.abs(bivariateNormalBelow(h, k, rho) - byConditioning(h, k, rho))).toBeLessThan(1e-11);
      }),
      { numRuns: 60 },
    );
  });

  /** Y = X gives the smaller probability; Y = −X gives what the two have in common. */
  test('errors wholly in common, and as good as', () => {
    fc.assert(
      fc.property(deviate, deviate, (h, k) => {
        const same = Math.min(normalBelow(h), normalBelow(k));
        const opposite = Math.max(0, normalBelow(h) + normalBelow(k) - 1);
        expect(Math.abs(bivariateNormalBelow(h, k, 1) - same)).toBeLessThan(1e-13);
        expect(Math.abs(bivariateNormalBelow(h, k, -1) - opposite)).toBeLessThan(1e-13);
        // |Φ₂(1) − Φ₂(ρ)| ≤ ∫ dθ/2π = acos ρ/2π, from Plackett's identity.
        for (const rho of [1 - 1e-6, 1 - 1e-12]) {
          const room = Math.acos(rho) / (2 * Math.PI) + 1e-13;
          expect(Math.abs(bivariateNormalBelow(h, k, rho) - same)).toBeLessThan(room);
          expect(Math.abs(bivariateNormalBelow(h, k, -rho) - opposite)).toBeLessThan(room);
        }
      }),
    );
  });

  test('the four quadrants about any point sum to one', () => {
    fc.assert(
      fc.property(deviate, deviate, correlation, (h, k, rho) => {
        const four =
          bivariateNormalBelow(h, k, rho) +
          bivariateNormalBelow(-h, -k, rho) +
          bivariateNormalBelow(h, -k, -rho) +
          bivariateNormalBelow(-h, k, -rho);
        expect(four).toBeCloseTo(1, 12);
        expect(bivariateNormalBelow(k, h, rho)).toBeCloseTo(bivariateNormalBelow(h, k, rho), 12);
      }),
    );
  });

  test('limits without end, and nonsense', () => {
    const never = Number.NEGATIVE_INFINITY;
    expect(bivariateNormalBelow(-never, 0.3, 0.9)).toBe(normalBelow(0.3));
    expect(bivariateNormalBelow(0.3, -never, -0.9)).toBeCloseTo(normalBelow(0.3), 15);
    expect(bivariateNormalBelow(never, 3, -0.5)).toBe(0);
    expect(bivariateNormalBelow(1e200, -1e200, -0.5)).toBe(0);
    expect(() => bivariateNormalBelow(0, 0, 1.1)).toThrow('1.1');
    expect(() => bivariateNormalBelow(Number.NaN, 0, 0)).toThrow('NaN');
  });
});
