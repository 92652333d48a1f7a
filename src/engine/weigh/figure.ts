/** A figure with its standard uncertainty (one sigma), in one unit. */
export interface Figure {
  readonly value: number;
  readonly sigma: number;
}

/** Why a weighing gives no answer, in a sentence: where, what was expected, what came. */
export interface Refusal {
  readonly ok: false;
  readonly sentence: string;
}

export const refusal = (sentence: string): Refusal => ({ ok: false, sentence });

export const exactly = (value: number): Figure => ({ value, sigma: 0 });

/**
 * The standard uncertainty of a reading that a display rounds to `step`: the truth lies anywhere within half a step, so
 * step/√12 (GUM, JCGM 100:2008, 4.3.7). Same unit as the step.
 */
export const resolutionSigma = (step: number): number => step / Math.sqrt(12);

/** Where the differences are taken, in sigmas: small enough to be a slope, large enough not to be rounding. */
const STEP = 1e-2;

export interface Carried {
  readonly values: readonly number[];
  /** Plain covariances, row by row, in products of the results' units. */
  readonly covariance: readonly (readonly number[])[];
}

/**
 * Carries independent standard uncertainties through a function: U_y = J·U_x·Jᵀ (JCGM 102:2011, 6.2.1), with the slopes
 * taken by central differences. First order; a figure without uncertainty costs nothing.
 */
export function carryOver(
  inputs: readonly Figure[],
  of: (values: readonly number[]) => readonly number[],
): Carried {
  const at = inputs.map(({ value }) => value);
  const values = of(at);
  const covariance = values.map(() => values.map(() => 0));
  inputs.forEach(({ value, sigma }, index) => {
    if (sigma === 0) return;
    const above = of(at.with(index, value + STEP * sigma));
    const below = of(at.with(index, value - STEP * sigma));
    const shifts = values.map((_, row) => (above[row]! - below[row]!) / (2 * STEP));
    shifts.forEach((a, row) => {
      shifts.forEach((b, column) => {
        covariance[row]![column]! += a * b;
      });
    });
  });
  return { values, covariance };
}

/** One of the results that `carryOver` gave. */
export const carriedFigure = ({ values, covariance }: Carried, index: number): Figure => ({
  value: values[index] ?? Number.NaN,
  sigma: Math.sqrt(Math.max(0, covariance[index]?.[index] ?? Number.NaN)),
});
