/** A factored square system: L (unit diagonal, below) and U in one row-major array, and the row order. */
export interface LuFactors {
  readonly size: number;
  readonly lu: Float64Array;
  /** order[i] is the row of the original matrix that stands at row i. */
  readonly order: Int32Array;
}

/** Pivots handled at once: one sweep over the rest of the matrix then serves four of them. */
const BLOCK = 4;

/**
 * LU factorisation with partial pivoting, row-major, in place: `matrix` is overwritten and becomes
 * the factors. Blocked right-looking form. Source: Golub & Van Loan, Matrix Computations, ch. 3.
 * Throws if a pivot is 0 (the matrix is singular).
 */
export function luFactor(matrix: Float64Array, size: number): LuFactors {
  const order = Int32Array.from({ length: size }, (_, row) => row);
  for (let start = 0; start < size; start += BLOCK) {
    const end = Math.min(start + BLOCK, size);
    factorColumns(matrix, size, start, end, order);
    finishRows(matrix, size, start, end);
    if (end - start === BLOCK) updateRest(matrix, size, start);
  }
  return { size, lu: matrix, order };
}

/** Eliminates columns start..end below the diagonal, within those columns only; swaps whole rows. */
function factorColumns(a: Float64Array, n: number, start: number, end: number, order: Int32Array): void {
  for (let k = start; k < end; k++) {
    let pivotRow = k;
    let largest = Math.abs(a[k * n + k] as number);
    for (let i = k + 1; i < n; i++) {
      const size = Math.abs(a[i * n + k] as number);
      if (size > largest) {
        largest = size;
        pivotRow = i;
      }
    }
    if (!(largest > 0)) throw new Error(`LU of a ${n} x ${n} matrix: column ${k + 1} has no usable pivot`);
    if (pivotRow !== k) swapRows(a, n, k, pivotRow, order);
    const inverse = 1 / (a[k * n + k] as number);
    for (let i = k + 1; i < n; i++) {
      const row = i * n;
      const factor = (a[row + k] as number) * inverse;
      a[row + k] = factor;
      for (let j = k + 1; j < end; j++)
        a[row + j] = (a[row + j] as number) - factor * (a[k * n + j] as number);
    }
  }
}

function swapRows(a: Float64Array, n: number, row: number, other: number, order: Int32Array): void {
  const first = row * n;
  const second = other * n;
  for (let j = 0; j < n; j++) {
    const held = a[first + j] as number;
    a[first + j] = a[second + j] as number;
    a[second + j] = held;
  }
  const held = order[row] as number;
  order[row] = order[other] as number;
  order[other] = held;
}

/** Brings the block's own rows, right of the block, to their final U form. */
function finishRows(a: Float64Array, n: number, start: number, end: number): void {
  for (let i = start + 1; i < end; i++) {
    for (let k = start; k < i; k++) {
      const factor = a[i * n + k] as number;
      for (let j = end; j < n; j++)
        a[i * n + j] = (a[i * n + j] as number) - factor * (a[k * n + j] as number);
    }
  }
}

/** rest −= L·U for the four pivots from `start`, two rows at a time so that each U entry is read once for both. */
function updateRest(a: Float64Array, n: number, start: number): void {
  const from = start + BLOCK;
  const u0 = start * n;
  const u1 = u0 + n;
  const u2 = u1 + n;
  const u3 = u2 + n;
  for (let i = from; i < n; i += 2) {
    const p = i * n;
    // an odd last row is paired with itself: both halves then write the same value
    const q = i + 1 < n ? p + n : p;
    const p0 = a[p + start] as number;
    const p1 = a[p + start + 1] as number;
    const p2 = a[p + start + 2] as number;
    const p3 = a[p + start + 3] as number;
    const q0 = a[q + start] as number;
    const q1 = a[q + start + 1] as number;
    const q2 = a[q + start + 2] as number;
    const q3 = a[q + start + 3] as number;
    for (let j = from; j < n; j++) {
      const v0 = a[u0 + j] as number;
      const v1 = a[u1 + j] as number;
      const v2 = a[u2 + j] as number;
      const v3 = a[u3 + j] as number;
      const rowP = (a[p + j] as number) - (p0 * v0 + p1 * v1 + p2 * v2 + p3 * v3);
      const rowQ = (a[q + j] as number) - (q0 * v0 + q1 * v1 + q2 * v2 + q3 * v3);
      a[p + j] = rowP;
      a[q + j] = rowQ;
    }
  }
}

/** Solves A·x = rhs with the factors; `rhs` is left alone. */
export function luSolve({ size: n, lu, order }: LuFactors, rhs: Float64Array): Float64Array {
  const x = Float64Array.from(order, (row) => rhs[row] as number);
  for (let i = 1; i < n; i++) {
    let sum = x[i] as number;
    for (let j = 0; j < i; j++) sum -= (lu[i * n + j] as number) * (x[j] as number);
    x[i] = sum;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i] as number;
    for (let j = i + 1; j < n; j++) sum -= (lu[i * n + j] as number) * (x[j] as number);
    x[i] = sum / (lu[i * n + i] as number);
  }
  return x;
}
