/** A mixed-integer linear program, to be made least. Rows are sparse. */
export interface Milp {
  readonly cost: number[];
  readonly lower: number[];
  readonly upper: number[];
  readonly integer: boolean[];
  readonly rows: {
    readonly lower: number;
    readonly upper: number;
    readonly columns: readonly number[];
    readonly values: readonly number[];
  }[];
}

export interface MilpOrder {
  readonly timeMs: number;
  /** A solution this close to the bound counts as the best. */
  readonly gap?: number;
  /** A solution this good ends the search: nothing is known to be better. */
  readonly enough?: number;
  readonly shouldStop?: () => boolean;
  /** Solves the program as it is written, without simplifying it first: slower, and a second opinion on a proof. */
  readonly plainly?: boolean;
}

export interface MilpAnswer {
  /** `stopped` before a proof, with what was found until then. */
  readonly status: 'optimal' | 'infeasible' | 'stopped';
  readonly values: readonly number[] | null;
  /** Nothing is less than this. */
  readonly bound: number;
  /** What the optimum rises by for each unit that a row asks more; only of a program without whole numbers, solved. */
  readonly rowDuals?: readonly number[];
}

/** What solves a program: handed in, so that the engine depends on no solver. */
export type SolveMilp = (program: Milp, order: MilpOrder) => MilpAnswer;

/** A sum of columns, as pairs of column and factor; repeated columns add up. */
export type Terms = readonly (readonly [column: number, factor: number])[];

export const emptyMilp = (): Milp => ({ cost: [], lower: [], upper: [], integer: [], rows: [] });

/** Adds a column and returns its number. */
export function addColumn(program: Milp, lower: number, upper: number, integer = false, cost = 0): number {
  program.cost.push(cost);
  program.lower.push(lower);
  program.upper.push(upper);
  program.integer.push(integer);
  return program.cost.length - 1;
}

/** Adds lower ≤ Σ factor·column ≤ upper. */
export function addRow(program: Milp, terms: Terms, lower: number, upper = Number.POSITIVE_INFINITY): void {
  const sum = new Map<number, number>();
  for (const [column, factor] of terms) sum.set(column, (sum.get(column) ?? 0) + factor);
  const kept = [...sum].filter(([, factor]) => factor !== 0);
  program.rows.push({
    lower,
    upper,
    columns: kept.map(([column]) => column),
    values: kept.map(([, factor]) => factor),
  });
}
