import type { Seam } from './seams';

/** One way to close seams, and its share of the whole. */
export interface SeamState {
  readonly closed: readonly Seam[];
  readonly share: number;
}

/**
 * The states whose weighted mean stands for seams that are half open. Seams close in the order of their
 * weights; each step from one set to the next counts with the difference of weights. The mean is
 * continuous in all weights and needs one state more than there are half-open seams. Source: the piecewise
 * linear extension of a set function, Lovász, Submodular functions and convexity, 1983 (from memory).
 */
export function seamStates(seams: readonly Seam[]): SeamState[] {
  const sorted = seams.toSorted((a, b) => b.weight - a.weight);
  const weightAt = (k: number) => (k === 0 ? 1 : (sorted[k - 1]?.weight ?? 0));
  const states: SeamState[] = [];
  for (let k = 0; k <= sorted.length; k++) {
    const share = weightAt(k) - weightAt(k + 1);
    if (share <= 0) continue;
    // The file's order of seams, so that a state does not depend on how they came to be closed.
    const closed = new Set(sorted.slice(0, k));
    states.push({ closed: seams.filter((seam) => closed.has(seam)), share });
  }
  return states;
}
