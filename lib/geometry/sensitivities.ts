/**
 * How the radius answers small changes of what it is computed from.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Feet, SurfaceForm } from "./feet.ts";
import { radiusFromSag } from "./radius_from_sag.ts";
import { sagFromRadius } from "./sag_from_radius.ts";

/** Partial derivatives of the radius; all are mm of radius per mm. */
export interface RadiusSensitivities {
  /** Per mm of sag: `1/2 − r²/(2s²)`, negative. */
  readonly sag: number;
  /** Per mm of foot circle radius: `r/s`. */
  readonly circleRadius: number;
  /** Per mm of ball radius: 1 on concave work, −1 on convex. */
  readonly ballRadius: 1 | -1;
}

/**
 * Finds how the radius of curvature changes with the sag, the foot circle and
 * the balls.
 *
 * With R = (r² + s²)/(2s) ± b the partial derivatives are
 * ∂R/∂s = 1/2 − r²/(2s²), ∂R/∂r = r/s and ∂R/∂b = ±1. They are exact at the
 * point; over a change Δs the straight line errs by about R (Δs/s)².
 *
 * @param sag Sag in mm, above 0 and at most `feet.circleRadius`.
 * @param feet Foot circle and ball size, both radii in mm.
 * @param form Which way the surface curves.
 * @returns The three partial derivatives.
 * @throws {RangeError} If `sag` is 0 or less, or above `feet.circleRadius`.
 *
 * @see JCGM 100:2008, 5.1.3 (sensitivity coefficients).
 *
 * @example One micrometre of zero error under a 60 mm foot circle
 * ```ts
 * import { radiusSensitivities } from "sagbook/geometry/sensitivities.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(60), ballRadius: mm(6.35) };
 * const { sag } = radiusSensitivities(mm(0.6), feet, "concave");
 * equal((sag * 0.001).toFixed(1), "-5.0");
 * ```
 */
export function radiusSensitivities(
  sag: Millimetres,
  feet: Feet,
  form: SurfaceForm,
): RadiusSensitivities {
  radiusFromSag(sag, feet, form); // refuses what has no radius
  const { circleRadius: r } = feet;
  const ratio = r / sag;
  return {
    sag: (1 - ratio * ratio) / 2,
    circleRadius: ratio,
    ballRadius: form === "concave" ? 1 : -1,
  };
}

/**
 * Turns a small change of radius into the change of sag that shows it.
 *
 * The inverse of ∂R/∂s at the sag of `radius`, without its sign: a tolerance
 * on the radius as the gauge sees it. For a shallow surface it is close to
 * `change · r²/(2R²)`, which leaves the ball out and is short by about 2b/R.
 *
 * @param change A change or tolerance of radius in mm, at least 0 and small
 * against the radius.
 * @param radius Radius of curvature in mm, above 0.
 * @param feet Foot circle and ball size, both radii in mm.
 * @param form Which way the surface curves.
 * @returns The change of sag in mm, at least 0.
 * @throws {RangeError} If `change` is negative, or the sphere is too small for
 * the feet.
 *
 * @example Ten millimetres of radius at 3000 mm
 * ```ts
 * import { sagForRadiusChange } from "sagbook/geometry/sensitivities.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(60), ballRadius: mm(6.35) };
 * const sag = sagForRadiusChange(mm(10), mm(3000), feet, "concave");
 * equal(sag.toFixed(5), "0.00201");
 * ```
 */
export function sagForRadiusChange(
  change: Millimetres,
  radius: Millimetres,
  feet: Feet,
  form: SurfaceForm,
): Millimetres {
  if (change < 0) {
    throw new RangeError(
      `Cannot turn a change of radius into sag as it must be at least 0 mm: current value is ${change} mm`,
    );
  }
  const sag = sagFromRadius(radius, feet, form);
  return millimetres(
    change / Math.abs(radiusSensitivities(sag, feet, form).sag),
  );
}
