import type { StabilityEstimate } from '../stability/stability';
import type { Balance } from './balance';

/** The standard uncertainty that a band has from the estimate that it is made of, mm. */
export function bandSigmaOf({ bandFrom, estimate }: Balance): number {
  const doubtful: (StabilityEstimate & { readonly neutralPointSigmaMm?: number }) | null = estimate;
  return bandFrom === 'estimate' ? (doubtful?.neutralPointSigmaMm ?? 0) : 0;
}
