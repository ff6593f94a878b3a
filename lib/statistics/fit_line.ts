/**
 * Straight lines by least squares, x being free of error.
 *
 * @module
 */
import { requireLength, requirePoints } from "./_guards.ts";
import { fProbability } from "./f_distribution.ts";
import type { StraightLine } from "./straight_line.ts";

/** A line by least squares. */
export interface FittedLine extends StraightLine {
  /** Number of points. */
  readonly points: number;
  /** Weighted sum of squared residuals. */
  readonly residualSquares: number;
  /** Weighted sum of squares that the line explains. */
  readonly lineSquares: number;
  /** Standard deviation of a point of weight 1 about the line. */
  readonly residualDeviation: number;
  /**
   * Share of the sum of squares explained: about the mean, or about 0 for a
   * line through the origin; undefined where there is nothing to explain.
   */
  readonly rSquared: number | undefined;
  /** Ratio of explained to residual mean square; undefined without residuals. */
  readonly f: number | undefined;
  /** Chance of so large a ratio if the slope were 0. */
  readonly p: number | undefined;
}

/** How a line is fitted. */
export interface LineOptions {
  /** Weight of each point, above 0: the inverse of its variance. */
  readonly weights?: readonly number[];
  /**
   * Whether `weights` are the inverse variances themselves (`"known"`), or only
   * their ratios, the scale coming from the residuals (`"relative"`, default).
   */
  readonly scale?: "relative" | "known";
  /** Whether the line goes through the origin. */
  readonly throughOrigin?: boolean;
}

/**
 * Fits a straight line by plain or weighted least squares.
 *
 * Sums are taken about the weighted means, so that a line far from the origin
 * keeps its digits.
 *
 * @param x Where each point lies, without error; not all equal.
 * @param y Its value.
 * @param options Weights, their meaning, and whether through the origin.
 * @returns The line with its standard errors.
 * @throws {RangeError} If lengths differ, there are not more points than
 * coefficients, all x are equal, or a number is out of range.
 *
 * @see N. R. Draper, H. Smith, Applied Regression Analysis, chapters 1 and 2;
 * NIST Statistical Reference Datasets, linear least squares.
 *
 * @example
 * ```ts
 * import { fitLine } from "sagbook/statistics/fit_line.ts";
 * import { equal } from "node:assert/strict";
 *
 * const line = fitLine([0, 1, 2, 3], [1, 3, 4, 6]);
 * equal(line.slope.toFixed(6), "1.600000");
 * equal(line.intercept.toFixed(6), "1.100000");
 * ```
 */
export function fitLine(
  x: readonly number[],
  y: readonly number[],
  options: LineOptions = {},
): FittedLine {
  const action = "fit a line";
  const { weights, scale = "relative", throughOrigin = false } = options;
  const count = x.length;
  const dof = count - (throughOrigin ? 1 : 2);
  requirePoints(x, y, action);
  requireLength(count, throughOrigin ? 2 : 3, action, "points");
  if (weights) {
    if (weights.length !== count) {
      throw new RangeError(
        `Cannot ${action} as there must be one weight for each of ${count} points: current value is ${weights.length}`,
      );
    }
    for (const weight of weights) {
      if (!(weight > 0 && weight < Infinity)) {
        throw new RangeError(
          `Cannot ${action} as every weight must be finite and above 0: current value is ${weight}`,
        );
      }
    }
  }
  const weightOf = (i: number) => weights ? weights[i] : 1;
  let [total, sumX, sumY] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    total += weightOf(i);
    sumX += weightOf(i) * x[i];
    sumY += weightOf(i) * y[i];
  }
  const [meanX, meanY] = throughOrigin ? [0, 0] : [sumX / total, sumY / total];
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const [dx, dy] = [x[i] - meanX, y[i] - meanY];
    xx += weightOf(i) * dx * dx;
    xy += weightOf(i) * dx * dy;
    yy += weightOf(i) * dy * dy;
  }
  if (!(xx > 0)) {
    throw new RangeError(
      `Cannot ${action} as x must take more than one value: current value is ${
        x[0]
      }`,
    );
  }
  const slope = xy / xx;
  let residualSquares = 0;
  for (let i = 0; i < count; i++) {
    residualSquares += weightOf(i) *
      (y[i] - meanY - slope * (x[i] - meanX)) ** 2;
  }
  const variance = residualSquares / dof;
  const unit = scale === "known" ? 1 : variance;
  const lineSquares = slope * xy;
  const f = variance > 0 ? lineSquares / variance : undefined;
  return {
    intercept: throughOrigin ? 0 : meanY - slope * meanX,
    slope,
    interceptError: throughOrigin
      ? 0
      : Math.sqrt(unit * (1 / total + meanX * meanX / xx)),
    slopeError: Math.sqrt(unit / xx),
    covariance: throughOrigin ? 0 : -unit * meanX / xx,
    dof: scale === "known" ? Infinity : dof,
    points: count,
    residualSquares,
    lineSquares,
    residualDeviation: Math.sqrt(variance),
    rSquared: yy > 0 ? 1 - residualSquares / yy : undefined,
    f,
    p: f === undefined ? undefined : fProbability(f, 1, dof, "upper"),
  };
}
