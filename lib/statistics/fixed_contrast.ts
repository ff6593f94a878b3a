/**
 * Contrasts of a mixed model's coefficients.
 *
 * @module
 */
import { requireFinite, requireProbability } from "./_guards.ts";
import { satterthwaiteDof } from "./_satterthwaite.ts";
import type { Interval } from "./interval.ts";
import type { MixedModelFit } from "./mixed_model.ts";
import {
  studentTProbability,
  studentTQuantile,
} from "./student_t_distribution.ts";

/** A weighted sum of coefficients. */
export interface FixedContrast {
  /** Its value. */
  readonly estimate: number;
  /** Its standard error. */
  readonly standardError: number;
  /** Satterthwaite's degrees of freedom of the standard error. */
  readonly dof: number;
  /** Interval by Student's t. */
  readonly interval: Interval;
  /** Chance of so large a t, either way, if the truth were 0. */
  readonly p: number;
}

/**
 * Finds a weighted sum of a fit's coefficients with its interval.
 *
 * The degrees of freedom take account of how well each variance is known. Where
 * one of them is on the zero boundary it counts as known to be 0, and the
 * interval can be a little short.
 *
 * @param fit A fitted model.
 * @param weights Weight of each coefficient by the name of its column; columns
 * not named weigh 0.
 * @param confidence Probability that such an interval holds the truth, between
 * 0 and 1.
 * @returns The contrast; undefined where the fit has no scatter to judge it
 * by, or where it weighs a column that follows from others.
 * @throws {RangeError} If a weight is not finite, a name is unknown or
 * `confidence` is not between 0 and 1.
 *
 * @see F. G. Giesbrecht, J. C. Burns (1985), Biometrics 41, 477-486.
 *
 * @example Edge less centre, from three zeroings
 * ```ts
 * import { fixedContrast } from "sagbook/statistics/fixed_contrast.ts";
 * import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
 * import { levelColumns } from "sagbook/statistics/design_columns.ts";
 * import { equal } from "node:assert/strict";
 *
 * const zones = ["centre", "edge", "centre", "edge", "centre", "edge"];
 * const fit = fitMixedModel({
 *   response: [700, 702, 705, 708, 701, 705],
 *   fixed: levelColumns("", zones),
 *   random: [{ name: "zeroing", labels: [1, 1, 2, 2, 3, 3] }],
 * });
 * const contrast = fixedContrast(fit, { edge: 1, centre: -1 })!;
 * equal(contrast.estimate.toFixed(6), "3.000000");
 * equal(contrast.dof.toFixed(3), "2.000");
 * ```
 */
export function fixedContrast(
  fit: MixedModelFit,
  weights: Readonly<Record<string, number>>,
  confidence: number = 0.95,
): FixedContrast | undefined {
  const action = "find a contrast";
  requireProbability(confidence, action, "confidence");
  for (const [name, weight] of Object.entries(weights)) {
    requireFinite(weight, action, `the weight of ${name}`);
    if (!fit.fixed.some((effect) => effect.name === name)) {
      throw new RangeError(
        `Cannot ${action} as a weight must name one of ${
          fit.fixed.map((effect) => effect.name).join(", ")
        }: current value is ${name}`,
      );
    }
  }
  if (fit.fixedCovariance.length === 0) return undefined;
  const independent = fit.fixed.filter(({ estimate }) =>
    estimate !== undefined
  );
  const list = independent.map(({ name }) => weights[name] ?? 0);
  const weighsAnAlias = fit.fixed.some(({ name, estimate }) =>
    estimate === undefined && (weights[name] ?? 0) !== 0
  );
  if (weighsAnAlias) return undefined;
  let [estimate, variance, size] = [0, 0, 0];
  list.forEach((weight, i) => {
    estimate += weight * (independent[i].estimate ?? 0);
    list.forEach((other, j) => {
      const part = weight * other * fit.fixedCovariance[i][j];
      variance += part;
      size += Math.abs(part);
    });
  });
  if (!(variance > 1e-12 * size)) return undefined;
  const standardError = Math.sqrt(variance);
  const dof = satterthwaiteDof(list, fit.fixedCovariance, fit.curvature);
  if (dof === undefined) return undefined;
  const half = standardError *
    studentTQuantile((1 - confidence) / 2, dof, "upper");
  return {
    estimate,
    standardError,
    dof,
    interval: { low: estimate - half, high: estimate + half },
    p: 2 *
      studentTProbability(Math.abs(estimate) / standardError, dof, "upper"),
  };
}
