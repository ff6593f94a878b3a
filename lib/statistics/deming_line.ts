/**
 * Straight lines with errors in both coordinates, their ratio known.
 *
 * @module
 */
import { requireLength, requirePoints } from "./_guards.ts";
import type { StraightLine } from "./straight_line.ts";

/** A line by Deming's method. */
export interface DemingLine extends StraightLine {
  /** Number of points. */
  readonly points: number;
  /** What was minimised: squared y distances over 1 + slope²/ratio. */
  readonly objective: number;
}

/**
 * Fits a straight line where x and y both have errors, of one variance each.
 *
 * A plain line takes x as exact and, where it is not, comes out too flat. Here
 * only the ratio of the variances must be known; 1 measures distances at right
 * angles to the line. Standard errors and their covariance come from leaving
 * out each point in turn (jackknife), with n - 2 degrees of freedom; they need
 * some ten points to be of use.
 *
 * @param x First coordinate.
 * @param y Second coordinate.
 * @param ratio Variance of the errors of y over that of x, above 0.
 * @returns The line with its standard errors.
 * @throws {RangeError} If lengths differ, there are fewer than four points, the
 * points show no slope, or a number is out of range.
 *
 * @see W. E. Deming, Statistical Adjustment of Data (1943); K. Linnet (1990),
 * Statistics in Medicine 9, 1463-1473 (jackknife).
 *
 * @example
 * ```ts
 * import { fitDemingLine } from "sagbook/statistics/deming_line.ts";
 * import { equal } from "node:assert/strict";
 *
 * const line = fitDemingLine([1, 2, 3, 4, 5], [1.1, 1.9, 3.1, 3.9, 5], 1);
 * equal(line.slope.toFixed(3), "0.982");
 * ```
 */
export function fitDemingLine(
  x: readonly number[],
  y: readonly number[],
  ratio: number,
): DemingLine {
  const action = "fit a line by Deming's method";
  requirePoints(x, y, action);
  requireLength(x.length, 4, action, "points");
  if (!(ratio > 0 && ratio < Infinity)) {
    throw new RangeError(
      `Cannot ${action} as the ratio of variances must be finite and above 0: current value is ${ratio}`,
    );
  }
  const count = x.length;
  const { intercept, slope } = closedForm(x, y, ratio, action);
  const pseudo = x.map((_, left) => {
    const others = (_: number, i: number) => i !== left;
    const part = closedForm(x.filter(others), y.filter(others), ratio, action);
    return {
      intercept: count * intercept - (count - 1) * part.intercept,
      slope: count * slope - (count - 1) * part.slope,
    };
  });
  const meanOf = (key: "intercept" | "slope") =>
    pseudo.reduce((sum, value) => sum + value[key], 0) / count;
  const means = { intercept: meanOf("intercept"), slope: meanOf("slope") };
  const product = (a: "intercept" | "slope", b: "intercept" | "slope") =>
    pseudo.reduce(
      (sum, value) => sum + (value[a] - means[a]) * (value[b] - means[b]),
      0,
    ) / (count * (count - 1));
  let squares = 0;
  for (let i = 0; i < count; i++) {
    squares += (y[i] - intercept - slope * x[i]) ** 2;
  }
  return {
    intercept,
    slope,
    interceptError: Math.sqrt(product("intercept", "intercept")),
    slopeError: Math.sqrt(product("slope", "slope")),
    covariance: product("intercept", "slope"),
    dof: count - 2,
    points: count,
    objective: squares / (ratio + slope * slope),
  };
}

/** The line of least weighted distances. */
function closedForm(
  x: readonly number[],
  y: readonly number[],
  ratio: number,
  action: string,
): { intercept: number; slope: number } {
  const count = x.length;
  const meanX = x.reduce((sum, value) => sum + value, 0) / count;
  const meanY = y.reduce((sum, value) => sum + value, 0) / count;
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const [dx, dy] = [x[i] - meanX, y[i] - meanY];
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  if (xy === 0) {
    throw new RangeError(
      `Cannot ${action} as the points must show a slope: current value of their covariance is ${xy}`,
    );
  }
  const excess = yy - ratio * xx;
  const root = Math.hypot(excess, 2 * Math.sqrt(ratio) * xy);
  // The form without cancellation for either sign of the excess.
  const slope = excess > 0
    ? (excess + root) / (2 * xy)
    : 2 * ratio * xy / (root - excess);
  return { intercept: meanY - slope * meanX, slope };
}
