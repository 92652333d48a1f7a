import type { BalanceRow } from './balanceRows';
import { type Choice, mostAlone, mostPacked, type Room, type RoomPacker } from './rooms';
import { FULL_WITHIN } from './tolerances';
import type { PlaceProblem } from './types';
import { volumeShares } from './volumeShares';

/** Some choices that fit into one room together, and the most they can give to each row there, g·mm. */
export interface Pattern {
  readonly room: number;
  readonly choices: readonly Choice[];
  readonly most: readonly number[];
}

/** The patterns of all rooms. In a `loose` room there were too many: its patterns are single choices, side by side. */
export interface Patterns {
  readonly rooms: readonly Room[];
  readonly patterns: readonly Pattern[];
  readonly loose: readonly boolean[];
}

/** Single choices only: quick, and a bound since it forgets what overlaps. */
export function singlePatterns(
  problem: PlaceProblem,
  rooms: readonly Room[],
  rows: readonly BalanceRow[],
): Patterns {
  return {
    rooms,
    patterns: rooms.flatMap((room, i) => singles(problem, room, i, rows)),
    loose: rooms.map(() => true),
  };
}

const singles = (problem: PlaceProblem, room: Room, index: number, rows: readonly BalanceRow[]): Pattern[] =>
  room.map((choice) => ({
    room: index,
    choices: [choice],
    most: rows.map((row) => mostAlone(problem, row, choice)),
  }));

/** All sets of choices that fit into each room. What holds a set that does not fit does not fit either. */
export function packedPatterns(
  problem: PlaceProblem,
  rooms: readonly Room[],
  rows: readonly BalanceRow[],
  packer: RoomPacker,
  mostOfRoom: number,
  shouldStop: () => boolean,
): Patterns {
  const patterns: Pattern[] = [];
  const loose = rooms.map((room, index) => {
    const complete = ofRoom(problem, room, index, rows, packer, mostOfRoom, shouldStop);
    patterns.push(...(complete ?? singles(problem, room, index, rows)));
    return complete === null;
  });
  return { rooms, patterns, loose };
}

function ofRoom(
  problem: PlaceProblem,
  room: Room,
  index: number,
  rows: readonly BalanceRow[],
  packer: RoomPacker,
  mostOfRoom: number,
  shouldStop: () => boolean,
): Pattern[] | null {
  const found: Pattern[] = [];
  const shares = volumeShares(problem, room);
  // Parts that have no other room must all be in this one, so smaller sets need not be looked at.
  const bound = boundParts(problem, room);
  const grow = (from: number, choices: readonly Choice[], used: number): boolean => {
    if (shouldStop() || found.length > mostOfRoom) return false;
    const missing = bound.filter((part) => !choices.some((choice) => choice.part === part));
    if (missing.some((part) => !room.some((choice, i) => i >= from && choice.part === part))) return true;
    if (choices.length > 0 && missing.length === 0) {
      const most = mostOf(problem, packer, rows, choices);
      if (!most) return true;
      found.push({ room: index, choices, most });
    }
    for (let i = from; i < room.length; i++) {
      const next = room[i]!;
      if (choices.some(({ part }) => part === next.part)) continue;
      if (used + shares[i]! > 1 + FULL_WITHIN) continue;
      if (!grow(i + 1, [...choices, next], used + shares[i]!)) return false;
    }
    return true;
  };
  return grow(0, [], 0) ? found : null;
}

/** The most that choices of one room can give to each row, packed, g·mm; null when they do not fit. */
export function mostOf(
  problem: PlaceProblem,
  packer: RoomPacker,
  rows: readonly BalanceRow[],
  choices: readonly Choice[],
): number[] | null {
  const mostByRow = new Map<string, number | null>();
  const most: number[] = [];
  for (const row of rows) {
    const key = `${row.axis}:${choices.map(({ part, option }) => `${row.perPart[part]} ${row.perOption[part]![option]}`).join(',')}`;
    if (!mostByRow.has(key)) mostByRow.set(key, mostPacked(problem, packer, row, choices));
    const value = mostByRow.get(key) ?? null;
    if (value === null) return null;
    most.push(value);
  }
  return most;
}

const boundParts = (problem: PlaceProblem, room: Room): number[] =>
  [...new Set(room.map(({ part }) => part))].filter(
    (part) => room.filter((choice) => choice.part === part).length === problem.parts[part]!.options.length,
  );
