/**
 * Sums, differences and multiples of estimates that remember what they share.
 *
 * @module
 */
import { requireFinite } from "./_guards.ts";
import type { Estimate } from "./estimate.ts";

/**
 * Adds multiples of estimates.
 *
 * Contributions of one shared source are added with their signs before they
 * are squared, so that what is common to two results cancels in a difference
 * and adds up fully in a sum. Their own parts are independent and add in
 * quadrature, with the degrees of freedom of Welch and Satterthwaite.
 *
 * @param terms Pairs of a finite factor and an estimate, at least one.
 * @returns The combined estimate.
 * @throws {RangeError} If there is no term or a factor is not finite.
 *
 * @see JCGM 100:2008 (GUM), 5.1.2, 5.2.2 and G.4.1.
 *
 * @example The error of a shared ring cancels in a difference
 * ```ts
 * import { combineEstimates } from "sagbook/statistics/estimate_arithmetic.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const before = { value: 7, own: 3, dof: 4, common: { ring: 2 } };
 * const after = { value: 9, own: 4, dof: 4, common: { ring: 2 } };
 * const change = combineEstimates([[1, after], [-1, before]]);
 * deepEqual([change.value, change.own, change.common], [2, 5, {}]);
 * ```
 */
export function combineEstimates(
  terms: readonly (readonly [factor: number, estimate: Estimate])[],
): Estimate {
  if (terms.length === 0) {
    throw new RangeError(
      "Cannot combine estimates as there must be at least one: current value is 0",
    );
  }
  let [value, squared, spread] = [0, 0, 0];
  const common: Record<string, number> = {};
  for (const [factor, estimate] of terms) {
    requireFinite(factor, "combine estimates", "a factor");
    value += factor * estimate.value;
    const own = (factor * estimate.own) ** 2;
    squared += own;
    spread += own * own / estimate.dof;
    for (const [source, contribution] of Object.entries(estimate.common)) {
      common[source] = (common[source] ?? 0) + factor * contribution;
    }
  }
  for (const [source, contribution] of Object.entries(common)) {
    if (contribution === 0) delete common[source];
  }
  const dof = terms.length === 1
    ? terms[0][1].dof
    : spread > 0
    ? squared * squared / spread
    : Infinity;
  return { value, own: Math.sqrt(squared), dof, common };
}

/**
 * Subtracts one estimate from another; what they share is taken off first.
 *
 * @param minuend The estimate to subtract from.
 * @param subtrahend The estimate to subtract.
 * @returns `minuend` less `subtrahend`.
 *
 * @see JCGM 100:2008 (GUM), 5.2.2.
 *
 * @example
 * ```ts
 * import { subtractEstimates } from "sagbook/statistics/estimate_arithmetic.ts";
 * import { equal } from "node:assert/strict";
 *
 * const a = { value: 5, own: 0, dof: Infinity, common: { flat: 0.5 } };
 * const b = { value: 3, own: 0, dof: Infinity, common: { flat: -0.5 } };
 * equal(subtractEstimates(a, b).common.flat, 1);
 * ```
 */
export function subtractEstimates(
  minuend: Estimate,
  subtrahend: Estimate,
): Estimate {
  return combineEstimates([[1, minuend], [-1, subtrahend]]);
}

/**
 * Adds estimates.
 *
 * @param estimates At least one.
 * @returns Their sum.
 * @throws {RangeError} If there is none.
 *
 * @see JCGM 100:2008 (GUM), 5.1.2 and 5.2.2.
 *
 * @example
 * ```ts
 * import { addEstimates } from "sagbook/statistics/estimate_arithmetic.ts";
 * import { equal } from "node:assert/strict";
 *
 * const a = { value: 5, own: 3, dof: 10, common: {} };
 * const b = { value: 3, own: 4, dof: 10, common: {} };
 * equal(addEstimates([a, b]).own, 5);
 * ```
 */
export function addEstimates(estimates: readonly Estimate[]): Estimate {
  return combineEstimates(estimates.map((estimate) => [1, estimate]));
}

/**
 * Multiplies an estimate by a factor known exactly.
 *
 * @param estimate The estimate.
 * @param factor A finite number.
 * @returns The multiple, with every contribution scaled and its sign kept.
 * @throws {RangeError} If `factor` is not finite.
 *
 * @see JCGM 100:2008 (GUM), 5.1.3.
 *
 * @example
 * ```ts
 * import { scaleEstimate } from "sagbook/statistics/estimate_arithmetic.ts";
 * import { equal } from "node:assert/strict";
 *
 * const a = { value: 5, own: 3, dof: 10, common: { ring: 0.5 } };
 * equal(scaleEstimate(a, -2).common.ring, -1);
 * ```
 */
export function scaleEstimate(estimate: Estimate, factor: number): Estimate {
  return combineEstimates([[factor, estimate]]);
}
