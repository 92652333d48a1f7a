/** Value at u = 0 and its change to u = 1. */
export type Linear = readonly [number, number];

/**
 * The real roots of c[0] + c[1] u + c[2] u² + … between `low` and `high`, in no order. Degree 2 in closed form; above it
 * the roots of the derivative part the range into stretches that hold at most one root each. A root where the polynomial
 * only touches zero may be missed.
 */
export function polynomialRoots(c: readonly number[], low: number, high: number): number[] {
  let degree = c.length - 1;
  while (degree > 0 && c[degree] === 0) degree--;
  if (degree < 1) return [];
  if (degree <= 2) return lowRoots(c[0]!, c[1]!, degree === 2 ? c[2]! : 0).filter((u) => u > low && u < high);
  const slope = Array.from({ length: degree }, (_, k) => (k + 1) * c[k + 1]!);
  const marks = [low, ...polynomialRoots(slope, low, high).sort((a, b) => a - b), high];
  const roots: number[] = [];
  for (let k = 1; k < marks.length; k++) {
    const from = marks[k - 1]!;
    const to = marks[k]!;
    const atFrom = valueAt(c, from);
    if (atFrom * valueAt(c, to) < 0) roots.push(rootBetween(c, slope, from, to, atFrom > 0));
  }
  return roots;
}

function lowRoots(c: number, b: number, a: number): number[] {
  if (a === 0) return [-c / b];
  const within = b * b - 4 * a * c;
  if (within < 0) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(within)) / 2;
  return q === 0 ? [0] : [q / a, c / q];
}

function valueAt(c: readonly number[], u: number): number {
  let value = 0;
  for (let k = c.length - 1; k >= 0; k--) value = value * u + c[k]!;
  return value;
}

/** Newton's method inside a bracket that shrinks. */
function rootBetween(
  c: readonly number[],
  slope: readonly number[],
  from: number,
  to: number,
  falling: boolean,
): number {
  let low = from;
  let high = to;
  let u = (from + to) / 2;
  for (let step = 0; step < 60; step++) {
    const value = valueAt(c, u);
    if (value > 0 === falling) low = u;
    else high = u;
    let next = u - value / valueAt(slope, u);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - u) <= 1e-15 * Math.abs(to - from)) return next;
    u = next;
  }
  return u;
}
