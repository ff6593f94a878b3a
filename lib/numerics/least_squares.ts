/**
 * Linear least squares.
 *
 * @module
 */
import type { Matrix } from "./matrix.ts";

/** A least-squares fit of coefficients. */
export interface LeastSquares {
  /** The coefficients, one for each column. */
  readonly coefficients: readonly number[];
  /** Observed less fitted, one for each row. */
  readonly residuals: readonly number[];
  /** Sum of the squared residuals. */
  readonly residualSumOfSquares: number;
  /** Rows less columns. */
  readonly dof: number;
  /**
   * `(XᵀX)⁻¹`: times the variance of one observation, the covariance of the
   * coefficients.
   */
  readonly inverseNormal: Matrix;
}

/**
 * Fits coefficients so that the squared residuals add up to the least.
 *
 * By Householder reflections on X itself, which loses half as many digits as
 * the normal equations do. For unequal weights multiply each row and its
 * observation by 1/σ; for correlated ones by the inverse Cholesky root.
 *
 * @param design X, one row for each observation, at least as many rows as
 * columns.
 * @param observations y, one for each row.
 * @returns Coefficients, residuals and what their covariance needs.
 * @throws {RangeError} If a column is a combination of the ones before it to
 * within 1e-12 of its length, so that its coefficient cannot be told.
 * @throws {TypeError} If there are fewer rows than columns, or sizes differ.
 *
 * @see Golub and Van Loan, Matrix Computations, section 5.3.
 *
 * @example A straight line through three points
 * ```ts
 * import { leastSquares } from "sagbook/numerics/least_squares.ts";
 * import { equal } from "node:assert/strict";
 *
 * const fit = leastSquares([[1, 0], [1, 1], [1, 2]], [1, 3, 5]);
 * equal(fit.coefficients[1].toFixed(12), "2.000000000000");
 * ```
 */
export function leastSquares(
  design: Matrix,
  observations: readonly number[],
): LeastSquares {
  const rows = design.length;
  const columns = design[0]?.length ?? 0;
  if (
    rows < columns || columns === 0 || observations.length !== rows ||
    design.some((row) => row.length !== columns)
  ) {
    throw new TypeError(
      `Cannot fit by least squares as there must be a full row of coefficients for each observation, and no fewer rows than columns: current value is ${rows} by ${columns} with ${observations.length} observations`,
    );
  }
  const a = design.map((row) => [...row]);
  const y = [...observations];
  const lengths = columnLengths(design);
  const diagonal: number[] = [];
  for (let k = 0; k < columns; k++) {
    let norm = 0;
    for (let i = k; i < rows; i++) norm = Math.hypot(norm, a[i][k]);
    if (!(norm > 1e-12 * lengths[k])) {
      throw new RangeError(
        `Cannot fit by least squares as no column may be a combination of those before it: current value is column ${
          k + 1
        }`,
      );
    }
    const signed = a[k][k] > 0 ? -norm : norm;
    diagonal.push(signed);
    a[k][k] -= signed;
    const scale = -signed * a[k][k]; // half the square of the reflector
    const reflect = (column: (row: number) => number): number => {
      let dot = 0;
      for (let i = k; i < rows; i++) dot += a[i][k] * column(i);
      return dot / scale;
    };
    for (let j = k + 1; j < columns; j++) {
      const dot = reflect((i) => a[i][j]);
      for (let i = k; i < rows; i++) a[i][j] -= dot * a[i][k];
    }
    const dot = reflect((i) => y[i]);
    for (let i = k; i < rows; i++) y[i] -= dot * a[i][k];
  }
  const inverseRoot = invertUpper(a, diagonal);
  const coefficients = inverseRoot.map((row) =>
    row.reduce((sum, entry, k) => sum + entry * y[k], 0)
  );
  const residuals = design.map((row, i) =>
    observations[i] - row.reduce((sum, x, k) => sum + x * coefficients[k], 0)
  );
  return {
    coefficients,
    residuals,
    residualSumOfSquares: residuals.reduce((sum, e) => sum + e * e, 0),
    dof: rows - columns,
    inverseNormal: inverseRoot.map((left) =>
      inverseRoot.map((right) =>
        left.reduce((sum, entry, k) => sum + entry * right[k], 0)
      )
    ),
  };
}

function columnLengths(design: Matrix): number[] {
  return design[0].map((_, k) => {
    const length = Math.hypot(...design.map((row) => row[k]));
    if (!Number.isFinite(length)) {
      throw new RangeError(
        `Cannot fit by least squares as every coefficient must be a finite number: current value of column ${
          k + 1
        } is not`,
      );
    }
    return length;
  });
}

/** R⁻¹ of the upper triangle kept above the diagonal of `a`. */
function invertUpper(a: Matrix, diagonal: readonly number[]): number[][] {
  const n = diagonal.length;
  const inverse = diagonal.map(() => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j++) {
    inverse[j][j] = 1 / diagonal[j];
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum += a[i][k] * inverse[k][j];
      inverse[i][j] = -sum / diagonal[i];
    }
  }
  return inverse;
}
