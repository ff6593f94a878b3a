/**
 * Later focal length against ground radius as a straight line.
 *
 * @module
 */
import { fitYorkLine } from "../statistics/york_line.ts";
import { betweenPieces } from "./_between_pieces.ts";
import type { KnownPiece } from "./focal_habit.ts";
import type { HabitLine } from "./focal_habit_forms.ts";

/** Fits the line with errors in both; undefined where the points give none. */
export function lineHabit(
  pieces: readonly KnownPiece[],
  stated: boolean,
): HabitLine | undefined {
  const x = pieces.map(({ radius }) => radius);
  const y = pieces.map(({ focalLength }) => focalLength);
  const fit = (variance: number) =>
    fitYorkLine(x, y, {
      x: pieces.map(({ radiusUncertainty }) => radiusUncertainty),
      y: pieces.map(({ focalLengthUncertainty: u }) =>
        Math.sqrt(u * u + variance)
      ),
    });
  try {
    const dof = pieces.length - 2;
    const { variance, scale } = betweenPieces(
      (v) => fit(v).chiSquare,
      dof,
      Math.min(...pieces.map(({ radiusUncertainty: u }) => u * u)),
      stated,
    );
    const found = fit(variance);
    const root = Math.sqrt(scale);
    return {
      line: {
        intercept: found.intercept,
        slope: found.slope,
        interceptError: root * found.interceptError,
        slopeError: root * found.slopeError,
        covariance: scale * found.covariance,
        dof,
      },
      dof,
      between: Math.sqrt(variance),
      scale,
      typicalFocus: Math.sqrt(
        pieces.length /
          pieces.reduce((sum, p) => sum + 1 / p.focalLengthUncertainty ** 2, 0),
      ),
    };
  } catch (error) {
    // All radii equal, or points that settle on no line: no line, no habit.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
