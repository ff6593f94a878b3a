/**
 * Degrees of freedom of a contrast of coefficients.
 *
 * @module
 */
import type { MixedModelCurvature } from "./mixed_model.ts";

/**
 * Twice the squared variance of the contrast over the variance of that
 * variance, which follows from the covariance of the estimated components.
 * Undefined where the likelihood has no proper peak.
 *
 * @see A. Giesbrecht, J. C. Burns (1985), Biometrics 41, 477-486.
 */
export function satterthwaiteDof(
  weights: readonly number[],
  covariance: readonly (readonly number[])[],
  { covariance: ofVariances, slopes }: MixedModelCurvature,
): number | undefined {
  if (ofVariances.length === 0) return undefined;
  const form = (matrix: readonly (readonly number[])[]) => {
    let sum = 0;
    weights.forEach((a, i) =>
      weights.forEach((b, j) => sum += a * b * matrix[i][j])
    );
    return sum;
  };
  const variance = form(covariance);
  const gradient = slopes.map(form);
  let spread = 0;
  gradient.forEach((a, i) =>
    gradient.forEach((b, j) => spread += a * b * ofVariances[i][j])
  );
  return spread > 0 ? 2 * variance ** 2 / spread : undefined;
}
