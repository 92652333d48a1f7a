/** 1 up to `full`, 0 from `none` on, and a smooth cubic between; `full` and `none` in either order. */
export function fade(value: number, full: number, none: number): number {
  const share = Math.min(1, Math.max(0, (none - value) / (none - full)));
  return share * share * (3 - 2 * share);
}

/** Edges this near, as a share of the chord, are glued together: a slip of the tape measure. */
const TOUCHING = 0.02;
/** A gap this wide, as a share of the chord, is a gap. */
const APART = 0.15;
/** Shares of the longer chord that must lie beside each other for a seam at all, and for a whole one. */
const LEAST_OVERLAP = 0.2;
const ENOUGH_OVERLAP = 0.5;

/**
 * How far two edges count as joined, 0 … 1, by the gap between them across the flow (mm). In an ideal fluid
 * any gap is a gap; in air a narrow one is closed by friction. The limits are common practice, no source;
 * what matters is that nothing jumps between them.
 */
export function gapWeight(gapMm: number, chordMm: number): number {
  return chordMm > 0 ? fade(gapMm / chordMm, TOUCHING, APART) : 0;
}

/** How far two edges beside each other count as joined by the chord they share, 0 … 1. */
export function overlapWeight(sharedMm: number, longerMm: number): number {
  return longerMm > 0 ? fade(sharedMm / longerMm, ENOUGH_OVERLAP, LEAST_OVERLAP) : 0;
}

/** cos of the angles at which two surfaces that leave an edge are folded shut and are open enough. */
const SHUT = Math.cos((15 * Math.PI) / 180);
const OPEN = Math.cos((40 * Math.PI) / 180);

/** 1 where surfaces part at an edge, 0 where both leave it the same way: those lie on each other, a tail on a wing. */
export function foldWeight(cosBetween: number): number {
  return fade(cosBetween, OPEN, SHUT);
}

/** How much of the wider gap the nearer one may have and still take its place, and from where on it does not. */
const NEARER = 0.4;
const AS_NEAR = 0.8;

/** 1 where one gap is clearly narrower than another, 0 where both are alike up to a slip of the tape measure. */
export function nearerWeight(narrowMm: number, wideMm: number, chordMm: number): number {
  const slipMm = TOUCHING * chordMm;
  return slipMm > 0 ? fade((narrowMm + slipMm) / (wideMm + slipMm), NEARER, AS_NEAR) : 0;
}
