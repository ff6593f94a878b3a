/**
 * Constants of the range and standard deviation of a normal sample.
 *
 * @module
 */
import { integrate } from "./_gauss_legendre.ts";
import { logGamma } from "./_special_functions.ts";
import { normalProbability } from "./normal_distribution.ts";
import { normalRangeProbability } from "./studentized_range.ts";

const means = new Map<number, number>();
const deviations = new Map<number, number>();

/**
 * Finds d₂, the mean range of a standard normal sample.
 *
 * The integral of 1 - Φⁿ - (1 - Φ)ⁿ; accuracy 1e-12.
 *
 * @param count Sample size, a whole number of at least 2.
 * @returns The mean range in standard deviations.
 * @throws {RangeError} If `count` is not a whole number of at least 2.
 *
 * @see L. H. C. Tippett (1925), Biometrika 17, 364-387; ASTM MNL 7.
 *
 * @example
 * ```ts
 * import { rangeMean } from "sagbook/statistics/range_constants.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(rangeMean(5).toFixed(3), "2.326");
 * ```
 */
export function rangeMean(count: number): number {
  requireSample(count, "find a mean range");
  const known = means.get(count);
  if (known !== undefined) return known;
  const value = 2 * integrate(
    (x) => {
      const above = normalProbability(x, "upper");
      return -Math.expm1(count * Math.log1p(-above)) - above ** count;
    },
    [0, 1, 2, 3, 4, 5, 6, 8, 10],
  );
  means.set(count, value);
  return value;
}

/**
 * Finds d₃, the standard deviation of the range of a standard normal sample.
 *
 * From the integral of twice the range times the chance to exceed it; accuracy
 * 1e-10.
 *
 * @param count Sample size, a whole number of at least 2.
 * @returns The standard deviation of the range in standard deviations.
 * @throws {RangeError} If `count` is not a whole number of at least 2.
 *
 * @see L. H. C. Tippett (1925), Biometrika 17, 364-387; ASTM MNL 7.
 *
 * @example
 * ```ts
 * import { rangeDeviation } from "sagbook/statistics/range_constants.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(rangeDeviation(5).toFixed(3), "0.864");
 * ```
 */
export function rangeDeviation(count: number): number {
  requireSample(count, "find the deviation of a range");
  const known = deviations.get(count);
  if (known !== undefined) return known;
  const square = integrate(
    (w) => 2 * w * (1 - normalRangeProbability(w, count)),
    [0, 1, 2, 3, 4, 5, 6, 8, 10, 13, 17],
  );
  const value = Math.sqrt(square - rangeMean(count) ** 2);
  deviations.set(count, value);
  return value;
}

/**
 * Finds d₂* for a single range: the root mean square range of a standard
 * normal sample, by which one range is turned into a standard deviation.
 *
 * @param count Sample size, a whole number of at least 2.
 * @returns The root mean square range in standard deviations.
 * @throws {RangeError} If `count` is not a whole number of at least 2.
 *
 * @see A. J. Duncan, Quality Control and Industrial Statistics, table D3.
 *
 * @example
 * ```ts
 * import { rangeMeanOfOne } from "sagbook/statistics/range_constants.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal((1 / rangeMeanOfOne(3)).toFixed(4), "0.5231");
 * ```
 */
export function rangeMeanOfOne(count: number): number {
  return Math.hypot(rangeMean(count), rangeDeviation(count));
}

/**
 * Finds c₄, the mean standard deviation (divisor n - 1) of a standard normal
 * sample.
 *
 * @param count Sample size, a whole number of at least 2.
 * @returns The mean standard deviation, below 1.
 * @throws {RangeError} If `count` is not a whole number of at least 2.
 *
 * @see ASTM MNL 7; NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.
 *
 * @example
 * ```ts
 * import { deviationMean } from "sagbook/statistics/range_constants.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(deviationMean(5).toFixed(4), "0.9400");
 * ```
 */
export function deviationMean(count: number): number {
  requireSample(count, "find a mean standard deviation");
  return Math.sqrt(2 / (count - 1)) *
    Math.exp(logGamma(count / 2) - logGamma((count - 1) / 2));
}

/** Refuses a sample without a range. */
function requireSample(count: number, action: string): void {
  if (!(Number.isInteger(count) && count >= 2)) {
    throw new RangeError(
      `Cannot ${action} as the sample size must be a whole number of at least 2: current value is ${count}`,
    );
  }
}
