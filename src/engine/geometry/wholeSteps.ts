/** A count this near to a whole number is that number: the rest is rounding. */
const ROUNDING = 1e-9;

// Adding 0 turns −0, which a file or a sentence might show, into 0.

/** The least whole number of steps that reaches as far as `count`. */
export const stepsUp = (count: number): number => Math.ceil(count - ROUNDING) + 0;

/** The greatest whole number of steps that does not reach beyond `count`. */
export const stepsDown = (count: number): number => Math.floor(count + ROUNDING) + 0;
