/**
 * Coefficients of a mixed model at given variances.
 *
 * @module
 */
import { solveUpper } from "./_fixed_part.ts";
import type { MixedLikelihood } from "./_mixed_likelihood.ts";

/** Coefficients, their covariance and its derivatives. */
export interface FixedEstimates {
  /** The coefficients of the independent columns. */
  readonly coefficients: number[];
  /** Their covariance. */
  readonly covariance: number[][];
  /** Its derivative by the variance of each factor, the residual's last. */
  readonly slopes: number[][][];
}

/** Coefficients, their covariance and its derivatives by the variances. */
export function estimateFixed(
  system: MixedLikelihood,
  ratios: readonly number[],
  residual: number,
): FixedEstimates {
  const { design, factor, owner } = system;
  const { upper } = design.fixed;
  const rank = upper.length;
  const nodes = owner.length;
  const solution = factor.solveReadings();
  const change = Array.from(solution.subarray(nodes));
  const backed = solveUpper(upper, change);
  const coefficients = design.plainCoefficients.map((b, c) => b + backed[c]);
  const units = Array.from({ length: rank }, (_, c) => {
    const right = new Float64Array(nodes + rank);
    right[nodes + c] = 1;
    return factor.solve(right);
  });
  const symmetric = (inner: (a: Float64Array, b: Float64Array) => number) => {
    const inBasis = units.map((a) => units.map((b) => inner(a, b)));
    const half = solveRows(upper, inBasis);
    return solveRows(upper, transpose(half));
  };
  const covariance = symmetric((a, b) => a[nodes + units.indexOf(b)])
    .map((row) => row.map((entry) => entry * residual));
  const slopes = ratios.map((ratio, k) =>
    ratio === 0
      ? covariance.map((row) => row.map(() => 0))
      : symmetric((a, b) => {
        let sum = 0;
        for (let at = 0; at < nodes; at++) {
          if (owner[at] === k) sum += a[at] * b[at];
        }
        return sum / ratio;
      })
  );
  slopes.push(covariance.map((row, c) =>
    row.map((entry, d) => {
      let rest = entry;
      ratios.forEach((ratio, k) => rest -= ratio * residual * slopes[k][c][d]);
      return rest / residual;
    })
  ));
  return { coefficients, covariance, slopes };
}

/** Solves R x = b for each row b. */
function solveRows(
  upper: readonly (readonly number[])[],
  rows: readonly (readonly number[])[],
): number[][] {
  return rows.map((row) => solveUpper(upper, row));
}

function transpose(matrix: readonly (readonly number[])[]): number[][] {
  return matrix.map((_, i) => matrix.map((row) => row[i]));
}
