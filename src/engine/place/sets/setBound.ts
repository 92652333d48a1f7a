import type { SolveMilp } from '../milp';
import type { Pattern } from '../patterns';
import type { Choice } from '../rooms';
import { railStepMm, type SetPrices, setPrices } from './cheapestSet';
import { roomMeasure } from './roomMeasure';
import {
  columnOf,
  type RoomPrices,
  relaxedProgram,
  restAt,
  roomPrices,
  type SetQuestion,
  withSign,
} from './setProgram';

/** A bound with the prices of all sets that go with it. */
export interface SetBound {
  /** Nothing is less than this, in what the goal counts. */
  readonly bound: number;
  /** Room by room. */
  readonly priced: readonly PricedRoom[];
  /** For each part the choice that counts most where the bound was found: a start for whole choices. */
  readonly likely: readonly Choice[];
}

/** A room's prices along its rail and, where things need not stand in line, by each one's own ends: both are bounds. */
export interface PricedRoom {
  readonly leastCost: number;
  readonly ways: readonly SetPrices[];
}

interface BoundOrder {
  readonly solve: SolveMilp;
  readonly over: () => boolean;
  /** Told of each better bound. */
  readonly onBound: (bound: number) => void;
}

const MOST_ROUNDS = 600;
/** A program of that size takes no longer, ms. */
const PROGRAM_MS = 2000;
/** The bound is settled when the program is this near to it, in what the goal counts. */
const SETTLED_WITHIN = 1e-4;

/**
 * The least that the goal can come to, by sets of choices for each room: their program without whole numbers, to which only
 * those sets are added that could better it (column generation: P. C. Gilmore, R. E. Gomory, Operations Research 9, 1961). The
 * bound is worked out from the duals by itself, so it holds whatever the solver's tolerance. It forgets the lengths of leads,
 * walls, and rules that ask for more than the least gap. Null when not one round could be ended.
 */
export function setBound(question: SetQuestion, { solve, over, onBound }: BoundOrder): SetBound | null {
  const { problem, rooms } = question;
  const measures = rooms.map((room) => roomMeasure(problem, room));
  const stepsMm = measures.map(railStepMm);
  const columns = new Map<string, Pattern>();
  const add = (room: number, set: readonly number[], prices: RoomPrices) => {
    const column = columnOf(question, measures[room]!, room, set, prices);
    columns.set(
      `${room}:${set.join(' ')}:${column.most.map((most) => most.toPrecision(12)).join(' ')}`,
      column,
    );
  };
  rooms.forEach((room, r) => {
    const free = room.map(() => 0);
    for (const i of room.keys()) add(r, [i], { perMm: free, fixed: free, acrossMm: free });
  });
  let [bound, priced]: [number, readonly PricedRoom[] | null] = [Number.NEGATIVE_INFINITY, null];
  let likely: readonly Choice[] = [];
  for (let round = 0; round < MOST_ROUNDS && !over(); round++) {
    const made = relaxedProgram(question, [...columns.values()]);
    const answer = solve(made.program, { timeMs: PROGRAM_MS });
    if (answer.status === 'infeasible') {
      onBound(Number.POSITIVE_INFINITY);
      return null;
    }
    if (!answer.rowDuals) break;
    const duals = withSign(made.program, answer.rowDuals);
    likely = likeliest(problem.parts.length, made.sharesIn(answer.values!));
    const before = columns.size;
    const here = measures.map((measure, r): PricedRoom => {
      const prices = roomPrices(question, made, duals, r);
      const ways = (measure.isLoose ? [true, false] : [true]).map((onRail) =>
        setPrices(measure, stepsMm[r]!, prices, onRail),
      );
      for (const { cheapest } of ways) if (cheapest.length > 0) add(r, cheapest, prices);
      return { ways, leastCost: Math.max(...ways.map(({ leastCost }) => leastCost)) };
    });
    const reached = here.reduce((sum, { leastCost }) => sum + leastCost, restAt(made, duals));
    if (reached > bound) {
      [bound, priced] = [reached, here];
      onBound(bound);
    }
    if (answer.bound - bound < SETTLED_WITHIN || columns.size === before) break;
  }
  return priced && { bound, priced, likely };
}

/** For each part the choice whose sets have the largest share. */
function likeliest(parts: number, shares: readonly (readonly [Pattern, number])[]): Choice[] {
  const sums = new Map<string, { readonly choice: Choice; share: number }>();
  for (const [{ choices }, share] of shares) {
    for (const choice of choices) {
      const key = `${choice.part} ${choice.option}`;
      const before = sums.get(key) ?? { choice, share: 0 };
      before.share += share;
      sums.set(key, before);
    }
  }
  return Array.from({ length: parts }, (_, part) =>
    [...sums.values()].reduce<{ choice: Choice; share: number } | null>(
      (best, each) => (each.choice.part === part && each.share > (best?.share ?? -1) ? each : best),
      null,
    ),
  ).flatMap((found) => (found ? [found.choice] : []));
}

/** More sets than this in one room are more than the solver can choose from. */
const MOST_SETS = 4000;

/**
 * Room by room, by their places in its list, all sets that anything can be made of that comes within so much of the bound.
 * Null where there are too many.
 */
export function setsWithin(priced: readonly PricedRoom[], slack: number): number[][][] | null {
  const sets: number[][][] = [];
  for (const { leastCost, ways } of priced) {
    const closest = ways.reduce((a, b) => (b.leastCost > a.leastCost ? b : a));
    const near = closest.within(leastCost + slack, MOST_SETS);
    if (!near) return null;
    sets.push(near);
  }
  return sets;
}
