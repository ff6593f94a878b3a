/**
 * Is the radius within its tolerance, as far as some sets can tell?
 *
 * @module
 */
import type { Feet, SurfaceForm } from "../geometry/feet.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { millimetres } from "../units/length.ts";
import { intervalsOfMean } from "./_mean_interval.ts";
import type { Decide } from "./scatter_model.ts";

/** A tolerance of the radius, and the ring that sees it; lengths in mm. */
export interface RadiusQuestion {
  /** The wanted radius, above 0. */
  readonly target: number;
  /** Largest good departure from it, either way, above 0. */
  readonly tolerance: number;
  /** Feet of the ring. */
  readonly feet: Feet;
  /** Which way the surface curves. */
  readonly form: SurfaceForm;
}

/**
 * Makes the rule that decides whether a radius lies within its tolerance.
 *
 * The radius rests on the mean sag of each zeroing, zones taken together;
 * Student's interval over zeroings is widened by what two roundings may hide.
 * `within` when the 90 % interval lies inside the tolerance (two one-sided
 * tests at 5 %), `outside` when the 95 % interval lies beyond it. What all
 * readings share (ring size, gauge scale, flat) widens both by the gauge's
 * `common`, which more readings do not lessen.
 *
 * @param question Target, tolerance and ring.
 * @returns The rule; it leaves fewer than two sets undecided.
 * @throws {RangeError} If the tolerance is not above 0 or reaches a radius
 * that the ring cannot stand on.
 *
 * @see Schuirmann (1987), J. Pharmacokin. Biopharm. 15, 657-680.
 *
 * @example Three equal zeroings on target, tolerance 30 mm
 * ```ts
 * import { decideRadius } from "sagbook/repeatability/decide_radius.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(60), ballRadius: mm(3) };
 * const decide = decideRadius(
 *   { target: 2520.84, tolerance: 30, feet, form: "concave" },
 * );
 * const sets = ["1", "2", "3"].map((zeroing) => ({
 *   label: zeroing, zeroing, diameterDegrees: 0, occasion: 0,
 *   cells: [{ sag: 0.715, readings: 1 }],
 * }));
 * equal(decide(sets, { step: 0.001 }), "within");
 * equal(decide(sets.slice(1, 2), { step: 0.001 }), "undecided");
 * ```
 */
export function decideRadius(question: RadiusQuestion): Decide {
  const { target, tolerance, feet, form } = question;
  if (!(tolerance > 0 && tolerance < target)) {
    throw new RangeError(
      `Cannot decide on a radius as the tolerance must be above 0 and below the target of ${target} mm: current value is ${tolerance} mm`,
    );
  }
  const sagOf = (radius: number): number =>
    sagFromRadius(millimetres(radius), feet, form);
  const [least, most] = [sagOf(target + tolerance), sagOf(target - tolerance)];
  return (sets, { step, common = 0 }) => {
    const found = intervalsOfMean(meansOf(sets), step, common);
    if (!found) return "undecided";
    const { interval90, interval95 } = found;
    if (interval90.low >= least && interval90.high <= most) return "within";
    return interval95.high < least || interval95.low > most
      ? "outside"
      : "undecided";
  };
}

/** Mean of every zeroing, its cells counting equally. */
function meansOf(sets: Parameters<Decide>[0]): number[] {
  const sums = new Map<string, { sum: number; count: number }>();
  for (const { zeroing, cells } of sets) {
    const entry = sums.get(zeroing) ?? { sum: 0, count: 0 };
    for (const { sag } of cells) {
      entry.sum += sag;
      entry.count++;
    }
    sums.set(zeroing, entry);
  }
  return [...sums.values()].map(({ sum, count }) => sum / count);
}
