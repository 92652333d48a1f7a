import type { StabilityEstimate } from '../../model/stability/stability';
import { formatNumber, LEAST_SHOWN_MM } from '../../model/units';

/** "25.3 % MAC", with a true minus. */
export const ofMac = (pct: number): string => `${formatNumber(pct, 1)} % MAC`;

/** How fine the lattice was and what refining it last changed. */
export function panelWords({ unknowns, refinedBy, converged, detail }: StabilityEstimate): string {
  const panels = `${unknowns} panels`;
  if (detail === 'coarse') return `${panels}: the coarse lattice, while something is dragged.`;
  if (refinedBy === null) return `${panels}, not refined further.`;
  const moved = `the last refinement moved it ${formatNumber(Math.abs(refinedBy), 2)} % MAC`;
  return converged ? `${panels}; ${moved}.` : `${panels}; ${moved}, which is not settled: take it with care.`;
}

/** What the fuselage does to the neutral point; forward is negative. */
export function shiftWords(shiftMm: number, length: (mm: number) => string): string {
  if (Math.abs(shiftMm) < LEAST_SHOWN_MM) return 'It hardly moves the neutral point.';
  return `It moves the neutral point ${length(Math.abs(shiftMm))} ${shiftMm < 0 ? 'forward' : 'aft'}.`;
}
