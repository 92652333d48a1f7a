import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutStrips, shareStrips } from '../../../src/engine/wing/stripEdges';

describe('strips', () => {
  test('inset leaves a quarter of a strip at the tip', () => {
    const { edges } = cutStrips(4, 'inset');
    const width = (edges[1] ?? 0) - (edges[0] ?? 0);
    expect(1 - (edges[4] ?? 0)).toBeCloseTo(width / 4, 12);
  });

  test.each(['inset', 'flush', 'cosine'] as const)(
    '%s: edges rise from 0, each control line lies in its strip',
    (tip) => {
      const { edges, middles } = cutStrips(7, tip);
      expect(edges[0]).toBe(0);
      expect(edges[7]).toBeLessThanOrEqual(1);
      middles.forEach((middle, k) => {
        expect(middle).toBeGreaterThan(edges[k] ?? 1);
        expect(middle).toBeLessThan(edges[k + 1] ?? 0);
      });
    },
  );

  test('shares all strips out, at least one each, none much wider than its fair share', () => {
    const lengths = fc.array(fc.double({ min: 1, max: 1000, noNaN: true }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(lengths, fc.integer({ min: 1, max: 60 }), (given, total) => {
        const counts = shareStrips(given, total);
        const whole = given.reduce((a, b) => a + b, 0);
        expect(Math.min(...counts)).toBeGreaterThanOrEqual(1);
        const sum = counts.reduce((a, b) => a + b, 0);
        expect(sum).toBeGreaterThanOrEqual(Math.max(total, given.length));
        expect(sum).toBeLessThan(total + given.length);
        given.forEach((length, k) => {
          expect(length / (counts[k] ?? 0)).toBeLessThanOrEqual((2 * whole) / total + 1e-9);
        });
      }),
    );
  });
});
