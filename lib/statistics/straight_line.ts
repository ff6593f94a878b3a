/**
 * A straight line with uncertainty: what every way of fitting one gives, and
 * what can be asked of it.
 *
 * @module
 */
import { requireFinite, requireProbability } from "./_guards.ts";
import type { Interval } from "./interval.ts";
import { studentTQuantile } from "./student_t_distribution.ts";

/** A fitted straight line y = intercept + slope x. */
export interface StraightLine {
  /** Value at x = 0. */
  readonly intercept: number;
  /** Change of y per unit of x. */
  readonly slope: number;
  /** Standard error of the intercept. */
  readonly interceptError: number;
  /** Standard error of the slope. */
  readonly slopeError: number;
  /** Covariance of the two. */
  readonly covariance: number;
  /** Degrees of freedom of the standard errors; `Infinity` if they are known. */
  readonly dof: number;
}

/** The line at one x. */
export interface LinePrediction {
  /** Value on the line. */
  readonly value: number;
  /** Its standard error, with the scatter of a new point where asked for. */
  readonly standardError: number;
  /** Its interval. */
  readonly interval: Interval;
}

/** The x at which the line has a given value. */
export interface InversePrediction {
  /** That x. */
  readonly x: number;
  /** Its standard error to first order. */
  readonly standardError: number;
  /**
   * Fieller's g, the squared ratio of the slope's half interval to the slope;
   * from 1 on the slope may be 0 and x may lie anywhere.
   */
  readonly g: number;
  /** Fieller's interval; undefined where g is 1 or more. */
  readonly interval: Interval | undefined;
}

/** Value of the line, its variance, and the x at which slope and value part. */
function around(
  line: StraightLine,
): { centre: number; value: number; variance: number } {
  const { intercept, slope, interceptError, slopeError, covariance } = line;
  if (slopeError === 0) {
    return { centre: 0, value: intercept, variance: interceptError ** 2 };
  }
  const centre = -covariance / slopeError ** 2;
  return {
    centre,
    value: intercept + slope * centre,
    variance: Math.max(
      0,
      interceptError ** 2 - (covariance / slopeError) ** 2,
    ),
  };
}

/** Refuses a scatter that is negative or no number. */
function requireScatter(scatter: number, action: string): void {
  if (!(scatter >= 0 && scatter < Infinity)) {
    throw new RangeError(
      `Cannot ${action} as the scatter of a new point must be finite and 0 or more: current value is ${scatter}`,
    );
  }
}

/**
 * Predicts the value of a line at one x.
 *
 * @param line A fitted line.
 * @param x Where.
 * @param scatter Standard deviation of a new point about the line: 0 for the
 * line itself, the residual standard deviation for one new point, that over
 * √m for the mean of m.
 * @param confidence Probability that such an interval holds what is predicted,
 * between 0 and 1.
 * @returns Value, standard error and interval by Student's t.
 * @throws {RangeError} If an argument is out of range.
 *
 * @see N. R. Draper, H. Smith, Applied Regression Analysis, chapters 1 and 3.
 *
 * @example
 * ```ts
 * import { predictLine } from "sagbook/statistics/straight_line.ts";
 * import { equal } from "node:assert/strict";
 *
 * const line = {
 *   intercept: 1,
 *   slope: 2,
 *   interceptError: 0.3,
 *   slopeError: 0,
 *   covariance: 0,
 *   dof: Infinity,
 * };
 * const { value, standardError } = predictLine(line, 3, 0.4);
 * equal(value, 7);
 * equal(standardError, 0.5);
 * ```
 */
export function predictLine(
  line: StraightLine,
  x: number,
  scatter: number = 0,
  confidence: number = 0.95,
): LinePrediction {
  const action = "predict from a line";
  requireFinite(x, action, "x");
  requireScatter(scatter, action);
  requireProbability(confidence, action, "confidence");
  const { centre, variance } = around(line);
  const value = line.intercept + line.slope * x;
  const standardError = Math.sqrt(
    variance + ((x - centre) * line.slopeError) ** 2 + scatter ** 2,
  );
  const half = standardError === 0 ? 0 : standardError *
    studentTQuantile((1 - confidence) / 2, line.dof, "upper");
  return {
    value,
    standardError,
    interval: { low: value - half, high: value + half },
  };
}

/**
 * Finds the x at which a line takes a given value, with Fieller's interval.
 *
 * The interval holds every x at which the value could not be told from the
 * line's. It is not symmetric, and has no ends where the slope may be 0.
 *
 * @param line A fitted line whose slope is not 0.
 * @param y The value.
 * @param scatter Standard deviation of the value about the line: 0 for a value
 * fixed beforehand, the residual standard deviation over √m for a mean of m.
 * @param confidence Probability that such an interval holds the x, between 0
 * and 1.
 * @returns The x and its interval.
 * @throws {RangeError} If the slope is 0 or an argument is out of range.
 *
 * @see E. C. Fieller (1954), Journal of the Royal Statistical Society B 16,
 * 175-185; N. R. Draper, H. Smith, Applied Regression Analysis, inverse
 * regression.
 *
 * @example
 * ```ts
 * import { invertLine } from "sagbook/statistics/straight_line.ts";
 * import { equal } from "node:assert/strict";
 *
 * const line = {
 *   intercept: 1,
 *   slope: 2,
 *   interceptError: 0.3,
 *   slopeError: 0,
 *   covariance: 0,
 *   dof: Infinity,
 * };
 * equal(invertLine(line, 7).x, 3);
 * ```
 */
export function invertLine(
  line: StraightLine,
  y: number,
  scatter: number = 0,
  confidence: number = 0.95,
): InversePrediction {
  const action = "invert a line";
  requireFinite(y, action, "the value");
  requireScatter(scatter, action);
  requireProbability(confidence, action, "confidence");
  const { slope, slopeError } = line;
  if (slope === 0) {
    throw new RangeError(
      `Cannot ${action} as its slope must not be 0: current value is ${slope}`,
    );
  }
  const { centre, value, variance } = around(line);
  const t = studentTQuantile((1 - confidence) / 2, line.dof, "upper");
  const rise = y - value;
  const spread = variance + scatter ** 2;
  const g = (t * slopeError / slope) ** 2;
  const distance = rise / slope;
  const first = spread + (distance * slopeError) ** 2;
  const result = {
    x: centre + distance,
    standardError: Math.sqrt(first) / Math.abs(slope),
    g,
  };
  if (g >= 1) return { ...result, interval: undefined };
  const half = t / Math.abs(slope) * Math.sqrt(first - g * spread);
  return {
    ...result,
    interval: {
      low: centre + (distance - half) / (1 - g),
      high: centre + (distance + half) / (1 - g),
    },
  };
}
