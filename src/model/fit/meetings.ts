import { boxGap, type Solid } from '../../engine/fit/solid';

interface Boxed {
  readonly solid: Solid;
}

type Pairs<T> = readonly (readonly [T, T])[];

/**
 * All pairs of a list whose boxes are no further apart than `reachMm`, by sweeping along the aircraft. Kept up by what changed: with a few things
 * new and the rest the very same objects, only the new ones are looked at.
 */
export function meetingPairs<T extends Boxed>(): (list: readonly T[], reachMm?: number) => Pairs<T> {
  let before: ReadonlySet<T> = new Set();
  let reached = 0;
  let pairs: Pairs<T> = [];
  return (list, reachMm = 0) => {
    const now = new Set(list);
    const fresh = list.filter((one) => !before.has(one));
    if (fresh.length > fewChanged || reachMm !== reached) pairs = swept(list, reachMm);
    else {
      const stay = now.size - fresh.length === before.size;
      const kept = stay ? pairs : pairs.filter(([a, b]) => now.has(a) && now.has(b));
      pairs = fresh.length === 0 ? kept : [...kept, ...withFresh(list, fresh, reachMm)];
    }
    before = now;
    reached = reachMm;
    return pairs;
  };
}

const fewChanged = 8;

function withFresh<T extends Boxed>(list: readonly T[], fresh: readonly T[], reachMm: number): Pairs<T> {
  const order = new Map(fresh.map((one, i) => [one, i]));
  return fresh.flatMap((one, i) =>
    list.flatMap((other): (readonly [T, T])[] => {
      const at = order.get(other);
      if (other === one || (at !== undefined && at < i)) return [];
      return boxGap(one.solid, other.solid) > reachMm ? [] : [[one, other]];
    }),
  );
}

function swept<T extends Boxed>(list: readonly T[], reachMm: number): Pairs<T> {
  const sorted = [...list].sort((a, b) => a.solid.minMm[0] - b.solid.minMm[0]);
  const pairs: (readonly [T, T])[] = [];
  let open: T[] = [];
  for (const one of sorted) {
    open = open.filter(({ solid }) => solid.maxMm[0] + reachMm >= one.solid.minMm[0]);
    for (const other of open) if (boxGap(one.solid, other.solid) <= reachMm) pairs.push([other, one]);
    open.push(one);
  }
  return pairs;
}
