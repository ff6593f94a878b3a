/**
 * Uncertainty, degrees of freedom and interval of an estimate.
 *
 * @module
 */
import { requireProbability } from "./_guards.ts";
import type { Estimate } from "./estimate.ts";
import type { Interval } from "./interval.ts";
import { studentTQuantile } from "./student_t_distribution.ts";

/** An estimate's expanded uncertainty and the interval it makes. */
export interface ExpandedUncertainty {
  /** Combined standard uncertainty. */
  readonly standardUncertainty: number;
  /** Effective degrees of freedom; `Infinity` where all is known. */
  readonly dof: number;
  /** Coverage factor from Student's t at those degrees of freedom. */
  readonly factor: number;
  /** Coverage factor times standard uncertainty. */
  readonly expanded: number;
  /** The interval. */
  readonly interval: Interval;
}

/**
 * Finds the combined standard uncertainty of an estimate.
 *
 * @param estimate The estimate; its sources are independent of one another.
 * @returns The standard uncertainty in the unit of the value.
 *
 * @see JCGM 100:2008 (GUM), 5.1.2.
 *
 * @example
 * ```ts
 * import { standardUncertainty } from "sagbook/statistics/estimate_uncertainty.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(standardUncertainty({ value: 7, own: 3, dof: 4, common: { ring: -4 } }), 5);
 * ```
 */
export function standardUncertainty(estimate: Estimate): number {
  return Math.hypot(estimate.own, ...Object.values(estimate.common));
}

/**
 * Finds the effective degrees of freedom of an estimate.
 *
 * By the formula of Welch and Satterthwaite, shared sources counting as known.
 * Not rounded down.
 *
 * @param estimate The estimate.
 * @returns The degrees of freedom, at least those of its own part; `Infinity`
 * where the own part is 0.
 *
 * @see JCGM 100:2008 (GUM), G.4.1.
 *
 * @example
 * ```ts
 * import { effectiveDof } from "sagbook/statistics/estimate_uncertainty.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(effectiveDof({ value: 7, own: 1, dof: 4, common: { ring: -1 } }).toFixed(9), "16.000000000");
 * ```
 */
export function effectiveDof(estimate: Estimate): number {
  if (estimate.own === 0) return Infinity;
  const ratio = standardUncertainty(estimate) / estimate.own;
  return estimate.dof * ratio ** 4;
}

/**
 * Finds the expanded uncertainty of an estimate and the interval it makes.
 *
 * @param estimate The estimate.
 * @param confidence Probability the interval is to hold, between 0 and 1.
 * @returns Factor, expanded uncertainty and interval.
 * @throws {RangeError} If `confidence` is not between 0 and 1.
 *
 * @see JCGM 100:2008 (GUM), 6.2 and G.4.1.
 *
 * @example
 * ```ts
 * import { expandUncertainty } from "sagbook/statistics/estimate_uncertainty.ts";
 * import { equal } from "node:assert/strict";
 *
 * const estimate = { value: 7, own: 0, dof: Infinity, common: { ring: 1 } };
 * equal(expandUncertainty(estimate, 0.95).factor.toFixed(2), "1.96");
 * ```
 */
export function expandUncertainty(
  estimate: Estimate,
  confidence: number = 0.95,
): ExpandedUncertainty {
  requireProbability(confidence, "expand an uncertainty", "confidence");
  const u = standardUncertainty(estimate);
  const dof = effectiveDof(estimate);
  const factor = studentTQuantile((1 - confidence) / 2, dof, "upper");
  const expanded = factor * u;
  return {
    standardUncertainty: u,
    dof,
    factor,
    expanded,
    interval: {
      low: estimate.value - expanded,
      high: estimate.value + expanded,
    },
  };
}
