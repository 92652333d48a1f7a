/** One sample of a quadrature rule on 0…1. */
export interface GaussPoint {
  readonly at: number;
  readonly weight: number;
}

const rules = new Map<number, readonly GaussPoint[]>();

/**
 * The n-point Gauss–Legendre rule on 0…1: exact for polynomials up to degree 2n − 1.
 * Roots of the Legendre polynomial by Newton's method from Tricomi's estimate
 * (Abramowitz & Stegun, Handbook of Mathematical Functions, 25.4.29–30).
 */
export function gaussRule(n: number): readonly GaussPoint[] {
  const kept = rules.get(n);
  if (kept) return kept;
  const rule = Array.from({ length: n }, (_, i) => gaussPoint(n, i));
  rules.set(n, rule);
  return rule;
}

function gaussPoint(n: number, i: number): GaussPoint {
  let x = -Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
  let slope = 1;
  for (let step = 0; step < 8; step += 1) {
    let before = 1;
    let value = x;
    for (let k = 2; k <= n; k += 1) {
      const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
      before = value;
      value = next;
    }
    slope = (n * (x * value - before)) / (x * x - 1);
    x -= value / slope;
  }
  return { at: (1 + x) / 2, weight: 1 / ((1 - x * x) * slope * slope) };
}
