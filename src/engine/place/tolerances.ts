/**
 * What is left over by rounding and by a solver that keeps a constraint to 1e-8 of its size (`workers/highsMilp.ts`), in
 * sums of metres and kilograms. Where two limits touch without a solver between them, `balance/band.ts` has `TOUCH_MM`.
 */

/** Places and lengths that differ by less are one, mm. */
export const SAME_MM = 1e-6;

/** Two loads of ballast that differ by less weigh the same, g. */
export const SAME_G = 1e-6;

/** A count that comes from a solver is whole when it is this near to a whole number. */
export const WHOLE_WITHIN = 1e-6;

/** Shares of one room that add up to no more than this over 1 still fill it. */
export const FULL_WITHIN = 1e-9;
