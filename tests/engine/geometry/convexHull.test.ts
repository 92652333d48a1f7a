import fc from 'fast-check';
import { expect, test } from 'vitest';
import { convexHull } from '../../../src/engine/geometry/convexHull';
import { type Corner, turnOf } from '../../../src/engine/geometry/polygon';

// Whole numbers in a small square: many lie on one line, and some are there twice.
const points = fc.array(fc.tuple(fc.integer({ min: -4, max: 4 }), fc.integer({ min: -4, max: 4 })), {
  minLength: 3,
  maxLength: 14,
});

/** By its definition: a corner of the hull is a point that no triangle or line of the others holds. */
function isCorner(p: Corner, all: readonly Corner[]): boolean {
  const others = all.filter(([u, v]) => u !== p[0] || v !== p[1]);
  // Some half plane through it has all others strictly on one side: try the directions of all pairs, and a little beside.
  const ways = others.flatMap((q) =>
    [1e-3, -1e-3].map((bend) => Math.atan2(q[1] - p[1], q[0] - p[0]) + bend),
  );
  return ways.some((way) => {
    const sides = others.map((q) => Math.cos(way) * (q[1] - p[1]) - Math.sin(way) * (q[0] - p[0]));
    return sides.every((side) => side > 0) || sides.every((side) => side < 0);
  });
}

test('the hull is the corners by definition, counterclockwise, none on a straight edge', () => {
  fc.assert(
    fc.property(points, (all) => {
      const names = (list: readonly Corner[]) => [...new Set(list.map(String))].sort();
      const hull = convexHull(all);
      const corners = all.filter((p) => isCorner(p, all));
      // All in one place there is no hull; else its corners are those, each once.
      if (names(all).length === 1) return;
      expect(names(hull)).toEqual(names(corners));
      expect(hull).toHaveLength(names(hull).length);
      if (hull.length > 2)
        hull.forEach((b, k) => {
          const [a, c] = [hull.at(k - 1)!, hull[(k + 1) % hull.length]!];
          expect(turnOf(a, b, c)).toBeGreaterThan(0);
        });
    }),
    { numRuns: 300 },
  );
});
