import { boxGap, type Solid } from '../../engine/fit/solid';

interface Boxed {
  readonly solid: Solid;
}

/** All pairs of a list whose boxes are no further apart than `reachMm`, by sweeping along the aircraft. */
export function meetingPairs<T extends Boxed>(list: readonly T[], reachMm = 0): (readonly [T, T])[] {
  const sorted = [...list].sort((a, b) => a.solid.minMm[0] - b.solid.minMm[0]);
  const pairs: (readonly [T, T])[] = [];
  let open: T[] = [];
  for (const thing of sorted) {
    const fromMm = thing.solid.minMm[0] - reachMm;
    open = open.filter(({ solid }) => solid.maxMm[0] >= fromMm);
    for (const other of open) if (boxGap(thing.solid, other.solid) <= reachMm) pairs.push([other, thing]);
    open.push(thing);
  }
  return pairs;
}
