/**
 * The radius to leave grinding at, for a wanted focal length.
 *
 * @module
 */
import { findRoot } from "../numerics/root.ts";
import type { Interval } from "../statistics/interval.ts";
import type { FocalHabit } from "./focal_habit.ts";
import {
  type FocalLengthPrediction,
  landingProbability,
  predictFocalLength,
} from "./predict_focal_length.ts";

/** A radius to aim for, in mm. */
export interface GroundRadiusAim {
  /** The radius whose predicted focal length is the wanted one. */
  readonly radius: number;
  /** What it is predicted to become. */
  readonly prediction: FocalLengthPrediction;
  /** Chance of landing within tolerance from there; needs a tolerance. */
  readonly probability?: number;
  /**
   * Radii from which the chance of landing within tolerance is at least the
   * wanted one; absent where no radius gives it.
   */
  readonly window?: Interval;
}

/** What is wanted. */
export interface GroundRadiusWish {
  /** Wanted focal length, in mm. */
  readonly focalLength: number;
  /** How far off is still good, in mm. */
  readonly tolerance?: number;
  /** Wanted chance of landing within tolerance; 0.9 unless stated. */
  readonly probability?: number;
  /** Standard uncertainty the ground radius will have, in mm. */
  readonly radiusUncertainty?: number;
}

/**
 * Finds the radius at which to leave grinding.
 *
 * @param habit The shop's habit.
 * @param wish Focal length, tolerance, and the chance that is wanted.
 * @returns The radius, the chance from there, and the radii that will do.
 * @throws {RangeError} If a length is not above 0, or the habit's line falls.
 *
 * @example
 * ```ts
 * import { focalHabit } from "sagbook/fabrication/focal_habit.ts";
 * import { groundRadiusFor } from "sagbook/fabrication/ground_radius_for.ts";
 * import { equal } from "node:assert/strict";
 *
 * const habit = focalHabit([
 *   { radius: 2400, focalLength: 1198.8 },
 *   { radius: 3000, focalLength: 1497 },
 *   { radius: 2000, focalLength: 999.5 },
 * ]);
 * equal(groundRadiusFor(habit, { focalLength: 1298.48 }).radius.toFixed(0), "2600");
 * ```
 */
export function groundRadiusFor(
  habit: FocalHabit,
  wish: GroundRadiusWish,
): GroundRadiusAim {
  const { focalLength, tolerance, probability = 0.9, radiusUncertainty: u } =
    wish;
  if (!(focalLength > 0 && focalLength < Infinity)) {
    throw new RangeError(
      `Cannot find a radius to aim for as the focal length must be above 0 mm and finite: current value is ${focalLength} mm`,
    );
  }
  const line = habit.used === "straight line" ? habit.line?.line : undefined;
  if (line !== undefined && !(line.slope > 0)) {
    throw new RangeError(
      `Cannot find a radius to aim for as a longer radius must give a longer focal length: current value of the slope is ${line.slope}`,
    );
  }
  const radius = line === undefined
    ? 2 * focalLength / (1 + habit.mean.value)
    : (focalLength - line.intercept) / line.slope;
  const prediction = predictFocalLength(habit, radius, u);
  if (tolerance === undefined) return { radius, prediction };
  const chance = (at: number): number =>
    landingProbability(
      predictFocalLength(habit, at, u),
      focalLength,
      tolerance,
    );
  const best = chance(radius);
  if (!(best > probability)) return { radius, prediction, probability: best };
  const end = (side: 1 | -1): number => {
    let far = radius + side * 2 * tolerance;
    while (chance(far) > probability) far += side * 2 * tolerance;
    return findRoot((at) => chance(at) - probability, radius, far);
  };
  return {
    radius,
    prediction,
    probability: best,
    window: { low: end(-1), high: end(1) },
  };
}
