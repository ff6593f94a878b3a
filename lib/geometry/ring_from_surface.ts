/**
 * The foot circle from a reading on a surface of known radius.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { SurfaceForm } from "./feet.ts";

/**
 * Finds the foot circle's radius from the sag on a test plate.
 *
 * `r² = 2 s q − s²`, with q the radius of the sphere of the ball centres: the
 * plate's radius less the ball's on a concave plate, and with it on a convex
 * one. Exact on a sphere; an error of the sag enters as half its fraction.
 *
 * @param sag Reading on the plate minus the reading on a flat, in mm, above 0.
 * @param knownRadius Radius of curvature of the plate in mm, above 0.
 * @param ballRadius Radius of the balls in mm, 0 for a sharp edge.
 * @param form Which way the plate curves.
 * @returns The foot circle's radius in mm.
 * @throws {RangeError} If the sag is not above 0, or above the radius of the
 * ball centres' sphere.
 *
 * @example
 * ```ts
 * import { circleRadiusFromSurface } from "sagbook/geometry/ring_from_surface.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(circleRadiusFromSurface(mm(1), mm(16), mm(3), "concave"), 5);
 * ```
 */
export function circleRadiusFromSurface(
  sag: Millimetres,
  knownRadius: Millimetres,
  ballRadius: Millimetres,
  form: SurfaceForm,
): Millimetres {
  const q = form === "concave"
    ? knownRadius - ballRadius
    : knownRadius + ballRadius;
  if (sag <= 0) {
    throw new RangeError(
      `Cannot find a foot circle as sag must be above 0 mm: current value is ${sag} mm`,
    );
  }
  if (sag > q) {
    throw new RangeError(
      `Cannot find a foot circle as sag must not exceed the radius of the ball centres' sphere, ${q} mm: current value is ${sag} mm`,
    );
  }
  return millimetres(Math.sqrt(sag * (2 * q - sag)));
}
