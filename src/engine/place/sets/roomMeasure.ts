import type { BalanceRow } from '../balanceRows';
import { type Axis, centreRange } from '../regions';
import { optionOf, type Room } from '../rooms';
import type { PlaceProblem } from '../types';
import { leastGapMm, volumeShares } from '../volumeShares';

/** What a choice takes of its room, seen as one rail: a length of its full breadth. Stations in mm. */
export interface Taken {
  readonly part: number;
  /** Of the whole breadth, gap included, mm. */
  readonly lengthMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/**
 * A room as one rail. What stands side by side there takes less than the whole breadth, and is let stand one behind another in
 * shorter lengths: no set that fits the room needs more of the rail, and none lies farther to either end than it can here.
 */
export interface RoomMeasure {
  readonly fromMm: number;
  readonly toMm: number;
  readonly gapMm: number;
  readonly taken: readonly Taken[];
  /** Things stand side by side, or have stretches of their own: then their own ends bound them too. */
  readonly isLoose: boolean;
}

const ACROSS: readonly Axis[] = [1, 2];
/** Stands for the length of what takes none, mm. */
const LEAST_MM = 1e-9;

export function roomMeasure(problem: PlaceProblem, room: Room): RoomMeasure {
  const options = room.map((choice) => optionOf(problem, choice));
  const gapMm = leastGapMm(problem, room);
  const shares = volumeShares(problem, room, ACROSS);
  const fromMm = Math.min(...options.map(({ region }) => region.minMm[0]));
  const toMm = Math.max(...options.map(({ region }) => region.maxMm[0]));
  return {
    fromMm,
    toMm,
    gapMm,
    taken: options.map((option, i) => ({
      part: room[i]!.part,
      lengthMm: Math.max(LEAST_MM, (option.sizeMm[0] + gapMm) * shares[i]!),
      ...centreRange(option, 0),
    })),
    isLoose: options.some(
      ({ region }, i) => shares[i]! < 1 || region.minMm[0] !== fromMm || region.maxMm[0] !== toMm,
    ),
  };
}

/** Some choices of a room, by their places in it, packed to the ends that their costs pull them to. */
export interface Standing {
  readonly index: number;
  readonly stationMm: number;
}

/**
 * Where choices stand on the rail when a millimetre aft costs so much for each: the costliest for its length foremost (W. E.
 * Smith, Naval Research Logistics Quarterly 3, 1956), what gains by it aft from the other end. Σ cost·station is no more than
 * the least for any packing (mean busy times: M. X. Goemans and others, SIAM Journal on Discrete Mathematics 15, 2002).
 */
export function standing(
  { fromMm, toMm, gapMm, taken }: RoomMeasure,
  set: readonly number[],
  perMm: readonly number[],
): Standing[] {
  const ofEnd = (ahead: boolean): Standing[] => {
    const atEnd = set.filter((i) => perMm[i]! >= 0 === ahead);
    let used = 0;
    return atEnd
      .sort((i, j) => bySmith(taken, perMm, i, j))
      .map((index) => {
        const { lengthMm } = taken[index]!;
        const intoMm = used + lengthMm / 2 - gapMm / 2;
        used += lengthMm;
        return { index, stationMm: ahead ? fromMm + intoMm : toMm - intoMm };
      });
  };
  return [...ofEnd(true), ...ofEnd(false)];
}

export const bySmith = (taken: readonly Taken[], perMm: readonly number[], i: number, j: number): number =>
  Math.abs(perMm[j]!) * taken[i]!.lengthMm - Math.abs(perMm[i]!) * taken[j]!.lengthMm || i - j;

/** The most that a set can give to a row, by the rail and by each one's own ends, g·mm: never less than the truth. */
export function mostLoosely(
  problem: PlaceProblem,
  room: Room,
  measure: RoomMeasure,
  row: BalanceRow,
  set: readonly number[],
): number {
  const perMm = room.map(({ part }) => -(row.perPart[part] ?? 0));
  const fixed = set.reduce((sum, i) => sum + row.perOption[room[i]!.part]![room[i]!.option]!, 0);
  const atEnds = set.reduce((sum, i) => {
    const { lowMm, highMm } = centreRange(optionOf(problem, room[i]!), row.axis);
    return sum - perMm[i]! * (perMm[i]! > 0 ? lowMm : highMm);
  }, 0);
  if (row.axis === 1) return fixed + atEnds;
  const onRail = standing(measure, set, perMm).reduce(
    (sum, { index, stationMm }) => sum - perMm[index]! * stationMm,
    0,
  );
  return fixed + Math.min(onRail, atEnds);
}
