import type { BalanceRow } from '../balanceRows';
import { mostOf } from '../patterns';
import type { Choice, RoomPacker } from '../rooms';
import { SAME_MM } from '../tolerances';
import { mostLoosely, type RoomMeasure, roomMeasure } from './roomMeasure';
import type { SetQuestion } from './setProgram';

/** What a set gives to each row, g·mm, and by how much it is too long for its rail, mm; null where it was packed in vain. */
interface SetWorth {
  readonly most: readonly number[] | null;
  readonly excessMm: number;
}

/** A choice by its room and its place in the room's list. */
interface Way {
  readonly room: number;
  readonly index: number;
}

/** A choice for each part, with the set of each room, sorted, and what it all needs. */
interface Assigned {
  readonly at: readonly Way[];
  readonly sets: readonly (readonly number[])[];
  readonly worths: readonly SetWorth[];
  readonly grams: number;
}

export interface Exchange {
  readonly packer: RoomPacker;
  readonly over: () => boolean;
  /** Numbers in 0…1. */
  readonly random: () => number;
  /** Takes choices that fit, by their packing; true when nothing better need be looked for. */
  readonly take: (choices: readonly Choice[]) => boolean;
}

/** A set that does not fit counts like so many grams, and a mm too long for a rail like so many. */
const NO_FIT_G = 1e6;
const TOO_LONG_G_PER_MM = 1e3;
/** Packed, a set gives less where it gives so much less, g·mm. */
const LESS_GMM = 1;
/** A step must gain so much, g. */
const GAIN_G = 1e-3;
/** Parts put elsewhere by chance to leave an optimum behind, and how often that is tried without gain. */
const KICKED = 3;
const MOST_KICKS = 60;

/**
 * Looks for choices that need little ballast: one part goes to another choice, or two change rooms, as long as that betters
 * them; then some go elsewhere by chance (iterated local search: H. R. Lourenço, O. C. Martin, T. Stützle, Handbook of
 * Metaheuristics, 2003). Ballast is estimated from what rows are short of and the longest arm of any spot. Nothing comes of it
 * where a part fits nowhere.
 */
export function exchange(
  question: SetQuestion,
  from: readonly Choice[],
  { packer, over, random, take }: Exchange,
): void {
  const ways = waysOf(question);
  if (ways.some(({ length }) => length === 0)) return;
  const weigher = weigherOf(question, packer);
  const steps = stepsOf(ways);
  let best = weigher.assigned(
    ways.map((open, part) => {
      const likely = from.find((choice) => choice.part === part);
      return open.find(({ room, index }) => question.rooms[room]![index] === likely) ?? open[0]!;
    }),
  );
  // Whatever fits is there at once, and bettered then.
  best = bettered(best, steps, weigher, over, random, true);
  if (best.grams < NO_FIT_G && take(choicesAt(question, best))) return;
  best = bettered(best, steps, weigher, over, random);
  for (let kicks = 0; ; kicks++) {
    if (kicks === 0 && best.grams < NO_FIT_G && take(choicesAt(question, best))) return;
    if (kicks > MOST_KICKS || over()) return;
    const kicked = [...best.at];
    for (let k = 0; k < KICKED; k++) {
      const part = Math.floor(random() * kicked.length);
      kicked[part] = ways[part]![Math.floor(random() * ways[part]!.length)]!;
    }
    const next = bettered(weigher.assigned(kicked), steps, weigher, over, random);
    if (next.grams < best.grams - GAIN_G) [best, kicks] = [next, -1];
  }
}

const waysOf = ({ problem, rooms }: SetQuestion): Way[][] =>
  problem.parts.map((_, part) =>
    rooms.flatMap((list, room) =>
      list.flatMap((choice, index) => (choice.part === part ? [{ room, index }] : [])),
    ),
  );

const choicesAt = ({ rooms }: SetQuestion, { at }: Assigned): Choice[] =>
  at.map(({ room, index }) => rooms[room]![index]!);

interface Weigher {
  assigned(at: readonly Way[]): Assigned;
  /** With some parts elsewhere: only the rooms that change are looked at. */
  changed(from: Assigned, changes: readonly Change[]): Assigned;
  /** Packs the sets of an assignment; true where one gives less than it seemed to. */
  pack(assigned: Assigned): boolean;
}

interface Change {
  readonly part: number;
  readonly to: Way;
}

function weigherOf(question: SetQuestion, packer: RoomPacker): Weigher {
  const { problem, rows, rooms } = question;
  const measures = rooms.map((room) => roomMeasure(problem, room));
  const weighedSets = rooms.map(() => new Map<string, SetWorth>());
  const packed = new Set<string>();
  const arms = rows.map(({ perSpot }) => Math.max(1, ...perSpot));
  const worthOf = (room: number, set: readonly number[]): SetWorth => {
    const key = set.join(' ');
    const before = weighedSets[room]!.get(key);
    if (before) return before;
    const measure = measures[room]!;
    const most = rows.map((row) => mostLoosely(problem, rooms[room]!, measure, row, set));
    const worth = { most, excessMm: excessOf(measure, set) };
    weighedSets[room]!.set(key, worth);
    return worth;
  };
  const weighed = (at: readonly Way[], sets: Assigned['sets'], worths: readonly SetWorth[]): Assigned => {
    const values = rows.map(({ needed }) => -needed);
    let penaltyG = 0;
    for (const { most, excessMm } of worths) {
      if (most === null) penaltyG += NO_FIT_G;
      else for (let r = 0; r < values.length; r++) values[r]! += most[r]!;
      if (excessMm > 0) penaltyG += NO_FIT_G + excessMm * TOO_LONG_G_PER_MM;
    }
    return { at, sets, worths, grams: penaltyG + shortG(rows, values, arms) };
  };
  return {
    assigned(at) {
      const sets = rooms.map((_, r) =>
        at.flatMap(({ room, index }) => (room === r ? [index] : [])).sort((a, b) => a - b),
      );
      return weighed(
        at,
        sets,
        sets.map((set, room) => worthOf(room, set)),
      );
    },
    changed(from, changes) {
      const at = [...from.at];
      const sets = [...from.sets];
      for (const { part, to } of changes) {
        const before = at[part]!;
        sets[before.room] = sets[before.room]!.filter((index) => index !== before.index);
        sets[to.room] = [...sets[to.room]!, to.index].sort((a, b) => a - b);
        at[part] = to;
      }
      const worths = sets.map((set, room) =>
        set === from.sets[room] ? from.worths[room]! : worthOf(room, set),
      );
      return weighed(at, sets, worths);
    },
    pack({ sets }) {
      let changed = false;
      sets.forEach((set, room) => {
        const key = `${room}:${set.join(' ')}`;
        const before = worthOf(room, set);
        if (set.length === 0 || packed.has(key) || before.excessMm > 0) return;
        packed.add(key);
        const choices = set.map((i) => rooms[room]![i]!);
        const most = mostOf(problem, packer, rows, choices);
        weighedSets[room]!.set(set.join(' '), { most, excessMm: 0 });
        changed ||= most === null || most.some((give, r) => give < before.most![r]! - LESS_GMM);
      });
      return changed;
    },
  };
}

const excessOf = ({ fromMm, toMm, gapMm, taken }: RoomMeasure, set: readonly number[]): number => {
  const mm = set.reduce((sum, i) => sum + taken[i]!.lengthMm, 0) - (toMm - fromMm + gapMm);
  return mm > SAME_MM ? mm : 0;
};

/** Grams at the longest arm that make up for what the worst row along each axis is short of. */
function shortG(rows: readonly BalanceRow[], values: readonly number[], arms: readonly number[]): number {
  const worst = [0, 0];
  rows.forEach(({ axis }, r) => {
    worst[axis] = Math.max(worst[axis]!, -values[r]! / arms[r]!);
  });
  return worst[0]! + worst[1]!;
}

/** The first step that gains, again and again, until none does; or until all fits, where no more is asked. */
function bettered(
  from: Assigned,
  steps: readonly ((assigned: Assigned) => readonly Change[] | null)[],
  weigher: Weigher,
  over: () => boolean,
  random: () => number,
  untilFits = false,
): Assigned {
  let best = from;
  for (;;) {
    let gained = false;
    const start = Math.floor(random() * steps.length);
    const isEnough = () => over() || (untilFits && best.grams < NO_FIT_G);
    for (let k = 0; k < steps.length && !isEnough(); k++) {
      const changes = steps[(start + k) % steps.length]!(best);
      const next = changes && weigher.changed(best, changes);
      if (!next || next.grams >= best.grams - GAIN_G) continue;
      [best, gained] = [next, true];
    }
    if (gained && !isEnough()) continue;
    if (over() || !weigher.pack(best)) return best;
    best = weigher.assigned(best.at);
  }
}

/** Every way to put one part elsewhere or to let two change rooms. */
function stepsOf(ways: readonly (readonly Way[])[]): ((assigned: Assigned) => readonly Change[] | null)[] {
  const moves = ways.flatMap((open, part) =>
    open.map(
      (to) =>
        ({ at }: Assigned) =>
          at[part] === to ? null : [{ part, to }],
    ),
  );
  const swaps = ways.flatMap((open, part) =>
    ways.slice(0, part).map((others, other) => ({ at }: Assigned) => {
      const [a, b] = [at[part]!, at[other]!];
      if (a.room === b.room) return null;
      const to = open.find(({ room }) => room === b.room);
      const back = others.find(({ room }) => room === a.room);
      return to && back
        ? [
            { part, to },
            { part: other, to: back },
          ]
        : null;
    }),
  );
  return [...moves, ...swaps];
}
