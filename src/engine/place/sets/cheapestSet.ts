import { bySmith, type RoomMeasure } from './roomMeasure';

/** What each choice of a room costs: so much for each mm aft, and so much for being there at all. */
export interface Prices {
  readonly perMm: readonly number[];
  readonly fixed: readonly number[];
}

/** One choice in the order in which it is packed: it costs `base + slope·(steps of the rail used before it)`. */
interface Entry {
  readonly index: number;
  readonly steps: number;
  readonly base: number;
  readonly slope: number;
}

/** Sets of choices of a room and what they cost at least. The empty one costs nothing. */
export interface SetPrices {
  /** No set costs less. */
  readonly leastCost: number;
  /** One that costs so much; parts may come twice, once in each of two ways. */
  readonly cheapest: readonly number[];
  /** Every set without repetition that costs no more than this, but for the empty one; null when there are too many. */
  within(mostCost: number, mostSets: number): number[][] | null;
}

/** Steps that a rail is cut into at most, and steps in which lengths mostly come, mm. */
const MOST_STEPS = 2000;
const USUAL_STEPS_MM = [1, 0.5, 0.25, 0.1] as const;
const WHOLE_WITHIN = 1e-7;

/** The step that a rail is cut into: one that measures all lengths where there is one. */
export function railStepMm({ fromMm, toMm, gapMm, taken }: RoomMeasure): number {
  const capacityMm = toMm - fromMm + gapMm;
  const exact = USUAL_STEPS_MM.find(
    (stepMm) =>
      capacityMm / stepMm <= MOST_STEPS &&
      taken.every(
        ({ lengthMm }) => Math.abs(lengthMm / stepMm - Math.round(lengthMm / stepMm)) < WHOLE_WITHIN,
      ),
  );
  return exact ?? capacityMm / MOST_STEPS;
}

/**
 * Prices all sets of a room at once, by a table over the choices in the order in which they stand and the length of rail used
 * before each. Lengths are rounded down to steps, so that no set is priced too high. `onRail` packs them along the rail; else
 * each stands at the end that it is pulled to and only the length counts.
 */
export function setPrices(measure: RoomMeasure, stepMm: number, prices: Prices, onRail: boolean): SetPrices {
  const { perMm } = prices;
  const capacity = Math.floor((measure.toMm - measure.fromMm + measure.gapMm) / stepMm + WHOLE_WITHIN);
  const entries = (ahead: boolean) =>
    perMm
      .map((_, i) => i)
      .filter((i) => perMm[i]! >= 0 === ahead)
      .sort((i, j) => bySmith(measure.taken, perMm, i, j))
      .map((i) => entryOf(measure, stepMm, prices, i, onRail));
  const [front, rear] = [entries(true), entries(false)];
  const rearTable = tableOf(rear, capacity, () => 0);
  const rearLeast = leastWithin(rear, capacity);
  const frontTable = tableOf(front, capacity, (used) => rearLeast[capacity - used]!);
  const leastCost = frontTable[0]![0]!;
  return {
    leastCost,
    cheapest: walk(front, frontTable, capacity, rear),
    within(mostCost, mostSets) {
      const found: number[][] = [];
      const parts = new Set<number>();
      const partOf = (entry: Entry) => measure.taken[entry.index]!.part;
      const grow = (
        list: readonly Entry[],
        i: number,
        used: number,
        cost: number,
        set: readonly number[],
        room: number,
        done: (used: number, cost: number, set: readonly number[]) => boolean,
        table: readonly Float64Array[],
      ): boolean => {
        if (cost + table[i]![used]! > mostCost) return true;
        if (i === list.length) return done(used, cost, set);
        if (!grow(list, i + 1, used, cost, set, room, done, table)) return false;
        const entry = list[i]!;
        const part = partOf(entry);
        if (used + entry.steps > room || parts.has(part)) return true;
        parts.add(part);
        const dearer = cost + entry.base + entry.slope * used;
        const goesOn = grow(
          list,
          i + 1,
          used + entry.steps,
          dearer,
          [...set, entry.index],
          room,
          done,
          table,
        );
        parts.delete(part);
        return goesOn;
      };
      const keep = (_used: number, _cost: number, set: readonly number[]) => {
        if (set.length > 0) found.push([...set].sort((a, b) => a - b));
        return found.length <= mostSets;
      };
      const andRear = (used: number, cost: number, set: readonly number[]) =>
        grow(rear, 0, 0, cost, set, capacity - used, keep, rearTable);
      return grow(front, 0, 0, 0, [], capacity, andRear, frontTable) ? found : null;
    },
  };
}

function entryOf(
  { fromMm, toMm, gapMm, taken }: RoomMeasure,
  stepMm: number,
  { perMm, fixed }: Prices,
  index: number,
  onRail: boolean,
): Entry {
  const cost = perMm[index]!;
  const { lengthMm, lowMm, highMm } = taken[index]!;
  const steps = Math.floor(lengthMm / stepMm + WHOLE_WITHIN);
  if (!onRail) return { index, steps, base: fixed[index]! + cost * (cost >= 0 ? lowMm : highMm), slope: 0 };
  const intoMm = lengthMm / 2 - gapMm / 2;
  return {
    index,
    steps,
    base: fixed[index]! + cost * (cost >= 0 ? fromMm + intoMm : toMm - intoMm),
    slope: Math.abs(cost) * stepMm,
  };
}

/** `table[i][used]`: the least that entries from the i-th on add when so much is used before them. */
function tableOf(
  entries: readonly Entry[],
  capacity: number,
  after: (used: number) => number,
): Float64Array[] {
  const table: Float64Array[] = [];
  table[entries.length] = Float64Array.from({ length: capacity + 1 }, (_, used) => after(used));
  for (let i = entries.length - 1; i >= 0; i--) {
    const { steps, base, slope } = entries[i]!;
    const next = table[i + 1]!;
    const costs = Float64Array.from(next);
    for (let used = 0; used + steps <= capacity; used++) {
      const cost = base + slope * used + next[used + steps]!;
      if (cost < costs[used]!) costs[used] = cost;
    }
    table[i] = costs;
  }
  return table;
}

/** The least that entries add which together take no more than so many steps. */
function leastWithin(entries: readonly Entry[], capacity: number): Float64Array {
  const least = new Float64Array(capacity + 1).fill(Number.POSITIVE_INFINITY);
  least[0] = 0;
  for (const { steps, base, slope } of entries) {
    for (let used = capacity; used >= steps; used--) {
      const cost = least[used - steps]! + base + slope * (used - steps);
      if (cost < least[used]!) least[used] = cost;
    }
  }
  for (let used = 1; used <= capacity; used++) least[used] = Math.min(least[used]!, least[used - 1]!);
  return least;
}

/** The cheapest set: from the front by its table, then from the rear by one for the length that is left. */
function walk(
  front: readonly Entry[],
  table: readonly Float64Array[],
  capacity: number,
  rear: readonly Entry[],
): number[] {
  const set: number[] = [];
  const follow = (entries: readonly Entry[], costs: readonly Float64Array[]) => {
    let used = 0;
    entries.forEach(({ index, steps }, i) => {
      if (costs[i + 1]![used]! <= costs[i]![used]!) return;
      set.push(index);
      used += steps;
    });
    return used;
  };
  const left = capacity - follow(front, table);
  if (rear.length > 0)
    follow(
      rear,
      tableOf(rear, left, () => 0),
    );
  return set;
}
