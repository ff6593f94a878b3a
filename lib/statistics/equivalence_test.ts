/**
 * Equivalence by two one-sided t tests.
 *
 * @module
 */
import {
  requireAllFinite,
  requireDegreesOfFreedom,
  requireFinite,
  requireLength,
  requireProbability,
} from "./_guards.ts";
import type { Interval } from "./interval.ts";
import { studentInterval } from "./student_interval.ts";
import {
  studentTProbability,
  studentTQuantile,
} from "./student_t_distribution.ts";
import { summarise } from "./summary.ts";

/** What two one-sided tests of one difference say. */
export interface EquivalenceResult {
  /** The difference tested. */
  readonly difference: number;
  /** Its standard error. */
  readonly standardError: number;
  /** Degrees of freedom of the standard error. */
  readonly dof: number;
  /** t against the lower bound; undefined where the standard error is 0. */
  readonly tLower: number | undefined;
  /** t against the upper bound; undefined where the standard error is 0. */
  readonly tUpper: number | undefined;
  /** Chance of so high a t if the truth sat on the lower bound. */
  readonly pLower: number;
  /** Chance of so low a t if the truth sat on the upper bound. */
  readonly pUpper: number;
  /** The larger of the two, which decides. */
  readonly p: number;
  /** The two-sided interval of confidence 1 - 2α, which decides alike. */
  readonly interval: Interval;
  /** Whether both tests reject at level α: the truth lies within the bounds. */
  readonly equivalent: boolean;
}

/** A tolerance for a difference: it may lie from `lower` to `upper`. */
export interface EquivalenceBounds {
  /** Least difference allowed. */
  readonly lower: number;
  /** Largest difference allowed. */
  readonly upper: number;
}

/**
 * Tests whether a difference lies within bounds, by two one-sided t tests.
 *
 * The question "is it close enough?" needs its own test: finding no significant
 * difference shows only that too little was measured. Both hypotheses, below
 * the lower bound and above the upper one, must be rejected, each at `alpha`;
 * the chance of a false "equivalent" is then at most `alpha`.
 *
 * With a standard error of 0 there is no t, and the difference is compared with
 * the bounds as it stands.
 *
 * @param estimate Difference, its standard error (0 or more) and the degrees of
 * freedom of that (above 0, `Infinity` if known).
 * @param bounds Tolerance in the unit of the difference, lower below upper.
 * @param alpha Level of each test, between 0 and 1.
 * @returns Both tests and the interval that decides alike.
 * @throws {RangeError} If an argument is out of range.
 *
 * @see D. J. Schuirmann (1987), Journal of Pharmacokinetics and
 * Biopharmaceutics 15, 657-680.
 *
 * @example
 * ```ts
 * import { equivalenceTest } from "sagbook/statistics/equivalence_test.ts";
 * import { equal } from "node:assert/strict";
 *
 * const estimate = { difference: 0.1, standardError: 0.2, dof: 8 };
 * const result = equivalenceTest(estimate, { lower: -1, upper: 1 }, 0.05);
 * equal(result.equivalent, true);
 * ```
 */
export function equivalenceTest(
  estimate: {
    readonly difference: number;
    readonly standardError: number;
    readonly dof: number;
  },
  bounds: EquivalenceBounds,
  alpha: number = 0.05,
): EquivalenceResult {
  const action = "test equivalence";
  const { difference, standardError, dof } = estimate;
  requireFinite(difference, action, "the difference");
  requireFinite(bounds.lower, action, "the lower bound");
  requireFinite(bounds.upper, action, "the upper bound");
  requireProbability(alpha, action, "alpha");
  requireDegreesOfFreedom(dof, action);
  if (!(standardError >= 0 && standardError < Infinity)) {
    throw new RangeError(
      `Cannot ${action} as the standard error must be finite and 0 or more: current value is ${standardError}`,
    );
  }
  if (bounds.lower >= bounds.upper) {
    throw new RangeError(
      `Cannot ${action} as the lower bound must be below the upper bound: current values are ${bounds.lower} and ${bounds.upper}`,
    );
  }
  if (standardError === 0) {
    const pLower = difference > bounds.lower ? 0 : 1;
    const pUpper = difference < bounds.upper ? 0 : 1;
    const p = Math.max(pLower, pUpper);
    return {
      difference,
      standardError,
      dof,
      tLower: undefined,
      tUpper: undefined,
      pLower,
      pUpper,
      p,
      interval: { low: difference, high: difference },
      equivalent: p === 0,
    };
  }
  const tLower = (difference - bounds.lower) / standardError;
  const tUpper = (difference - bounds.upper) / standardError;
  const pLower = studentTProbability(tLower, dof, "upper");
  const pUpper = studentTProbability(tUpper, dof, "lower");
  const p = Math.max(pLower, pUpper);
  const half = standardError * studentTQuantile(alpha, dof, "upper");
  return {
    difference,
    standardError,
    dof,
    tLower,
    tUpper,
    pLower,
    pUpper,
    p,
    interval: { low: difference - half, high: difference + half },
    equivalent: p < alpha,
  };
}

/**
 * Tests whether the mean of `second` less `first` over pairs lies within bounds.
 *
 * @param first First member of each pair.
 * @param second Second member of each pair, in the same order.
 * @param bounds Tolerance in the unit of the values.
 * @param alpha Level of each one-sided test, between 0 and 1.
 * @returns Both tests and the interval that decides alike.
 * @throws {RangeError} If the lists differ in length, there are fewer than two
 * pairs or a value is not finite.
 *
 * @see D. J. Schuirmann (1987), Journal of Pharmacokinetics and
 * Biopharmaceutics 15, 657-680.
 *
 * @example
 * ```ts
 * import { pairedEquivalence } from "sagbook/statistics/equivalence_test.ts";
 * import { equal } from "node:assert/strict";
 *
 * const result = pairedEquivalence(
 *   [10.0, 20.1, 30.0],
 *   [10.1, 20.0, 30.1],
 *   { lower: -1, upper: 1 },
 * );
 * equal(result.equivalent, true);
 * ```
 */
export function pairedEquivalence(
  first: readonly number[],
  second: readonly number[],
  bounds: EquivalenceBounds,
  alpha: number = 0.05,
): EquivalenceResult {
  const action = "test equivalence of pairs";
  if (first.length !== second.length) {
    throw new RangeError(
      `Cannot ${action} as both lists must have the same length: current values are ${first.length} and ${second.length}`,
    );
  }
  requireAllFinite(first, action, "first value");
  requireAllFinite(second, action, "second value");
  const { mean, standardError, dof } = studentInterval(
    first.map((value, pair) => second[pair] - value),
  );
  return equivalenceTest(
    { difference: mean, standardError, dof },
    bounds,
    alpha,
  );
}

/**
 * Tests whether the mean of `second` less that of `first` lies within bounds,
 * the two lists being independent.
 *
 * @param first Values of the first group, at least two.
 * @param second Values of the second group, at least two.
 * @param bounds Tolerance in the unit of the values.
 * @param spread `"equal"` pools the two variances; `"unequal"` keeps them apart
 * with the degrees of freedom of Welch and Satterthwaite.
 * @param alpha Level of each one-sided test, between 0 and 1.
 * @returns Both tests and the interval that decides alike.
 * @throws {RangeError} If a list has fewer than two values or one is not finite.
 *
 * @see D. J. Schuirmann (1987), Journal of Pharmacokinetics and
 * Biopharmaceutics 15, 657-680.
 *
 * @example
 * ```ts
 * import { twoSampleEquivalence } from "sagbook/statistics/equivalence_test.ts";
 * import { equal } from "node:assert/strict";
 *
 * const bounds = { lower: -1, upper: 1 };
 * const result = twoSampleEquivalence([1, 5, 9], [2, 6, 9], bounds, "equal");
 * equal(result.equivalent, false);
 * ```
 */
export function twoSampleEquivalence(
  first: readonly number[],
  second: readonly number[],
  bounds: EquivalenceBounds,
  spread: "equal" | "unequal",
  alpha: number = 0.05,
): EquivalenceResult {
  const action = "test equivalence of two groups";
  requireLength(first.length, 2, action, "first values");
  requireLength(second.length, 2, action, "second values");
  const [a, b] = [summarise(first), summarise(second)];
  const [n, m] = [a.count, b.count];
  const [va, vb] = [a, b].map((group) => (group.standardDeviation ?? 0) ** 2);
  const difference = b.mean - a.mean;
  const pooled = ((n - 1) * va + (m - 1) * vb) / (n + m - 2);
  const squared = spread === "equal"
    ? pooled * (1 / n + 1 / m)
    : va / n + vb / m;
  const dof = spread === "equal" || squared === 0
    ? n + m - 2
    : squared ** 2 / ((va / n) ** 2 / (n - 1) + (vb / m) ** 2 / (m - 1));
  return equivalenceTest(
    { difference, standardError: Math.sqrt(squared), dof },
    bounds,
    alpha,
  );
}
