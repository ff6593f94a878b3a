/**
 * The sag behind a reading taken along a stem that leans.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";

/**
 * Takes the lean of the stem out of a reading.
 *
 * The path along a stem that leans by θ is longer than the sag by 1/cos θ:
 * 0.14 % at 3°, nothing to speak of at 1°. Use it only where the lean is
 * known; an unknown one is a one-sided uncertainty. A stem that was refitted
 * needs a new zero in any case.
 *
 * Leaves out that the tip moves sideways by s tan θ, which matters to second
 * order in s/R.
 *
 * @param reading Reading along the stem in mm.
 * @param leanDegrees Angle between stem and axis in degrees, below 45 either
 * way.
 * @returns The sag in mm.
 * @throws {RangeError} If the lean is 45° or more.
 *
 * @example
 * ```ts
 * import { sagFromLeaningStem } from "sagbook/geometry/leaning_stem.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(sagFromLeaningStem(mm(0.716), 3).toFixed(6), "0.715019");
 * ```
 */
export function sagFromLeaningStem(
  reading: Millimetres,
  leanDegrees: number,
): Millimetres {
  if (!(Math.abs(leanDegrees) < 45)) {
    throw new RangeError(
      `Cannot take out the lean of a stem as it must be below 45 degrees: current value is ${leanDegrees} degrees`,
    );
  }
  return millimetres(reading * Math.cos(leanDegrees * Math.PI / 180));
}
