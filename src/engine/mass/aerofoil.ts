import type { Corner } from '../geometry/polygon';

/** Straight pieces along each side, from nose to trailing edge. */
export const aerofoilPieces = 40;

/**
 * Half thickness of the symmetric four-digit section at `x`, both as fractions of chord.
 * Abbott & von Doenhoff, Theory of Wing Sections, 6.4 (Jacobs, Ward & Pinkerton, NACA Report 460);
 * the last coefficient is −0.1036 in place of −0.1015, which closes the trailing edge.
 */
export function aerofoilHalfThickness(x: number, thickness: number): number {
  const form = 0.2969 * Math.sqrt(x) + x * (-0.126 + x * (-0.3516 + x * (0.2843 - 0.1036 * x)));
  return 5 * thickness * form;
}

/** Stations along the chord, 0…1, crowded at both ends: x = (1 − cos β)/2. */
const aerofoilStations: readonly number[] = Array.from(
  { length: aerofoilPieces + 1 },
  (_, i) => (1 - Math.cos((Math.PI * i) / aerofoilPieces)) / 2,
);

/**
 * A section of unit chord as [x, z] corners, nose at the origin: from the trailing edge along the
 * lower side to the nose and back along the upper (counterclockwise about +y). 80 corners.
 * This polygon *is* the section of a panel: a panel's solid and skin are lofts of it, and no finer
 * curve stands behind them. Its area falls 0.2 % short of the curve's.
 */
export function aerofoilOutline(thickness: number): Corner[] {
  const lower = aerofoilStations.toReversed().map((x): Corner => [x, -half(x, thickness)]);
  const upper = aerofoilStations.slice(1, -1).map((x): Corner => [x, half(x, thickness)]);
  return [...lower, ...upper];
}

/** Exactly 0 at the nose and at the trailing edge, where the two sides meet. */
const half = (x: number, thickness: number): number =>
  x === 0 || x === 1 ? 0 : aerofoilHalfThickness(x, thickness);
