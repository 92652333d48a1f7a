import type { Vec3 } from './types';

/** Lists shorter than this are left as they are. */
const small = 4;

/** Things in an order in which neighbours in the list are neighbours in space: halved again and again across the longest side. */
export function spatialOrder<T>(things: readonly T[], placeOf: (thing: T) => Vec3): T[] {
  const places = things.map(placeOf);
  const order = things.map((_, i) => i);
  const arrange = (from: number, to: number) => {
    if (to - from <= small) return;
    const axis = longestSide(places, order, from, to);
    const sorted = order.slice(from, to).sort((a, b) => places[a]![axis] - places[b]![axis]);
    for (const [k, index] of sorted.entries()) order[from + k] = index;
    const half = (from + to) >> 1;
    arrange(from, half);
    arrange(half, to);
  };
  arrange(0, things.length);
  return order.map((index) => things[index]!);
}

function longestSide(places: readonly Vec3[], order: readonly number[], from: number, to: number): 0 | 1 | 2 {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = from; i < to; i += 1) {
    const place = places[order[i]!]!;
    for (const axis of [0, 1, 2] as const) {
      low[axis] = Math.min(low[axis]!, place[axis]);
      high[axis] = Math.max(high[axis]!, place[axis]);
    }
  }
  const side = (axis: number) => high[axis]! - low[axis]!;
  return side(0) >= side(1) && side(0) >= side(2) ? 0 : side(1) >= side(2) ? 1 : 2;
}
