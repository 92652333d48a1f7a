import type { BalanceRow } from '../balanceRows';
import { type Goal, rowScale } from '../goal';
import { addColumn, type Milp } from '../milp';
import { type PatternProgram, patternProgram } from '../patternProgram';
import type { Pattern } from '../patterns';
import { centreRange } from '../regions';
import { optionOf, type Room } from '../rooms';
import type { PlaceProblem } from '../types';
import type { Prices } from './cheapestSet';
import { type RoomMeasure, standing } from './roomMeasure';

/** The question that sets are sought for. */
export interface SetQuestion {
  readonly problem: PlaceProblem;
  readonly goal: Goal;
  readonly rows: readonly BalanceRow[];
  readonly rooms: readonly Room[];
}

/** What choices of a room cost, and where across each is cheapest, mm. */
export interface RoomPrices extends Prices {
  readonly acrossMm: readonly number[];
}

/** A set with each member in its place for these prices: what it gives to each row there. */
export function columnOf(
  { rows, rooms }: SetQuestion,
  measure: RoomMeasure,
  room: number,
  set: readonly number[],
  { perMm, acrossMm }: RoomPrices,
): Pattern {
  const choices = rooms[room]!;
  const places = standing(measure, set, perMm);
  const most = rows.map(({ axis, perPart, perOption }) =>
    places.reduce((sum, { index, stationMm }) => {
      const { part, option } = choices[index]!;
      const atMm = axis === 0 ? stationMm : acrossMm[index]!;
      return sum + (perPart[part] ?? 0) * atMm + perOption[part]![option]!;
    }, 0),
  );
  return { room, choices: set.map((i) => choices[i]!), most };
}

/** So many of what the goal counts for each part without a set and each mm that a row is short: more than either is worth. */
const SHORT = 1e4;

/** The program over some columns without whole numbers; what they cannot do together has its price. */
export function relaxedProgram(
  { problem, goal, rows, rooms }: SetQuestion,
  columns: readonly Pattern[],
): PatternProgram {
  const made = patternProgram(problem, goal, rows, {
    rooms,
    patterns: columns,
    loose: rooms.map(() => false),
  });
  const { program, firstRow } = made;
  program.integer.fill(false);
  const short = (row: number) => {
    const column = addColumn(program, 0, Number.POSITIVE_INFINITY, false, SHORT);
    const { columns: list, values, ...ends } = program.rows[row]!;
    program.rows[row] = { ...ends, columns: [...list, column], values: [...values, 1] };
  };
  for (const part of problem.parts.keys()) short(firstRow.parts + part);
  for (const r of rows.keys()) short(firstRow.balance + r);
  return made;
}

/** Duals of the right sign alone: what a solver's tolerance has turned is none. */
export const withSign = ({ rows }: Milp, duals: readonly number[]): number[] =>
  rows.map(({ lower, upper }, i) => (Number.isFinite(duals[i]! > 0 ? lower : upper) ? duals[i]! : 0));

/** What the choices of a room cost at these duals. */
export function roomPrices(
  { problem, rows, rooms }: SetQuestion,
  { firstRow }: PatternProgram,
  duals: readonly number[],
  room: number,
): RoomPrices {
  const worth = rows.map((row, r) => duals[firstRow.balance + r]! * rowScale(row));
  const costOf = (give: (row: BalanceRow) => number) =>
    rows.reduce((sum, row, r) => sum - worth[r]! * give(row), 0);
  const all = rooms[room]!.map((choice) => {
    const { part, option } = choice;
    const along = (axis: 0 | 1) => costOf((row) => (row.axis === axis ? (row.perPart[part] ?? 0) : 0));
    const { lowMm, highMm } = centreRange(optionOf(problem, choice), 1);
    const acrossMm = along(1) >= 0 ? lowMm : highMm;
    const there = costOf((row) => row.perOption[part]![option]!) - duals[firstRow.parts + part]!;
    return { perMm: along(0), fixed: there + along(1) * acrossMm, acrossMm };
  });
  return {
    perMm: all.map(({ perMm }) => perMm),
    fixed: all.map(({ fixed }) => fixed),
    acrossMm: all.map((each) => each.acrossMm),
  };
}

/**
 * What all but the rooms come to at these duals: with the cost of the cheapest set of each room added, a bound on the goal
 * (Lagrange), whatever the duals are.
 */
export function restAt({ program, common, firstRow }: PatternProgram, duals: readonly number[]): number {
  const isRoom = (row: number) => row >= firstRow.rooms && row < firstRow.balance;
  const rest = program.rows.reduce((sum, { lower, upper }, i) => {
    const dual = isRoom(i) ? 0 : duals[i]!;
    return dual === 0 ? sum : sum + dual * (dual > 0 ? lower : upper);
  }, 0);
  const chosen = [...common.steps, ...(common.margin === null ? [] : [common.margin])];
  const reduced = new Map(chosen.map((column) => [column, program.cost[column]!]));
  program.rows.forEach(({ columns, values }, i) => {
    columns.forEach((column, k) => {
      const before = reduced.get(column);
      if (before !== undefined) reduced.set(column, before - duals[i]! * values[k]!);
    });
  });
  return chosen.reduce((sum, column) => {
    const each = reduced.get(column)!;
    return sum + Math.min(each * program.lower[column]!, each * program.upper[column]!);
  }, rest);
}
