import { describe, expect, test } from 'vitest';
import { cutStrips } from '../../../src/engine/wing/stripEdges';

describe('strips', () => {
  test('inset leaves a quarter of a strip at a free end, and none at a joined one', () => {
    const { edges } = cutStrips(4, 'inset', 'joined', 'free');
    const width = (edges[1] ?? 0) - (edges[0] ?? 0);
    expect(edges[0]).toBe(0);
    expect(1 - (edges[4] ?? 0)).toBeCloseTo(width / 4, 12);
    const both = cutStrips(4, 'inset', 'free', 'free').edges;
    expect(both[0]).toBeCloseTo(((both[1] ?? 0) - (both[0] ?? 0)) / 4, 12);
  });

  test.each(['inset', 'flush', 'cosine'] as const)(
    '%s: edges rise, each control line lies in its strip',
    (tip) => {
      for (const start of ['free', 'joined'] as const) {
        for (const end of ['free', 'joined'] as const) {
          const { edges, middles } = cutStrips(7, tip, start, end);
          expect(edges[0]).toBeGreaterThanOrEqual(0);
          expect(edges[7]).toBeLessThanOrEqual(1 + 1e-12);
          middles.forEach((middle, k) => {
            expect(middle).toBeGreaterThan(edges[k] ?? 1);
            expect(middle).toBeLessThan(edges[k + 1] ?? 0);
          });
        }
      }
    },
  );

  test('cosine strips close up at a free end only, and read the same from the other end', () => {
    const { edges } = cutStrips(10, 'cosine', 'joined', 'free');
    const widths = edges.slice(1).map((edge, k) => edge - (edges[k] ?? 0));
    // half a circle from its top: the first is sin(9°), the last 1 − cos(9°)
    expect(widths[0]).toBeCloseTo(Math.sin((9 * Math.PI) / 180), 12);
    expect(widths[9]).toBeCloseTo(1 - Math.cos((9 * Math.PI) / 180), 12);
    const turned = cutStrips(10, 'cosine', 'free', 'joined')
      .edges.toReversed()
      .map((edge) => 1 - edge);
    turned.forEach((edge, k) => {
      expect(edge).toBeCloseTo(edges[k] ?? Number.NaN, 12);
    });
  });
});
