/**
 * Where the sag will be after more work.
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";
import type { Interval } from "../statistics/interval.ts";
import type { ProgressFit } from "./fit_progress.ts";
import { tailLimit } from "./_known_and_found.ts";

/**
 * Predicts the sag of the surface after more work with the same setting.
 *
 * The uncertainty holds the line's, the scatter of the work still to be done,
 * and by id what the sessions share. It is that of the surface itself; a
 * session that finds it adds its own.
 *
 * @param fit The line of progress.
 * @param more Work beyond the last session, 0 or more, in the fit's unit.
 * @returns The sag in mm.
 * @throws {RangeError} If `more` is negative or not finite.
 *
 * @example
 * ```ts
 * import { fitProgress } from "sagbook/fabrication/fit_progress.ts";
 * import { predictProgress } from "sagbook/fabrication/predict_progress.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sag = (value: number) => ({ value, own: 0.001, dof: Infinity, common: {} });
 * const fit = fitProgress([[
 *   { session: "S1", work: 0, sag: sag(3.60) },
 *   { session: "S2", work: 10, sag: sag(3.64) },
 *   { session: "S3", work: 20, sag: sag(3.68) },
 * ]]);
 * equal(predictProgress(fit, 5).value.toFixed(6), "3.700000");
 * ```
 */
export function predictProgress(fit: ProgressFit, more: number): Estimate {
  if (!(more >= 0 && more < Infinity)) {
    throw new RangeError(
      `Cannot predict progress as the work to come must be 0 or more and finite: current value is ${more}`,
    );
  }
  const { level, rate, covariance, scatter: { model, variance = 0 } } = fit;
  const grown = model === "accumulates"
    ? variance * more
    : more > 0
    ? variance
    : 0;
  const squared = level.own ** 2 + 2 * more * covariance +
    (more * rate.own) ** 2 + grown;
  const common: Record<string, number> = {};
  for (const [id, shift] of Object.entries(level.common)) {
    const sum = shift + more * (rate.common[id] ?? 0);
    if (sum !== 0) common[id] = sum;
  }
  return {
    value: level.value + more * rate.value,
    own: Math.sqrt(Math.max(0, squared)),
    dof: level.dof,
    common,
  };
}

/**
 * Finds the interval of a quantity that few sessions and a shared error tell.
 *
 * Student's limit of its own part and the normal limit of the shared part add
 * in quadrature, which keeps its promise also where the sessions are few.
 *
 * @param estimate A rate, a level or a prediction.
 * @param confidence Probability that such an interval holds the truth, between
 * 0 and 1.
 * @returns The interval, in the estimate's unit.
 *
 * @example
 * ```ts
 * import { progressLimits } from "sagbook/fabrication/predict_progress.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { high } = progressLimits({ value: 0, own: 1, dof: Infinity, common: {} });
 * equal(high.toFixed(2), "1.96");
 * ```
 */
export function progressLimits(
  estimate: Estimate,
  confidence: number = 0.95,
): Interval {
  const half = tailLimit(estimate, (1 - confidence) / 2);
  return { low: estimate.value - half, high: estimate.value + half };
}
