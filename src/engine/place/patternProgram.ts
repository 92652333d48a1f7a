import type { BalanceRow } from './balanceRows';
import { addBalanceRow, addCommonColumns, type CommonColumns, type Goal } from './goal';
import { addColumn, addRow, emptyMilp, type Milp, type Terms } from './milp';
import type { Pattern, Patterns } from './patterns';
import { type Choice, optionOf } from './rooms';
import { STAY } from './stays';
import { FULL_WITHIN } from './tolerances';
import type { PlaceProblem } from './types';
import { volumeShares } from './volumeShares';

/** A program that chooses one pattern for each room. */
export interface PatternProgram {
  readonly program: Milp;
  readonly common: CommonColumns;
  /** The first of the rows with one for each part, for each room, for each balance row. */
  readonly firstRow: { readonly parts: number; readonly rooms: number; readonly balance: number };
  /** Patterns with their share in a solution, where they have any. */
  sharesIn(values: readonly number[]): (readonly [Pattern, number])[];
  /** The patterns chosen. */
  patternsIn(values: readonly number[]): Pattern[];
}

export interface PatternLimits {
  /** Sets of choices that have been tried and do not fit. */
  readonly forbidden?: readonly (readonly Choice[])[];
  /** No more parts than this leave their place; the problem must offer staying as an option. */
  readonly mostMoves?: number | undefined;
}

/**
 * Sets of parts over rooms: a set-partitioning program. Each pattern stands for the best its set can give to each row on
 * its own, so every arrangement satisfies it, and its optimum is a bound. Where rows weigh all parts alike and one limit
 * binds it is also reached.
 */
export function patternProgram(
  problem: PlaceProblem,
  goal: Goal,
  rows: readonly BalanceRow[],
  { rooms, patterns, loose }: Patterns,
  { forbidden = [], mostMoves }: PatternLimits = {},
): PatternProgram {
  const program = emptyMilp();
  const common = addCommonColumns(program, problem, goal);
  const parts = program.rows.length;
  const firstRow = {
    parts,
    rooms: parts + problem.parts.length,
    balance: parts + problem.parts.length + rooms.length,
  };
  const leaving = ({ choices }: Pattern) =>
    choices.filter((choice) => optionOf(problem, choice).id !== STAY).length;
  const chosen = patterns.map((pattern) =>
    addColumn(program, 0, 1, true, goal.seek === 'fewest moves' ? leaving(pattern) : 0),
  );
  problem.parts.forEach((_, part) => {
    const terms: Terms = patterns.flatMap(({ choices }, p) =>
      choices.flatMap((choice) => (choice.part === part ? [[chosen[p]!, 1] as const] : [])),
    );
    addRow(program, terms, 1, 1);
  });
  rooms.forEach((room, index) => {
    const ofRoom = patterns.flatMap((pattern, p) => (pattern.room === index ? [p] : []));
    if (!loose[index]) {
      addRow(
        program,
        ofRoom.map((p) => [chosen[p]!, 1] as const),
        Number.NEGATIVE_INFINITY,
        1,
      );
      return;
    }
    const shares = volumeShares(problem, room);
    addRow(
      program,
      ofRoom.map((p, k) => [chosen[p]!, shares[k]!] as const),
      Number.NEGATIVE_INFINITY,
      1 + FULL_WITHIN,
    );
  });
  rows.forEach((row, r) => {
    addBalanceRow(
      program,
      problem,
      goal,
      common,
      row,
      patterns.map(({ most }, p) => [chosen[p]!, most[r]!] as const),
    );
  });
  for (const sum of oppositeRows(rows)) addBalanceRow(program, problem, goal, common, sum, []);
  for (const set of forbidden) {
    const terms: Terms = patterns.flatMap(({ choices }, p) =>
      choices.some((choice) => set.some((other) => same(choice, other)))
        ? [[chosen[p]!, choices.filter((choice) => set.some((other) => same(choice, other))).length] as const]
        : [],
    );
    addRow(program, terms, Number.NEGATIVE_INFINITY, set.length - 1);
  }
  if (mostMoves !== undefined) {
    const moved: Terms = patterns.map((pattern, p) => [chosen[p]!, leaving(pattern)]);
    addRow(program, moved, Number.NEGATIVE_INFINITY, mostMoves);
  }
  return {
    program,
    common,
    firstRow,
    sharesIn: (values) =>
      patterns.flatMap((pattern, p) => (values[chosen[p]!]! > 0 ? [[pattern, values[chosen[p]!]!]] : [])),
    patternsIn: (values) => patterns.filter((_, p) => values[chosen[p]!]! > 0.5),
  };
}

/** The choice made for each part. */
export const choicesOf = (chosen: readonly Pattern[]): Choice[] =>
  chosen.flatMap(({ choices }) => choices).sort((a, b) => a.part - b.part);

const same = (a: Choice, b: Choice) => a.part === b.part && a.option === b.option;

/**
 * Opposite limits added up: where they weigh the parts alike the places cancel, and what is left is whether the band is
 * wide enough for the travel at all, which more mass alone can mend.
 */
function oppositeRows(rows: readonly BalanceRow[]) {
  return rows.flatMap((a, i) =>
    rows.slice(i + 1).flatMap((b) => {
      if (a.axis !== b.axis || a.limit === b.limit) return [];
      const cancel = (p: number, q: number | undefined) => Math.abs(p + (q ?? 0)) <= 1e-9;
      const bent = a.perPart.some((weight, k) => !cancel(weight, b.perPart[k]));
      if (bent || a.perOption.some((list, k) => list.some((p, o) => !cancel(p, b.perOption[k]![o]))))
        return [];
      return [
        {
          axis: a.axis,
          limits: [...a.limits, ...b.limits],
          perSpot: a.perSpot.map((grams, k) => grams + b.perSpot[k]!),
          needed: a.needed + b.needed,
          // With the margin asked of both, it counts for both masses.
          massG: a.massG + b.massG,
        },
      ];
    }),
  );
}
