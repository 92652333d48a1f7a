import { normalBelow } from './bivariateNormal';

/** A point whose coordinate is normal: its mean, and how it goes with each of some independent standard normal errors. */
export interface NormalPoint {
  readonly mean: number;
  readonly loadings: readonly number[];
}

/** A probability with what the method may be off by. */
export interface Estimated {
  readonly value: number;
  /** Standard error of the value. */
  readonly error: number;
}

/** Shifts of the lattice, whose spread gives the error; and points of each. */
const SHIFTS = 8;
const POINTS = 256;
/** More errors than this are not met with: two of mass and moment, one of density, one for each tank, and some to spare. */
const MOST_FACTORS = 24;
/** Variance below this share of the greatest is rounding. */
const ROUNDING = 1e-12;

/**
 * How much less likely it is that all points lie between two limits than that the first point is not below the lower one
 * and the second not above the upper one, as a negative number.
 *
 * The errors common to the points are first boiled down to a few independent ones (Cholesky with pivoting; Higham, Analysis
 * of the Cholesky decomposition of a semi-definite matrix, 1990). In the first, which moves all points much alike, the
 * integral is done in closed form: given the others, the points bound it to one stretch of the normal distribution. The rest
 * is a sum over a Richtmyer lattice with the baker's transformation (Genz, Comparison of methods for the computation of
 * multivariate normal probabilities, 1993), whose shifts are fixed, so the same aircraft always gets the same figure. Both
 * probabilities use the same points; where other points never matter the difference is exactly nothing.
 */
export function beyondEnds(
  points: readonly NormalPoint[],
  limits: readonly [least: number, most: number],
): Estimated {
  const factors = pivoted(points);
  const depth = factors[0]?.length ?? 0;
  if (depth === 0) return { value: 0, error: 0 };
  const all = points.map((_, k) => k);
  const sides = { ends: [[0], [1]], all: [all, all] } as const;
  const sums: number[] = [];
  const shifts = depth === 1 ? 1 : SHIFTS;
  const count = depth === 1 ? 1 : POINTS;
  const lattice = latticeOf(depth - 1);
  for (let shift = 0; shift < shifts; shift += 1) {
    let sum = 0;
    for (let n = 0; n < count; n += 1) {
      const rest = lattice[shift * POINTS + n]!;
      const ends = stretch(points, factors, sides.ends, rest, limits);
      if (ends > 0) sum += stretch(points, factors, sides.all, rest, limits) - ends;
    }
    sums.push(sum / count);
  }
  const value = sums.reduce((a, b) => a + b, 0) / shifts;
  const spread = sums.reduce((a, b) => a + (b - value) ** 2, 0) / Math.max(1, shifts - 1);
  return { value, error: Math.sqrt(spread / shifts) };
}

/**
 * The probability, given the other errors, that the first error leaves some points at or above the lower limit and some at
 * or below the upper one.
 */
function stretch(
  points: readonly NormalPoint[],
  factors: readonly (readonly number[])[],
  sides: readonly [readonly number[], readonly number[]],
  rest: readonly number[],
  limits: readonly [number, number],
): number {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const side of [0, 1] as const) {
    for (const k of sides[side]) {
      const pointFactors = factors[k]!;
      let at = points[k]!.mean;
      for (let d = 0; d < rest.length; d += 1) at += pointFactors[d + 1]! * rest[d]!;
      const room = limits[side] - at;
      const slope = pointFactors[0]!;
      if (slope === 0) {
        if (side === 0 ? room > 0 : room < 0) return 0;
      } else if (slope > 0 === (side === 0)) from = Math.max(from, room / slope);
      else to = Math.min(to, room / slope);
    }
  }
  return from < to ? normalBelow(to) - normalBelow(from) : 0;
}

/** Few independent errors with the same covariances, a row for each point; the first is that of the most doubtful point. */
function pivoted(points: readonly NormalPoint[]): number[][] {
  const left = points.map(({ loadings }) => loadings.reduce((sum, loading) => sum + loading * loading, 0));
  const whole = Math.max(...left);
  const rows: number[][] = points.map(() => []);
  for (let depth = 0; depth < MOST_FACTORS; depth += 1) {
    const pivot = left.reduce((best, variance, k) => (variance > left[best]! ? k : best), 0);
    if (!(left[pivot]! > ROUNDING * whole)) break;
    const root = Math.sqrt(left[pivot]!);
    const pivotRow = [...rows[pivot]!];
    points.forEach(({ loadings }, k) => {
      let covariance = 0;
      for (let j = 0; j < loadings.length; j += 1) covariance += loadings[j]! * points[pivot]!.loadings[j]!;
      for (let d = 0; d < depth; d += 1) covariance -= rows[k]![d]! * pivotRow[d]!;
      const loading = covariance / root;
      rows[k]!.push(loading);
      left[k] = Math.max(0, left[k]! - loading * loading);
    });
    left[pivot] = 0;
  }
  return rows;
}

const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79, 83, 89];

const lattices = new Map<number, readonly (readonly number[])[]>();

/** The lattice in so many dimensions as normal numbers, shift by shift; made once. */
function latticeOf(dimensions: number): readonly (readonly number[])[] {
  let lattice = lattices.get(dimensions);
  if (!lattice) {
    lattice = Array.from({ length: SHIFTS * POINTS }, (_, k) => {
      const [shift, n] = [Math.floor(k / POINTS), 1 + (k % POINTS)];
      return Array.from({ length: dimensions }, (_, d) => normalAt(latticePoint(n, d, shift)));
    });
    lattices.set(dimensions, lattice);
  }
  return lattice;
}

/** One coordinate of a point of the shifted lattice, folded so that its sums behave as those of a periodic function. */
function latticePoint(n: number, dimension: number, shift: number): number {
  const root = Math.sqrt(PRIMES[dimension]!);
  // The shifts are spread evenly, differently for each coordinate.
  const at = (n * root + (shift + 0.5) * ((dimension + 1) / SHIFTS + (Math.sqrt(5) - 1) / 2)) % 1;
  return Math.abs(2 * at - 1);
}

/** The standard normal number below which a share lies, by halving and Newton on Φ. */
function normalAt(share: number): number {
  if (share <= 0) return -8;
  if (share >= 1) return 8;
  let [low, high] = [-8.5, 8.5];
  let x = 0;
  for (let step = 0; step < 60; step += 1) {
    const off = normalBelow(x) - share;
    if (off > 0) high = x;
    else low = x;
    const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    let next = x - off / density;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - x) < 1e-12) return next;
    x = next;
  }
  return x;
}
