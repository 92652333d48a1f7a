import type { BalanceRow } from './balanceRows';
import { mostSteps } from './ballastRoom';
import type { Limit } from './limit';
import { addColumn, addRow, type Milp, type Terms } from './milp';
import type { PlaceProblem } from './types';

/** What is sought. With the grams given the mass is known, and the margin is linear too. */
export type Goal =
  | { readonly seek: 'least ballast'; readonly atLeastG?: number; readonly atMostG?: number }
  | { readonly seek: 'most margin'; readonly ballastG: number }
  | { readonly seek: 'fewest moves'; readonly ballastG: number; readonly marginMm: number }
  /** The least that some limits must give way, mm, with any ballast. */
  | { readonly seek: 'least breach'; readonly limits: readonly Limit[] };

/** The columns that every program for a placement has. */
export interface CommonColumns {
  /** Steps at each spot. */
  readonly steps: readonly number[];
  /** The margin, mm; null where it is given. */
  readonly margin: number | null;
  /** By how much limits give way, mm; null where they do not. */
  readonly breach: number | null;
}

/** No limit gives way by more than this, mm. */
const MOST_BREACH_MM = 5000;
/** Of equal breaches the one with less ballast: a gram counts as little as this, mm. */
const BREACH_PER_G = 1e-6;

/** The columns for ballast and margin, with the goal's cost and its conditions on the grams. */
export function addCommonColumns(program: Milp, problem: PlaceProblem, goal: Goal): CommonColumns {
  const { spots, band } = problem;
  const perGram = goal.seek === 'least ballast' ? 1 : goal.seek === 'least breach' ? BREACH_PER_G : 0;
  const steps = problem.spots.map((spot) => {
    const { stepG } = spot;
    const most = mostSteps(problem, spot);
    return addColumn(program, 0, most, true, stepG * perGram);
  });
  const grams = spots.map(({ stepG }, k) => [steps[k]!, stepG] as const);
  if (goal.seek === 'least ballast') {
    const { atLeastG = 0, atMostG = Number.POSITIVE_INFINITY } = goal;
    if (atLeastG > 0 || atMostG < Number.POSITIVE_INFINITY) addRow(program, grams, atLeastG, atMostG);
    return { steps, margin: null, breach: null };
  }
  if (goal.seek === 'least breach') {
    const breach = goal.limits.length > 0 ? addColumn(program, 0, MOST_BREACH_MM, false, 1) : null;
    return { steps, margin: null, breach };
  }
  addRow(program, grams, goal.ballastG, goal.ballastG);
  const half = (band.aftMm - band.forwardMm) / 2;
  return {
    steps,
    margin: goal.seek === 'most margin' ? addColumn(program, 0, half, false, -1) : null,
    breach: null,
  };
}

/** Rows ask for so much less, mm, so that no exact tie costs a search or a proof; the check forgives five times as much. */
const EASED_MM = 2e-5;

/** By this a row's g·mm are turned into mm. */
export const rowScale = ({ massG }: Pick<BalanceRow, 'massG'>): number => 1 / Math.max(massG, 1);

/** A balance row over the parts' terms (g·mm in the row's own sign), in mm so that tolerances mean the same everywhere. */
export function addBalanceRow(
  program: Milp,
  problem: PlaceProblem,
  goal: Goal,
  { steps, margin, breach }: CommonColumns,
  row: Pick<BalanceRow, 'perSpot' | 'needed' | 'massG' | 'axis'> & { readonly limits: readonly Limit[] },
  parts: Terms,
): void {
  const scale = rowScale(row);
  const terms: (readonly [number, number])[] = parts.map(([column, factor]) => [column, factor * scale]);
  problem.spots.forEach(({ stepG }, k) => {
    terms.push([steps[k]!, row.perSpot[k]! * stepG * scale]);
  });
  let { needed } = row;
  if (goal.seek === 'least breach') {
    const giving = row.limits.filter((limit) => goal.limits.includes(limit)).length;
    if (breach !== null && giving > 0) terms.push([breach, giving * row.massG * scale]);
  } else if (row.axis === 0 && goal.seek !== 'least ballast') {
    const massG = row.massG + goal.ballastG;
    if (margin !== null) terms.push([margin, -massG * scale]);
    else if (goal.seek === 'fewest moves') needed += goal.marginMm * massG;
  }
  addRow(program, terms, needed * scale - EASED_MM);
}

/** The grams at each spot in a solution. */
export const gramsIn = (
  { spots }: PlaceProblem,
  { steps }: CommonColumns,
  values: readonly number[],
): number[] => spots.map(({ stepG }, k) => Math.round(values[steps[k]!]!) * stepG);

/** The greatest step that divides all steps, g: total ballast comes in multiples of it. */
export function commonStepG({ spots }: PlaceProblem): number {
  const divisor = (a: number, b: number): number =>
    b < 1e-6 ? a : divisor(b, a - b * Math.floor(a / b + 1e-6));
  return spots.reduce((step, { stepG }) => divisor(Math.max(step, stepG), Math.min(step, stepG)), 0);
}
