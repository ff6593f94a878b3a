/**
 * Least squares with a known covariance of the readings.
 *
 * @module
 */
import { factorInPlace } from "./_dense_factor.ts";
import { orthonormalise, solveUpper } from "./_fixed_part.ts";
import { requireAllFinite } from "./_guards.ts";
import { chiSquareProbability } from "./chi_square_distribution.ts";
import type { FixedColumn } from "./mixed_model.ts";

/** One coefficient. */
export interface LeastSquaresCoefficient {
  /** Name of its column. */
  readonly name: string;
  /** The coefficient; undefined if the column follows from earlier ones. */
  readonly estimate: number | undefined;
  /** Its standard error, taking the covariance as known. */
  readonly standardError: number | undefined;
  /** Earlier columns that make this one up. */
  readonly aliasedWith: readonly string[];
}

/** A fit by generalised least squares. */
export interface LeastSquaresFit {
  /** One coefficient for each column, in order. */
  readonly coefficients: readonly LeastSquaresCoefficient[];
  /** Covariance of the independent coefficients, in order. */
  readonly covariance: readonly (readonly number[])[];
  /** Value of the fit at each reading. */
  readonly fitted: readonly number[];
  /** Squared residuals weighed by the inverse covariance. */
  readonly chiSquare: number;
  /** Readings less independent coefficients. */
  readonly dof: number;
  /** Chance of so large a sum if model and covariance are right. */
  readonly p: number | undefined;
}

/**
 * Fits a weighted sum of columns to readings whose covariance is known.
 *
 * Readings that share an error, such as those of one session, are weighed for
 * what they tell apart from it. The readings are turned into independent ones
 * of variance 1 by the Cholesky factor of the covariance and fitted by
 * orthogonal columns.
 *
 * @param response The readings.
 * @param columns The columns, including one for the intercept if wanted.
 * @param covariance Covariance of the readings: symmetric, positive definite.
 * @returns Coefficients, their covariance, and chi-square.
 * @throws {RangeError} If sizes differ, a number is not finite or the covariance
 * is not positive definite.
 *
 * @see A. C. Aitken (1935), Proceedings of the Royal Society of Edinburgh 55,
 * 42-48.
 *
 * @example Two readings share an error, the third stands alone
 * ```ts
 * import { generalisedLeastSquares } from "sagbook/statistics/generalised_least_squares.ts";
 * import { interceptColumn } from "sagbook/statistics/design_columns.ts";
 * import { equal } from "node:assert/strict";
 *
 * const fit = generalisedLeastSquares([10, 10, 13], [interceptColumn(3)], [
 *   [1, 0.9, 0],
 *   [0.9, 1, 0],
 *   [0, 0, 1],
 * ]);
 * equal(fit.coefficients[0].estimate!.toFixed(4), "11.4615");
 * ```
 */
export function generalisedLeastSquares(
  response: readonly number[],
  columns: readonly FixedColumn[],
  covariance: readonly (readonly number[])[],
): LeastSquaresFit {
  const action = "fit by generalised least squares";
  const n = response.length;
  requireAllFinite(response, action, "reading");
  for (const { name, values } of columns) {
    if (values.length !== n) {
      throw new RangeError(
        `Cannot ${action} as column ${name} must have one value for each of ${n} readings: current value is ${values.length}`,
      );
    }
    requireAllFinite(values, action, `value of column ${name}`);
  }
  if (covariance.length !== n || covariance.some((row) => row.length !== n)) {
    throw new RangeError(
      `Cannot ${action} as the covariance must have ${n} rows and columns: current value is ${covariance.length}`,
    );
  }
  const factor = new Float64Array(n * n);
  covariance.forEach((row, i) => {
    requireAllFinite(row, action, "covariance");
    row.forEach((value, j) => factor[i * n + j] = value);
  });
  if (!factorInPlace(factor, n)) {
    throw new RangeError(
      `Cannot ${action} as the covariance must be positive definite: current value is not`,
    );
  }
  const whiten = (values: ArrayLike<number>) => {
    const x = Float64Array.from(values);
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < i; k++) x[i] -= factor[i * n + k] * x[k];
      x[i] /= factor[i * n + i];
    }
    return x;
  };
  const { basis, upper, kept, aliases } = orthonormalise(
    columns.map(({ name, values }) => ({ name, values: whiten(values) })),
  );
  const residual = whiten(response);
  const parts = basis.map(() => 0);
  for (let pass = 0; pass < 2; pass++) {
    basis.forEach((unit, c) => {
      let part = 0;
      for (let i = 0; i < n; i++) part += unit[i] * residual[i];
      parts[c] += part;
      for (let i = 0; i < n; i++) residual[i] -= part * unit[i];
    });
  }
  const estimates = solveUpper(upper, parts);
  const inverseRows = basis.map((_, c) =>
    solveUpper(upper, basis.map((_, d) => d === c ? 1 : 0))
  );
  const ofEstimates = basis.map((_, i) =>
    basis.map((_, j) =>
      inverseRows.reduce((sum, column) => sum + column[i] * column[j], 0)
    )
  );
  const chiSquare = residual.reduce((sum, value) => sum + value * value, 0);
  const dof = n - basis.length;
  return {
    coefficients: columns.map(({ name }, position) => {
      const at = kept.indexOf(position);
      return {
        name,
        estimate: at < 0 ? undefined : estimates[at],
        standardError: at < 0 ? undefined : Math.sqrt(ofEstimates[at][at]),
        aliasedWith: aliases.get(position) ?? [],
      };
    }),
    covariance: ofEstimates,
    fitted: Array.from(
      { length: n },
      (_, i) =>
        kept.reduce(
          (sum, position, at) =>
            sum + estimates[at] * columns[position].values[i],
          0,
        ),
    ),
    chiSquare,
    dof,
    p: dof > 0 ? chiSquareProbability(chiSquare, dof, "upper") : undefined,
  };
}
