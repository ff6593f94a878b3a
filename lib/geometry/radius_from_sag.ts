/**
 * Radius of curvature from a sag reading.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Feet, SurfaceForm } from "./feet.ts";

/** Which way the ball radius carries the ball-centre sphere to the surface. */
const OUTWARD: Record<SurfaceForm, 1 | -1> = { concave: 1, convex: -1 };

/**
 * Finds the radius of curvature of a sphere from the sag a gauge shows.
 *
 * The ball centres lie on a sphere of radius q: one ball radius smaller than a
 * concave surface, one larger than a convex one. Across that sphere
 * `s (2q − s) = r²`, with `r` the radius of the foot circle.
 *
 * Exact for a sphere. On any other surface it gives the sphere that touches
 * the probe and the feet, which is not the vertex sphere. Rounding costs less
 * than 1e-15 q.
 *
 * @param sag Reading minus the reading on a flat, in mm; above 0 for either
 * form, and at most `feet.circleRadius`.
 * @param feet Foot circle and ball size, both radii in mm.
 * @param form Which way the surface curves. No default: the wrong form moves
 * the answer by two ball radii.
 * @returns The radius of curvature in mm, above 0 for either form.
 * @throws {RangeError} If `sag` is 0 or less, or above `feet.circleRadius`.
 *
 * @see Euclid, Elements, book III, proposition 35 (intersecting chords).
 *
 * @example A shallow dish under a foot circle of 50 mm radius
 * ```ts
 * import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(50), ballRadius: mm(2.5) };
 * equal(radiusFromSag(mm(0.5), feet, "concave"), 2502.75);
 * ```
 */
export function radiusFromSag(
  sag: Millimetres,
  feet: Feet,
  form: SurfaceForm,
): Millimetres {
  const { circleRadius: r, ballRadius } = feet;
  if (sag <= 0) {
    throw new RangeError(
      `Cannot find a radius as sag must be above 0 mm: current value is ${sag} mm`,
    );
  }
  if (sag > r) {
    throw new RangeError(
      `Cannot find a radius as sag must not exceed the foot circle radius of ${r} mm: current value is ${sag} mm`,
    );
  }
  const q = (r * r / sag + sag) / 2;
  return millimetres(q + OUTWARD[form] * ballRadius);
}
