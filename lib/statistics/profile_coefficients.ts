/**
 * Profile-likelihood intervals of a mixed model's coefficients.
 *
 * @module
 */
import { findRoot } from "../numerics/root.ts";
import { requireProbability } from "./_guards.ts";
import { chiSquareQuantile } from "./chi_square_distribution.ts";
import { fitMixedModel } from "./fit_mixed_model.ts";
import type { MixedModel } from "./mixed_model.ts";
import type { ProfileInterval } from "./profile_intervals.ts";

/**
 * Finds intervals for the coefficients of a mixed model by the profile of the
 * full likelihood.
 *
 * An alternative to the estimate ± t·standard error; a little short with few
 * levels, as the full likelihood takes no account of the coefficients it fits.
 *
 * @param model Readings, fixed columns and random factors.
 * @param confidence Probability that such an interval is meant to hold,
 * between 0 and 1.
 * @returns One interval for each column that does not follow from earlier ones.
 * @throws {RangeError} If the model cannot be fitted or `confidence` is not
 * between 0 and 1.
 *
 * @see D. A. Harville (1977), Journal of the American Statistical Association
 * 72, 320-338.
 *
 * @example
 * ```ts
 * import { profileCoefficients } from "sagbook/statistics/profile_coefficients.ts";
 * import { interceptColumn } from "sagbook/statistics/design_columns.ts";
 * import { equal } from "node:assert/strict";
 *
 * const [mean] = profileCoefficients({
 *   response: [1, 2, 5, 6, 3, 4],
 *   fixed: [interceptColumn(6)],
 *   random: [{ name: "zeroing", labels: ["a", "a", "b", "b", "c", "c"] }],
 * });
 * equal(mean.estimate.toFixed(6), "3.500000");
 * ```
 */
export function profileCoefficients(
  model: MixedModel,
  confidence: number = 0.95,
): ProfileInterval[] {
  requireProbability(confidence, "profile a likelihood", "confidence");
  const fit = fitMixedModel(model, "full");
  const { logLikelihood: highest } = fit;
  if (fit.status !== "fitted" || highest === undefined) return [];
  const allowed = Math.sqrt(chiSquareQuantile(confidence, 1));
  const intervals: ProfileInterval[] = [];
  fit.fixed.forEach(({ name, estimate, standardError: error }, position) => {
    if (estimate === undefined || !error) return;
    const { values } = model.fixed[position];
    const rest = model.fixed.filter((_, other) => other !== position);
    const excess = (coefficient: number) => {
      const response = Float64Array.from(
        model.response,
        (reading, i) => reading - coefficient * values[i],
      );
      const held = fitMixedModel({ ...model, response, fixed: rest }, "full");
      const lost = 2 * (highest - (held.logLikelihood ?? -Infinity));
      return Math.sqrt(Math.max(0, lost)) - allowed;
    };
    const end = (side: 1 | -1) => {
      let reach = allowed * error;
      while (excess(estimate + side * reach) < 0) reach *= 2;
      return findRoot(excess, estimate, estimate + side * reach, {
        tolerance: 1e-9 * reach,
      });
    };
    intervals.push({
      name,
      estimate,
      interval: { low: end(-1), high: end(1) },
    });
  });
  return intervals;
}
