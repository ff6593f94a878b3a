/**
 * Coverage intervals of a sample that stands for a distribution.
 *
 * @module
 */
import { sortedTails } from "./_order_statistics.ts";

/** A lower and an upper end. */
export interface CoverageInterval {
  /** Lower end. */
  readonly lower: number;
  /** Upper end. */
  readonly upper: number;
}

/** The two intervals of one sample. */
export interface CoverageIntervals {
  /** The shortest interval that holds the share. */
  readonly shortest: CoverageInterval;
  /** The interval that leaves the same share out on both sides. */
  readonly symmetric: CoverageInterval;
}

/**
 * Finds the shortest and the probabilistically symmetric coverage interval.
 *
 * With M values in order and q the whole number nearest to p M, the interval
 * from rank r to rank r + q is the shortest one for the r that makes it so,
 * and the symmetric one for r nearest to (M − q)/2. Only the two tails are
 * sorted.
 *
 * @param values At least 1/(1 − p) finite numbers, in any order; left as they
 * are.
 * @param confidence The share p to hold, above 0 and below 1.
 * @returns Both intervals.
 * @throws {RangeError} If there are too few values for the share, or the share
 * is not between 0 and 1.
 *
 * @see JCGM 101:2008, 7.7.2 to 7.7.4.
 *
 * @example An exponential-like sample: the shortest interval starts at its end
 * ```ts
 * import { coverageIntervals } from "sagbook/uncertainty/coverage_interval.ts";
 * import { equal } from "node:assert/strict";
 *
 * const values = Float64Array.from({ length: 100 }, (_, i) => 1.1 ** i);
 * const { shortest, symmetric } = coverageIntervals(values, 0.9);
 * equal(shortest.lower, 1);
 * equal(symmetric.lower, 1.1 ** 4);
 * ```
 */
export function coverageIntervals(
  values: Float64Array,
  confidence: number = 0.95,
): CoverageIntervals {
  if (!(confidence > 0 && confidence < 1)) {
    throw new RangeError(
      `Cannot find a coverage interval as the confidence must be above 0 and below 1: current value is ${confidence}`,
    );
  }
  const count = values.length;
  const span = Math.floor(confidence * count + 0.5);
  const choices = count - span;
  if (choices < 1 || span < 1) {
    throw new RangeError(
      `Cannot find a coverage interval as there must be more than ${
        Math.ceil(1 / (1 - confidence))
      } values: current value is ${count}`,
    );
  }
  const { lows, highs } = sortedTails(values, choices);
  let best = 0;
  let width = Infinity;
  for (let r = 0; r < choices; r++) {
    const candidate = highs[r] - lows[r];
    if (candidate < width) [best, width] = [r, candidate];
  }
  const middle = Math.max(0, Math.floor((choices + 1) / 2) - 1);
  return {
    shortest: { lower: lows[best], upper: highs[best] },
    symmetric: { lower: lows[middle], upper: highs[middle] },
  };
}
