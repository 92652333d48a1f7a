import { expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import type { PackItem } from '../../../src/engine/place/lineBound';
import { packForward } from '../../../src/engine/place/packing';
import { seeded } from './cases';

/** Least cost over all packings whose corners are on a grid of 10 mm, which is enough for sizes on it. */
function bruteCost(items: readonly PackItem[], gapMm: number): number {
  let best = Number.POSITIVE_INFINITY;
  const place = (i: number, corners: Vec3[], cost: number) => {
    if (cost >= best) return;
    if (i === items.length) {
      best = cost;
      return;
    }
    const { region, sizeMm, perMm } = items[i]!;
    for (let x = region.minMm[0]; x + sizeMm[0] <= region.maxMm[0]; x += 10) {
      for (let y = region.minMm[1]; y + sizeMm[1] <= region.maxMm[1]; y += 10) {
        for (let z = region.minMm[2]; z + sizeMm[2] <= region.maxMm[2]; z += 10) {
          const at: Vec3 = [x, y, z];
          const clear = corners.every((other, j) =>
            [0, 1, 2].some(
              (k) =>
                at[k]! >= other[k]! + items[j]!.sizeMm[k]! + gapMm ||
                other[k]! >= at[k]! + sizeMm[k]! + gapMm,
            ),
          );
          if (clear) place(i + 1, [...corners, at], cost + perMm * x);
        }
      }
    }
  };
  place(0, [], 0);
  return best;
}

test('packing forward is as good as trying every place on the grid', () => {
  let fitting = 0;
  for (let seed = 1; seed <= 150; seed++) {
    const random = seeded(seed);
    const whole = (low: number, high: number) => Math.floor(low + (high - low + 1) * random());
    const gapMm = seed % 3 === 0 ? 10 : 0;
    const room: Vec3 = [whole(5, 9) * 10, whole(2, 3) * 10, whole(1, 2) * 10];
    const items = Array.from({ length: whole(2, 4) }, (_, i): PackItem => {
      const from: Vec3 = [random() < 0.3 ? whole(0, 2) * 10 : 0, 0, 0];
      const fixed = i === 3 && random() < 0.5;
      const sizeMm: Vec3 = [whole(1, 4) * 10, whole(1, 2) * 10, 10];
      const minMm: Vec3 = fixed ? [20, 0, 0] : from;
      const maxMm: Vec3 = fixed ? [20 + sizeMm[0], sizeMm[1], sizeMm[2]] : room;
      return { region: { minMm, maxMm }, sizeMm, perMm: fixed ? 0 : whole(1, 9) };
    });
    const found = packForward(items, () => gapMm, 1e6);
    const brute = bruteCost(items, gapMm);
    expect(found?.bound ?? Number.POSITIVE_INFINITY, `seed ${seed}`).toBeCloseTo(brute, 6);
    if (found) fitting += 1;
    // Cut short, it still gives a bound.
    const short = packForward(items, () => gapMm, 2);
    if (found) expect(short?.bound, `seed ${seed}`).toBeLessThanOrEqual(brute + 1e-6);
  }
  expect(fitting).toBeGreaterThan(40);
  expect(fitting).toBeLessThan(150);
});
