import type { ChainEnd } from './chains';

/** How strips end at a free end. `inset` and `flush` are evenly spaced; `cosine` closes up towards it. */
export type TipSpacing = 'inset' | 'flush' | 'cosine';

/** Strips along a chain, as fractions 0 … 1 of its length, from start to end: n + 1 edges and n control lines. */
export interface Strips {
  readonly edges: readonly number[];
  readonly middles: readonly number[];
}

/**
 * `count` strips from one end of a chain to the other, as if kinks, panels and seams were not there: widths
 * change smoothly, and strips close up only where an end is free. Neighbours of unequal width would cost
 * per cents of the slope, since a control line in the middle is right only between equals.
 *
 * `cosine` spaces edges and control lines evenly in angle (DeYoung, NASA SP-405, 1976, from memory).
 * `inset` leaves a quarter of a strip open at a free end. Either makes the error fall with the square of
 * the strip width; with `flush` it falls in proportion (Hough, J. Aircraft 10 (5), 1973, from memory).
 */
export function cutStrips(count: number, spacing: TipSpacing, start: ChainEnd, end: ChainEnd): Strips {
  const inset = spacing === 'inset' ? 0.25 : 0;
  const before = start === 'free' ? inset : 0;
  const after = end === 'free' ? inset : 0;
  const at = (k: number) =>
    spacing === 'cosine'
      ? angled(k / count, start === 'free', end === 'free')
      : (k + before) / (count + before + after);
  return {
    edges: Array.from({ length: count + 1 }, (_, k) => at(k)),
    middles: Array.from({ length: count }, (_, k) => at(k + 0.5)),
  };
}

/** Even steps in angle seen from along the line, over the part of a half circle that has the free ends. */
function angled(share: number, startFree: boolean, endFree: boolean): number {
  if (startFree && endFree) return (1 - Math.cos(Math.PI * share)) / 2;
  if (endFree) return Math.sin((Math.PI / 2) * share);
  return startFree ? 1 - Math.cos((Math.PI / 2) * share) : share;
}
