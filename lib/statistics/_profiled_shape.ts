/**
 * The likelihood of a mixed model, residual variance profiled out, as a shape
 * to be minimised.
 *
 * @module
 */
import type { LikelihoodPieces, MixedLikelihood } from "./_mixed_likelihood.ts";
import type { LocalShape } from "./_newton_minimum.ts";

/**
 * Slope and curvature, in the ratios, of m ln S + ln|.|, whose minimum is the
 * highest likelihood.
 */
export function inRatios(
  { squares, traces, scores, weights, crossTraces }: LikelihoodPieces,
  m: number,
): { slopes: number[]; curvature: number[][] } {
  const slopes = traces.map((trace, k) => trace - m * scores[k] / squares);
  const curvature = weights.map((row, k) =>
    row.map((weight, l) => {
      const across = m * weight / squares;
      const cross = crossTraces ? crossTraces[k][l] : across;
      return 2 * across - cross - m * scores[k] * scores[l] / squares ** 2;
    })
  );
  return { slopes, curvature };
}

/** The same in the scaled relative standard deviations of the free factors. */
export function profiledShape(
  likelihood: MixedLikelihood,
  ratios: readonly number[],
  x: readonly number[],
  free: readonly number[],
  perLevel: readonly number[],
): LocalShape | undefined {
  const pieces = likelihood.pieces(ratios);
  if (!pieces) return undefined;
  const m = likelihood.weightOfSquares;
  const { slopes, curvature } = inRatios(pieces, m);
  const gradient = free.map((k, i) => 2 * x[i] * slopes[k] / perLevel[k]);
  const hessian = free.map((k, i) =>
    free.map((l, j) =>
      4 * x[i] * x[j] * curvature[k][l] / (perLevel[k] * perLevel[l]) +
      (i === j ? 2 * slopes[k] / perLevel[k] : 0)
    )
  );
  return {
    value: m * Math.log(pieces.squares) + pieces.logDeterminant,
    gradient,
    hessian,
    exact: pieces.crossTraces !== undefined,
  };
}
