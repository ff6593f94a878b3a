/**
 * How well the likelihood of a mixed model knows its variances.
 *
 * @module
 */
import { invertSmall } from "./_dense_factor.ts";
import type { LikelihoodPieces, MixedLikelihood } from "./_mixed_likelihood.ts";
import type { MixedModelCurvature } from "./mixed_model.ts";

/** First derivatives, by the ratios, of m ln σ² + ln|.| + S/σ². */
function slopesAt(
  { traces, scores }: LikelihoodPieces,
  residual: number,
): number[] {
  return traces.map((trace, k) => trace - scores[k] / residual);
}

/** Second derivatives, by the ratios, of m ln σ² + ln|.| + S/σ². */
function bendsAt(
  system: MixedLikelihood,
  ratios: readonly number[],
  residual: number,
  pieces: LikelihoodPieces,
): number[][] | undefined {
  const { weights, crossTraces } = pieces;
  if (crossTraces) {
    return weights.map((row, k) =>
      row.map((weight, l) => 2 * weight / residual - crossTraces[k][l])
    );
  }
  const slopes = slopesAt(pieces, residual);
  const result = weights.map((row) => row.map(() => 0));
  for (const [k, ratio] of ratios.entries()) {
    if (ratio === 0) continue;
    const step = 1e-5 * ratio;
    const moved = system.pieces(ratios.map((r, l) => l === k ? r + step : r));
    if (!moved) return undefined;
    slopesAt(moved, residual).forEach((slope, l) => {
      const bend = (slope - slopes[l]) / step;
      result[k][l] += bend / 2;
      result[l][k] += bend / 2;
    });
  }
  return result;
}

/**
 * Covariance of the variances above 0 by the observed information, with the
 * derivatives by them of the coefficients' covariance. Leaves the equations
 * factored somewhere else.
 *
 * @param residualKnown Whether the residual variance is not estimated.
 */
export function curvatureAt(
  system: MixedLikelihood,
  ratios: readonly number[],
  residual: number,
  residualKnown: boolean,
  slopes: readonly (readonly (readonly number[])[])[],
): MixedModelCurvature {
  const { design, weightOfSquares: m } = system;
  const free = [...ratios.keys()].filter((k) => ratios[k] > 0);
  const names = free.map((k) => design.factors[k].name);
  const kept = free.map((k) => slopes[k]);
  if (!residualKnown) {
    names.push("residual");
    kept.push(slopes[slopes.length - 1]);
  }
  const none = { names, covariance: [], slopes: kept };
  const pieces = system.pieces(ratios);
  const bends = pieces && bendsAt(system, ratios, residual, pieces);
  if (!pieces || !bends) return none;
  // In the ratios and, unless it is known, σ².
  const information = free.map((k) => free.map((l) => bends[k][l] / 2));
  // σ_k² = γ_k σ²
  const jacobian = free.map((_, i) =>
    free.map((__, j) => i === j ? residual : 0)
  );
  if (!residualKnown) {
    const mixed = free.map((k) => pieces.scores[k] / residual ** 2 / 2);
    information.forEach((row, i) => row.push(mixed[i]));
    information.push([...mixed, m / residual ** 2 / 2]);
    jacobian.forEach((row, i) => row.push(ratios[free[i]]));
    jacobian.push([...free.map(() => 0), 1]);
  }
  const inverse = invertSmall(information);
  if (!inverse) return none;
  const product = (
    a: readonly (readonly number[])[],
    b: readonly (readonly number[])[],
  ) =>
    a.map((row) =>
      b.map((other) => row.reduce((sum, x, i) => sum + x * other[i], 0))
    );
  const covariance = product(jacobian, product(jacobian, inverse));
  return { names, covariance, slopes: kept };
}
