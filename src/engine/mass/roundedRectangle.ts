import type { Corner } from '../geometry/polygon';

/**
 * The section of a loft: a rectangle 2a × 2b whose corners are quarter ellipses of semi-axes ra and rb.
 * It is a stretched copy of the square −1…1 with corners of radius r, so these two numbers give all:
 * area = ab · roundedArea(r), ∫y² dA = a³b · roundedSecond(r), ∫z² dA = ab³ · roundedSecond(r).
 */

/** Area of the square −1…1 with corners of radius r. */
export const roundedArea = (r: number): number => 4 - (4 - Math.PI) * r * r;

/** ∫u² dA of that square: the whole, less four corner squares, plus four quarter discs. */
export function roundedSecond(r: number): number {
  const inner = 1 - r;
  const cut =
    inner * inner * r * r * (1 - Math.PI / 4) +
    (inner * r * r * r) / 3 +
    r * r * r * r * (1 / 3 - Math.PI / 16);
  return 4 / 3 - 4 * cut;
}

/** Cosine and sine over a quarter turn in `steps` steps, exact at both ends. */
export function quarterTurn(steps: number): Corner[] {
  return Array.from({ length: steps + 1 }, (_, i): Corner => {
    if (i === 0) return [1, 0];
    if (i === steps) return [0, 1];
    const angle = (i / steps) * (Math.PI / 2);
    return [Math.cos(angle), Math.sin(angle)];
  });
}

/**
 * The section's outline about its own centre, counterclockwise from y to z, starting at +y.
 * Always 4 (steps + 1) corners, so outlines of different roundness match corner for corner.
 */
export function roundedOutline(a: number, b: number, r: number, steps: number): Corner[] {
  const quarter = quarterTurn(steps).map(([c, s]): Corner => [a * (1 - r + r * c), b * (1 - r + r * s)]);
  const back = quarter.toReversed();
  return [
    ...quarter,
    ...back.map(([y, z]): Corner => [-y, z]),
    ...quarter.map(([y, z]): Corner => [-y, -z]),
    ...back.map(([y, z]): Corner => [y, -z]),
  ];
}
