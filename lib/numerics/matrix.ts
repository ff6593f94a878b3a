/**
 * Small dense matrices, as lists of rows.
 *
 * @module
 */

/** A matrix as a list of rows of equal length. */
export type Matrix = readonly (readonly number[])[];

/** Refuses rows of unequal length and numbers that are not finite. */
function shapeOf(matrix: Matrix, action: string): [number, number] {
  const rows = matrix.length;
  const columns = matrix[0]?.length ?? 0;
  for (const row of matrix) {
    if (row.length !== columns) {
      throw new TypeError(
        `Cannot ${action} as every row must have the same length: current value is ${row.length} beside ${columns}`,
      );
    }
    for (const entry of row) {
      if (!Number.isFinite(entry)) {
        throw new RangeError(
          `Cannot ${action} as every entry must be a finite number: current value is ${entry}`,
        );
      }
    }
  }
  return [rows, columns];
}

/**
 * Swaps rows and columns.
 *
 * @param matrix Any matrix.
 * @returns Its transpose.
 *
 * @example
 * ```ts
 * import { transpose } from "sagbook/numerics/matrix.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(transpose([[1, 2, 3]]), [[1], [2], [3]]);
 * ```
 */
export function transpose(matrix: Matrix): number[][] {
  const [, columns] = shapeOf(matrix, "transpose a matrix");
  return Array.from(
    { length: columns },
    (_, column) => matrix.map((row) => row[column]),
  );
}

/**
 * Multiplies two matrices.
 *
 * @param left Of n rows and k columns.
 * @param right Of k rows and m columns.
 * @returns The product, n by m.
 * @throws {TypeError} If the inner sizes differ.
 *
 * @example
 * ```ts
 * import { multiply } from "sagbook/numerics/matrix.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(multiply([[1, 2]], [[3], [4]]), [[11]]);
 * ```
 */
export function multiply(left: Matrix, right: Matrix): number[][] {
  const [, inner] = shapeOf(left, "multiply matrices");
  const [rows, columns] = shapeOf(right, "multiply matrices");
  if (inner !== rows) {
    throw new TypeError(
      `Cannot multiply matrices as the left must have as many columns as the right has rows: current value is ${inner} and ${rows}`,
    );
  }
  return left.map((row) =>
    Array.from({ length: columns }, (_, column) => {
      let sum = 0;
      for (let k = 0; k < inner; k++) sum += row[k] * right[k][column];
      return sum;
    })
  );
}

/**
 * Finds the lower triangular root L of a symmetric matrix, `A = L Lᵀ`.
 *
 * @param matrix Symmetric and positive definite, such as a covariance; only
 * its lower half is read.
 * @returns L, with zeros above the diagonal.
 * @throws {RangeError} If a pivot falls to rounding level (1e-14 of its own
 * diagonal entry): the matrix is not positive definite, or some of what it
 * describes cannot be told apart.
 *
 * @see Golub and Van Loan, Matrix Computations, section 4.2.
 *
 * @example
 * ```ts
 * import { cholesky } from "sagbook/numerics/matrix.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(cholesky([[4, 2], [2, 10]]), [[2, 0], [1, 3]]);
 * ```
 */
export function cholesky(matrix: Matrix): number[][] {
  const [rows, columns] = shapeOf(matrix, "factor a matrix");
  if (rows !== columns) {
    throw new TypeError(
      `Cannot factor a matrix as it must be square: current value is ${rows} by ${columns}`,
    );
  }
  const factor = matrix.map(() => new Array<number>(columns).fill(0));
  for (let j = 0; j < columns; j++) {
    let pivot = matrix[j][j];
    for (let k = 0; k < j; k++) pivot -= factor[j][k] ** 2;
    if (!(pivot > 1e-14 * Math.abs(matrix[j][j]))) {
      throw new RangeError(
        `Cannot factor a matrix as it must be positive definite: current value of pivot ${
          j + 1
        } is ${pivot}`,
      );
    }
    factor[j][j] = Math.sqrt(pivot);
    for (let i = j + 1; i < rows; i++) {
      let sum = matrix[i][j];
      for (let k = 0; k < j; k++) sum -= factor[i][k] * factor[j][k];
      factor[i][j] = sum / factor[j][j];
    }
  }
  return factor;
}

/**
 * Solves `A x = b` for a symmetric positive definite A.
 *
 * @param matrix A.
 * @param right b, as long as A has rows.
 * @returns x.
 * @throws {RangeError} If A is not positive definite.
 *
 * @example
 * ```ts
 * import { solveSymmetric } from "sagbook/numerics/matrix.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(solveSymmetric([[4, 2], [2, 10]], [8, 22]), [1, 2]);
 * ```
 */
export function solveSymmetric(
  matrix: Matrix,
  right: readonly number[],
): number[] {
  return solveFactored(cholesky(matrix), right);
}

/**
 * Inverts a symmetric positive definite matrix.
 *
 * @param matrix The matrix.
 * @returns Its inverse, exactly symmetric.
 * @throws {RangeError} If it is not positive definite.
 *
 * @example
 * ```ts
 * import { invertSymmetric } from "sagbook/numerics/matrix.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(invertSymmetric([[4, 0], [0, 16]]), [[0.25, 0], [0, 0.0625]]);
 * ```
 */
export function invertSymmetric(matrix: Matrix): number[][] {
  const factor = cholesky(matrix);
  const inverse = matrix.map((_, column) =>
    solveFactored(factor, matrix.map((_, row) => row === column ? 1 : 0))
  );
  for (let i = 0; i < inverse.length; i++) {
    for (let j = 0; j < i; j++) {
      inverse[i][j] = inverse[j][i] = (inverse[i][j] + inverse[j][i]) / 2;
    }
  }
  return inverse;
}

function solveFactored(factor: Matrix, right: readonly number[]): number[] {
  const n = factor.length;
  if (right.length !== n) {
    throw new TypeError(
      `Cannot solve equations as the right side must have ${n} entries: current value is ${right.length}`,
    );
  }
  const x = [...right];
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] -= factor[i][k] * x[k];
    x[i] /= factor[i][i];
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] -= factor[k][i] * x[k];
    x[i] /= factor[i][i];
  }
  return x;
}
