/** How strips end at a free tip. `inset` and `flush` are evenly spaced; `cosine` closes up towards the tip. */
export type TipSpacing = 'inset' | 'flush' | 'cosine';

/** Strips across a panel, as fractions 0 … 1 of its span, root to tip: n + 1 edges and n control lines. */
export interface Strips {
  readonly edges: readonly number[];
  readonly middles: readonly number[];
}

/**
 * `count` strips. `inset` leaves a quarter of a strip free at the tip, which makes the error fall with
 * the square of the strip width instead of in proportion (Hough, J. Aircraft 10 (5), 1973, from memory).
 * `cosine` spaces edges and control lines evenly in angle, which does the same without a gap
 * (DeYoung, NASA SP-405, 1976, from memory).
 */
export function cutStrips(count: number, tip: TipSpacing): Strips {
  const reach = tip === 'inset' ? count + 0.25 : count;
  const at = (k: number) => (tip === 'cosine' ? Math.sin((Math.PI / 2) * (k / count)) : k / reach);
  return {
    edges: Array.from({ length: count + 1 }, (_, k) => at(k)),
    middles: Array.from({ length: count }, (_, k) => at(k + 0.5)),
  };
}

/**
 * Shares `total` strips among panels in proportion to their lengths, at least one each; what is over
 * goes to the panels with the widest strips.
 */
export function shareStrips(lengths: readonly number[], total: number): number[] {
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  const counts = lengths.map((length) => Math.max(1, Math.floor((total * length) / whole)));
  for (let left = total - counts.reduce((sum, count) => sum + count, 0); left > 0; left--) {
    const widths = lengths.map((length, k) => length / (counts[k] as number));
    const widest = widths.indexOf(Math.max(...widths));
    counts[widest] = (counts[widest] as number) + 1;
  }
  return counts;
}
