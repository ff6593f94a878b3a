/**
 * Sag of a sphere under a gauge's feet.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Feet, SurfaceForm } from "./feet.ts";

/** Which way the ball radius carries the surface to the ball-centre sphere. */
const INWARD: Record<SurfaceForm, 1 | -1> = { concave: -1, convex: 1 };

/**
 * Finds the sag a gauge shows on a sphere of known radius.
 *
 * The ball centres lie on a sphere of radius q: one ball radius smaller than a
 * concave surface, one larger than a convex one. With `r` the radius of the
 * foot circle, `s = r² / (q + √(q² − r²))`. This form keeps its digits however
 * long the radius; the difference `q − √(q² − r²)` loses them.
 *
 * Exact for a sphere; three roundings and a square root, together less than
 * 4e-16 of the sag unless q comes within a few per cent of r.
 *
 * @param radius Radius of curvature in mm, above 0 for either form.
 * @param feet Foot circle and ball size, both radii in mm.
 * @param form Which way the surface curves.
 * @returns The sag in mm, above 0 for either form.
 * @throws {RangeError} If the ball centres' sphere is smaller than the foot
 * circle.
 *
 * @see Euclid, Elements, book III, proposition 35 (intersecting chords).
 *
 * @example A shallow dish under a foot circle of 50 mm radius
 * ```ts
 * import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(50), ballRadius: mm(2.5) };
 * equal(sagFromRadius(mm(2502.75), feet, "concave"), 0.5);
 * ```
 */
export function sagFromRadius(
  radius: Millimetres,
  feet: Feet,
  form: SurfaceForm,
): Millimetres {
  const { circleRadius: r, ballRadius } = feet;
  const q = radius + INWARD[form] * ballRadius;
  if (q < r) {
    throw new RangeError(
      `Cannot find a sag as the sphere of the ball centres must not be smaller than the foot circle radius of ${r} mm: current value is ${q} mm`,
    );
  }
  // (q − r)(q + r) keeps its digits where q comes close to r.
  return millimetres(r * r / (q + Math.sqrt((q - r) * (q + r))));
}
