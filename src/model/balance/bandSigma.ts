import type { Balance } from './balance';

/** The standard uncertainty that a band has from the estimate that it is made of, mm. */
export const bandSigmaOf = ({ bandFrom, estimate }: Balance): number =>
  bandFrom === 'estimate' && estimate ? estimate.neutralPointSigmaMm : 0;
