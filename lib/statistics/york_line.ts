/**
 * Straight lines with known errors in both coordinates.
 *
 * @module
 */
import { requireLength, requirePoints } from "./_guards.ts";
import { chiSquareProbability } from "./chi_square_distribution.ts";
import type { StraightLine } from "./straight_line.ts";

/** The errors of the points of a line. */
export interface PointErrors {
  /** Standard uncertainty of each x, above 0. */
  readonly x: readonly number[];
  /** Standard uncertainty of each y, above 0. */
  readonly y: readonly number[];
  /** Correlation of the two errors of each point; 0 by default. */
  readonly correlation?: readonly number[];
}

/** A line by York's method; its standard errors take the errors as known. */
export interface YorkLine extends StraightLine {
  /** Number of points. */
  readonly points: number;
  /** Sum of squared distances over their variances. */
  readonly chiSquare: number;
  /** Degrees of freedom of `chiSquare`, n - 2. */
  readonly chiSquareDof: number;
  /** Chance of so large a sum if line and errors are right. */
  readonly p: number;
  /**
   * √(chi-square per degree of freedom): what the standard errors are
   * multiplied by where the errors of the points are known only up to a factor.
   */
  readonly scale: number;
  /** The points moved onto the line, each as its errors make likely. */
  readonly adjusted: {
    readonly x: readonly number[];
    readonly y: readonly number[];
  };
}

/**
 * Fits a straight line where each point has its own known errors.
 *
 * Minimises the squared distances of the points from the line, each coordinate
 * in units of its uncertainty. Standard errors are those of York and others
 * (2004), taken at the adjusted points. Converges to 1e-14 of the slope.
 *
 * @param x First coordinate.
 * @param y Second coordinate.
 * @param errors Standard uncertainty of each coordinate of each point.
 * @returns The line with its standard errors.
 * @throws {RangeError} If lengths differ, there are fewer than three points, the
 * points do not settle on a line, or a number is out of range.
 *
 * @see D. York, N. M. Evensen, M. Lopez Martinez, J. De Basabe Delgado (2004),
 * American Journal of Physics 72, 367-375.
 *
 * @example
 * ```ts
 * import { fitYorkLine } from "sagbook/statistics/york_line.ts";
 * import { equal } from "node:assert/strict";
 *
 * const errors = { x: [0.1, 0.1, 0.1, 0.1], y: [0.2, 0.2, 0.2, 0.2] };
 * const line = fitYorkLine([1, 2, 3, 4], [2.1, 3.9, 6, 8.1], errors);
 * equal(line.slope.toFixed(2), "2.01");
 * ```
 */
export function fitYorkLine(
  x: readonly number[],
  y: readonly number[],
  errors: PointErrors,
): YorkLine {
  const action = "fit a line by York's method";
  requirePoints(x, y, action);
  const count = x.length;
  requireLength(count, 3, action, "points");
  const correlation = errors.correlation ?? x.map(() => 0);
  checkErrors(errors.x, "x", count, action);
  checkErrors(errors.y, "y", count, action);
  if (
    correlation.length !== count || !correlation.every((r) => Math.abs(r) < 1)
  ) {
    throw new RangeError(
      `Cannot ${action} as each of ${count} points must have a correlation between -1 and 1: current values are ${
        correlation.join(", ")
      }`,
    );
  }
  const weightX = errors.x.map((u) => 1 / (u * u));
  const weightY = errors.y.map((u) => 1 / (u * u));
  /** Weights, weighted means and deviations for a slope. */
  const about = (slope: number) => {
    const alpha = x.map((_, i) => Math.sqrt(weightX[i] * weightY[i]));
    const weight = x.map((_, i) =>
      weightX[i] * weightY[i] /
      (weightX[i] + slope * slope * weightY[i] -
        2 * slope * correlation[i] * alpha[i])
    );
    const total = weight.reduce((sum, w) => sum + w, 0);
    const meanX = weight.reduce((sum, w, i) => sum + w * x[i], 0) / total;
    const meanY = weight.reduce((sum, w, i) => sum + w * y[i], 0) / total;
    const beta = x.map((_, i) => {
      const [u, v] = [x[i] - meanX, y[i] - meanY];
      return weight[i] *
        (u / weightY[i] + slope * v / weightX[i] -
          (slope * u + v) * correlation[i] / alpha[i]);
    });
    return { weight, total, meanX, meanY, beta };
  };
  let slope = startingSlope(x, y, action);
  let settled = false;
  for (let step = 0; step < 500 && !settled; step++) {
    const { weight, meanX, meanY, beta } = about(slope);
    let [above, below] = [0, 0];
    for (let i = 0; i < count; i++) {
      above += weight[i] * beta[i] * (y[i] - meanY);
      below += weight[i] * beta[i] * (x[i] - meanX);
    }
    const next = above / below;
    settled = Math.abs(next - slope) <= 1e-15 * Math.abs(next);
    if (step > 100 && Math.abs(next - slope) <= 1e-12 * Math.abs(next)) {
      settled = true;
    }
    slope = next;
  }
  if (!settled || !Number.isFinite(slope)) {
    throw new RangeError(
      `Cannot ${action} as the points must settle on a line: current value of the slope is ${slope}`,
    );
  }
  const { weight, total, meanX, meanY, beta } = about(slope);
  const intercept = meanY - slope * meanX;
  const adjustedX = beta.map((b) => meanX + b);
  const adjustedMean = weight.reduce((sum, w, i) => sum + w * adjustedX[i], 0) /
    total;
  const spread = weight.reduce(
    (sum, w, i) => sum + w * (adjustedX[i] - adjustedMean) ** 2,
    0,
  );
  const slopeVariance = 1 / spread;
  const chiSquare = weight.reduce(
    (sum, w, i) => sum + w * (y[i] - intercept - slope * x[i]) ** 2,
    0,
  );
  const chiSquareDof = count - 2;
  return {
    intercept,
    slope,
    interceptError: Math.sqrt(1 / total + adjustedMean ** 2 * slopeVariance),
    slopeError: Math.sqrt(slopeVariance),
    covariance: -adjustedMean * slopeVariance,
    dof: Infinity,
    points: count,
    chiSquare,
    chiSquareDof,
    p: chiSquareProbability(chiSquare, chiSquareDof, "upper"),
    scale: Math.sqrt(chiSquare / chiSquareDof),
    adjusted: {
      x: adjustedX,
      y: adjustedX.map((value) => intercept + slope * value),
    },
  };
}

/** The slope of the plain line. */
function startingSlope(
  x: readonly number[],
  y: readonly number[],
  action: string,
): number {
  const meanX = x.reduce((sum, value) => sum + value, 0) / x.length;
  const meanY = y.reduce((sum, value) => sum + value, 0) / y.length;
  let [xx, xy] = [0, 0];
  for (let i = 0; i < x.length; i++) {
    xx += (x[i] - meanX) ** 2;
    xy += (x[i] - meanX) * (y[i] - meanY);
  }
  if (xx === 0) {
    throw new RangeError(
      `Cannot ${action} as x must take more than one value: current value is ${
        x[0]
      }`,
    );
  }
  return xy / xx;
}

/** Refuses errors that are missing or not above 0. */
function checkErrors(
  values: readonly number[],
  name: string,
  count: number,
  action: string,
): void {
  if (values.length !== count) {
    throw new RangeError(
      `Cannot ${action} as each of ${count} points must have an uncertainty of ${name}: current value is ${values.length}`,
    );
  }
  for (const value of values) {
    if (!(value > 0 && value < Infinity)) {
      throw new RangeError(
        `Cannot ${action} as every uncertainty of ${name} must be finite and above 0: current value is ${value}`,
      );
    }
  }
}
