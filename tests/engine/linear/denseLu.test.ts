import fc from 'fast-check';
import { LuDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { luFactor, luSolve } from '../../../src/engine/linear/denseLu';
import { between } from '../../between';

const entry = between(-10, 10);

/** Random matrices of any size from 1 to 13, so that every remainder of the block size is met. */
const systems = fc.integer({ min: 1, max: 13 }).chain((size) =>
  fc.record({
    size: fc.constant(size),
    matrix: fc.array(entry, { minLength: size * size, maxLength: size * size }),
    rhs: fc.array(entry, { minLength: size, maxLength: size }),
  }),
);

describe('dense LU', () => {
  test('solves what ml-matrix solves', () => {
    fc.assert(
      fc.property(systems, ({ size, matrix, rhs }) => {
        for (let i = 0; i < size; i++)
          matrix[i * size + i] = (matrix[i * size + i] ?? 0) + 25 * (i % 2 ? -1 : 1);
        const theirs = new LuDecomposition(Matrix.from1DArray(size, size, matrix));
        fc.pre(!theirs.isSingular());
        const expected = theirs.solve(Matrix.columnVector(rhs)).to1DArray();
        const ours = luSolve(luFactor(Float64Array.from(matrix), size), Float64Array.from(rhs));
        const scale = Math.max(1, ...expected.map(Math.abs));
        expected.forEach((value, i) => {
          expect(Math.abs((ours[i] ?? Number.NaN) - value) / scale).toBeLessThan(1e-8);
        });
      }),
    );
  });

  test('needs pivoting, and does it: a zero on the diagonal', () => {
    const factors = luFactor(Float64Array.from([0, 2, 3, 4]), 2);
    expect([...luSolve(factors, Float64Array.from([2, 7]))]).toEqual([1, 1]);
  });

  test('100 unknowns: the residual is at rounding level', () => {
    const size = 100;
    // Hilbert-like off-diagonals on an alternating, permuted diagonal: not symmetric, not dominant in place.
    const matrix = Float64Array.from({ length: size * size }, (_, k) => {
      const i = Math.floor(k / size);
      const j = k % size;
      return 1 / (1 + i + 2 * j) + (j === (i * 37) % size ? 3 : 0);
    });
    const rhs = Float64Array.from({ length: size }, (_, i) => Math.cos(i));
    const x = luSolve(luFactor(matrix.slice(), size), rhs);
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let j = 0; j < size; j++) sum += (matrix[i * size + j] ?? 0) * (x[j] ?? 0);
      expect(Math.abs(sum - (rhs[i] ?? 0))).toBeLessThan(1e-12);
    }
  });

  test('a singular matrix is refused', () => {
    expect(() => luFactor(Float64Array.from([1, 2, 2, 4]), 2)).toThrow(/no usable pivot/);
    expect(() => luFactor(Float64Array.from([Number.NaN]), 1)).toThrow(/no usable pivot/);
  });
});
