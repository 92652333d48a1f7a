/** A symmetric positive definite matrix as L·Lᵀ (Golub & Van Loan, Matrix Computations, 4.2). */
export interface Cholesky {
  readonly lower: readonly (readonly number[])[];
  /** log of the determinant of the whole. */
  readonly logDeterminant: number;
}

/** Null where the matrix is not positive definite. */
export function choleskyOf(matrix: readonly (readonly number[])[]): Cholesky | null {
  const lower = matrix.map(() => matrix.map(() => 0));
  let logDeterminant = 0;
  for (let row = 0; row < matrix.length; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let left = matrix[row]![column]!;
      for (let k = 0; k < column; k += 1) left -= lower[row]![k]! * lower[column]![k]!;
      if (row !== column) lower[row]![column] = left / lower[column]![column]!;
      else if (left > 0) {
        lower[row]![row] = Math.sqrt(left);
        logDeterminant += Math.log(left);
      } else return null;
    }
  }
  return { lower, logDeterminant };
}

/** The x for which L·Lᵀ·x = b. */
export function choleskySolve({ lower }: Cholesky, b: readonly number[]): number[] {
  const x = [...b];
  for (let row = 0; row < x.length; row += 1) {
    for (let k = 0; k < row; k += 1) x[row]! -= lower[row]![k]! * x[k]!;
    x[row]! /= lower[row]![row]!;
  }
  for (let row = x.length - 1; row >= 0; row -= 1) {
    for (let k = row + 1; k < x.length; k += 1) x[row]! -= lower[k]![row]! * x[k]!;
    x[row]! /= lower[row]![row]!;
  }
  return x;
}
