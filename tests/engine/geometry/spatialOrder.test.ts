import { expect, test } from 'vitest';
import { spatialOrder } from '../../../src/engine/geometry/spatialOrder';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { randomFrom } from '../../randomFrom';

const shuffled = <T>(list: readonly T[], random: () => number): T[] =>
  list
    .map((thing) => ({ thing, lot: random() }))
    .sort((a, b) => a.lot - b.lot)
    .map(({ thing }) => thing);

test('beads on a string come in the order of the string, whichever way it runs', () => {
  const random = randomFrom(61);
  for (const axis of [0, 1, 2]) {
    for (const count of [5, 17, 64]) {
      const beads = Array.from({ length: count }, (_, at) => at);
      const placeOf = (at: number): Vec3 => [axis === 0 ? at : 0, axis === 1 ? at : 0, axis === 2 ? at : 0];
      expect(spatialOrder(shuffled(beads, random), placeOf)).toEqual(beads);
    }
  }
});

test('a few things stay as they are, and nothing is lost or doubled', () => {
  const placeOf = (at: number): Vec3 => [at, 0, 0];
  expect(spatialOrder([3, 1, 2, 0], placeOf)).toEqual([3, 1, 2, 0]);
  expect(spatialOrder([], placeOf)).toEqual([]);
  const random = randomFrom(62);
  const places = Array.from({ length: 200 }, (): Vec3 => [900 * random(), 300 * random(), 500 * random()]);
  const order = spatialOrder(places, (place) => place);
  expect(new Set(order)).toEqual(new Set(places));
  expect(order).toHaveLength(200);
});

test('two heaps far apart are never mixed, side by side, behind or above each other', () => {
  const random = randomFrom(63);
  for (const axis of [0, 1, 2]) {
    const heap = (far: number) =>
      Array.from({ length: 32 }, (): Vec3 => {
        const at: [number, number, number] = [100 * random(), 100 * random(), 100 * random()];
        at[axis]! += far;
        return at;
      });
    const order = spatialOrder(shuffled([...heap(0), ...heap(1000)], random), (place) => place);
    expect(order.slice(0, 32).every((place) => place[axis]! < 500)).toBe(true);
  }
});
