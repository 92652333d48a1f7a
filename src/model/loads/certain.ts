/** How closely the ends of the travel over all load states must be certain, mm: the step in which the verdict shows them. */
export const CERTAIN_MM = 0.1;
