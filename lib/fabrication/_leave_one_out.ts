/**
 * How well each piece is foretold from the others.
 *
 * @module
 */
import type { KnownPiece } from "./focal_habit.ts";
import { lineHabit } from "./_line_habit.ts";
import { meanRatio } from "./_mean_ratio.ts";

/** Root mean square errors of both forms, in mm. */
export function leaveOneOut(
  pieces: readonly KnownPiece[],
  stated: boolean,
): { mean: number; line: number } {
  let [mean, line] = [0, 0];
  pieces.forEach(({ radius, focalLength }, left) => {
    const others = pieces.filter((_, i) => i !== left);
    const { value } = meanRatio(others, stated);
    mean += (radius / 2 * (1 + value) - focalLength) ** 2;
    const found = lineHabit(others, stated)?.line;
    line += found === undefined
      ? Infinity
      : (found.intercept + found.slope * radius - focalLength) ** 2;
  });
  const count = pieces.length;
  return { mean: Math.sqrt(mean / count), line: Math.sqrt(line / count) };
}
