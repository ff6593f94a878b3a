/**
 * The focal length a ground radius will become.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import {
  studentTProbability,
  studentTQuantile,
} from "../statistics/student_t_distribution.ts";
import { predictLine } from "../statistics/straight_line.ts";
import type { FocalHabit } from "./focal_habit.ts";

/** A focal length foretold, in mm. */
export interface FocalLengthPrediction {
  /** The focal length. */
  readonly value: number;
  /** Standard uncertainty of the piece's own focal length. */
  readonly standardUncertainty: number;
  /** Degrees of freedom. */
  readonly dof: number;
  /** The prediction interval. */
  readonly interval: Interval;
  /** Probability the interval is meant to hold. */
  readonly confidence: number;
}

/** What was excess over a typical uncertainty counts in full. */
function ownPart(own: number, typical: number, scale: number): number {
  return scale * Math.min(own, typical) ** 2 +
    Math.max(0, own * own - typical * typical);
}

/**
 * Predicts the focal length of a finished piece from its ground radius.
 *
 * By the form that the habit chose, with the habit's own uncertainty, the
 * scatter between pieces, this radius's uncertainty and that of a later
 * measurement as the shop makes them; Student's t with the degrees of freedom
 * of the pieces. Exact for the later measurement where errors are normal and of
 * equal size; over shops of every kind, the choice of form included, it holds
 * the focal length itself in 93 % or more (`tests/studies`).
 *
 * @param habit The shop's habit.
 * @param radius Radius at the end of grinding, in mm.
 * @param radiusUncertainty Its standard uncertainty in mm; that of a typical
 * piece of the shop where left out, or where the shop states none.
 * @param confidence Probability such an interval holds the focal length,
 * between 0 and 1.
 * @param radiusDof Degrees of freedom of that uncertainty, endless unless
 * stated; where they leave fewer to the whole than the pieces do, these count.
 * @returns The prediction.
 * @throws {RangeError} If the radius is not above 0 or its uncertainty below 0.
 *
 * @example
 * ```ts
 * import { focalHabit } from "sagbook/fabrication/focal_habit.ts";
 * import { predictFocalLength } from "sagbook/fabrication/predict_focal_length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const habit = focalHabit([
 *   { radius: 2400, focalLength: 1198.8 },
 *   { radius: 3000, focalLength: 1497 },
 *   { radius: 2000, focalLength: 999.5 },
 * ]);
 * const { value, dof } = predictFocalLength(habit, 2600);
 * equal(value.toFixed(2), "1298.48");
 * equal(dof, 2);
 * ```
 */
export function predictFocalLength(
  habit: FocalHabit,
  radius: number,
  radiusUncertainty?: number,
  confidence: number = 0.95,
  radiusDof: number = Infinity,
): FocalLengthPrediction {
  const action = "predict a focal length";
  if (!(radius > 0 && radius < Infinity)) {
    throw new RangeError(
      `Cannot ${action} as the radius must be above 0 mm and finite: current value is ${radius} mm`,
    );
  }
  if (radiusUncertainty !== undefined && !(radiusUncertainty >= 0)) {
    throw new RangeError(
      `Cannot ${action} as the radius's uncertainty must be 0 mm or more: current value is ${radiusUncertainty} mm`,
    );
  }
  // Where the shop states none, its scatter holds the usual one.
  const own = habit.stated ? radiusUncertainty : undefined;
  const found = habit.used === "mean ratio"
    ? byRatio(habit, radius, own)
    : byLine(habit, radius, own);
  const { value, standardUncertainty } = found;
  const slope = habit.used === "mean ratio"
    ? value / radius
    : habit.line!.line.slope;
  const dof = effectiveDof(found, slope * (own ?? 0), radiusDof);
  const half = standardUncertainty *
    studentTQuantile((1 - confidence) / 2, dof, "upper");
  return {
    value,
    standardUncertainty,
    dof,
    interval: { low: value - half, high: value + half },
    confidence,
  };
}

/** By Welch and Satterthwaite (JCGM 100:2008, G.4.1), never above the habit's. */
function effectiveDof(
  { standardUncertainty, dof }: { standardUncertainty: number; dof: number },
  ofRadius: number,
  radiusDof: number,
): number {
  const whole = standardUncertainty ** 2;
  const own = Math.min(whole, ofRadius ** 2);
  const spread = (whole - own) ** 2 / dof + own ** 2 / radiusDof;
  return Math.min(dof, whole ** 2 / spread);
}

function byRatio(
  { mean, pieces }: FocalHabit,
  radius: number,
  own: number | undefined,
): { value: number; standardUncertainty: number; dof: number } {
  const { value: ratio, standardError, between, scale, typical, dof } = mean;
  // The later measurement is as good as the shop's usual one.
  const focus = rootMeanSquare(
    pieces.map((p) => 2 * p.focalLengthUncertainty / p.radius),
  );
  const ownRatio = own === undefined
    ? typical
    : Math.hypot(focus, (1 + ratio) * own / radius);
  const squared = standardError ** 2 + scale * between ** 2 +
    ownPart(ownRatio, typical, scale);
  return {
    value: radius / 2 * (1 + ratio),
    standardUncertainty: radius / 2 * Math.sqrt(squared),
    dof,
  };
}

function byLine(
  { line: found, pieces }: FocalHabit,
  radius: number,
  own: number | undefined,
): { value: number; standardUncertainty: number; dof: number } {
  const { line, between, scale, typicalFocus, dof } = found!;
  const usual = typicalOf(pieces.map((p) => p.radiusUncertainty / p.radius)) *
    radius;
  const typical = Math.hypot(typicalFocus, line.slope * usual);
  const focus = rootMeanSquare(pieces.map((p) => p.focalLengthUncertainty));
  const next = Math.hypot(focus, line.slope * (own ?? usual));
  const scatter = Math.sqrt(
    scale * between ** 2 + ownPart(next, typical, scale),
  );
  const { value, standardError } = predictLine(line, radius, scatter);
  return { value, standardUncertainty: standardError, dof };
}

/** The harmonic mean of squares, as weights see them. */
function typicalOf(values: readonly number[]): number {
  return Math.sqrt(
    values.length / values.reduce((sum, u) => sum + 1 / (u * u), 0),
  );
}

function rootMeanSquare(values: readonly number[]): number {
  return Math.hypot(...values) / Math.sqrt(values.length);
}

/**
 * Finds the probability that a predicted focal length lands within tolerance.
 *
 * @param prediction The prediction.
 * @param target Wanted focal length in mm.
 * @param tolerance How far off is still good, in mm, above 0.
 * @returns The probability, 0 to 1.
 * @throws {RangeError} If the tolerance is not above 0.
 *
 * @example
 * ```ts
 * import { landingProbability } from "sagbook/fabrication/predict_focal_length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const prediction = { value: 1500, standardUncertainty: 2, dof: Infinity };
 * equal(landingProbability(prediction, 1500, 4).toFixed(3), "0.954");
 * ```
 */
export function landingProbability(
  prediction: Pick<
    FocalLengthPrediction,
    "value" | "standardUncertainty" | "dof"
  >,
  target: number,
  tolerance: number,
): number {
  if (!(tolerance > 0)) {
    throw new RangeError(
      `Cannot find a probability of landing as the tolerance must be above 0 mm: current value is ${tolerance} mm`,
    );
  }
  const { value, standardUncertainty: u, dof } = prediction;
  const off = value - target;
  if (u === 0) return Math.abs(off) <= tolerance ? 1 : 0;
  return studentTProbability((tolerance - off) / u, dof) -
    studentTProbability((-tolerance - off) / u, dof);
}
