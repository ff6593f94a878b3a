/**
 * Sag and glass volume of a whole surface.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import { radiusFromSag } from "./radius_from_sag.ts";
import { sagFromRadius } from "./sag_from_radius.ts";

const sharp = (edge: Millimetres) => ({
  circleRadius: edge,
  ballRadius: millimetres(0),
});

/**
 * Finds the sag of a spherical surface over its half diameter.
 *
 * `S = R − √(R² − a²)`, computed in the form that keeps its digits.
 *
 * @param radius Radius of curvature in mm, at least `halfDiameter`.
 * @param halfDiameter Half the clear diameter of the work, in mm.
 * @returns The sag in mm.
 * @throws {RangeError} If the radius is smaller than the half diameter.
 *
 * @example
 * ```ts
 * import { surfaceSag } from "sagbook/geometry/surface_sag.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(surfaceSag(mm(13), mm(5)), 1);
 * ```
 */
export function surfaceSag(
  radius: Millimetres,
  halfDiameter: Millimetres,
): Millimetres {
  return sagFromRadius(radius, sharp(halfDiameter), "concave");
}

/**
 * Finds the radius of curvature from the sag of the whole surface.
 *
 * @param sag Sag over the half diameter in mm, above 0 and at most
 * `halfDiameter`.
 * @param halfDiameter Half the clear diameter of the work, in mm.
 * @returns The radius of curvature in mm.
 * @throws {RangeError} If the sag is 0 or less, or above `halfDiameter`.
 *
 * @example
 * ```ts
 * import { radiusFromSurfaceSag } from "sagbook/geometry/surface_sag.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(radiusFromSurfaceSag(mm(1), mm(5)), 13);
 * ```
 */
export function radiusFromSurfaceSag(
  sag: Millimetres,
  halfDiameter: Millimetres,
): Millimetres {
  return radiusFromSag(sag, sharp(halfDiameter), "concave");
}

/**
 * Finds the volume between a spherical surface and the plane of its rim.
 *
 * The spherical cap: `V = π S (3a² + S²)/6`, the same as π S² (3R − S)/3.
 *
 * @param radius Radius of curvature in mm, at least `halfDiameter`.
 * @param halfDiameter Half the clear diameter of the work, in mm.
 * @returns The volume in mm³.
 * @throws {RangeError} If the radius is smaller than the half diameter.
 *
 * @see Archimedes, On the Sphere and Cylinder, book II, proposition 2.
 *
 * @example A half sphere of 1 mm
 * ```ts
 * import { capVolume } from "sagbook/geometry/surface_sag.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(capVolume(mm(1), mm(1)), 2 * Math.PI / 3);
 * ```
 */
export function capVolume(
  radius: Millimetres,
  halfDiameter: Millimetres,
): number {
  const sag = surfaceSag(radius, halfDiameter);
  return Math.PI * sag * (3 * halfDiameter * halfDiameter + sag * sag) / 6;
}

/**
 * Finds the glass to grind away to go from one radius to another.
 *
 * The rim stays where it is: the difference of the two caps, computed from the
 * change of sag so that close radii keep their digits. About π a² ΔS / 2.
 *
 * @param from Radius of curvature now, in mm.
 * @param to Radius of curvature wanted, in mm.
 * @param halfDiameter Half the clear diameter of the work, in mm.
 * @returns Volume in mm³; above 0 when a concave surface is deepened, below 0
 * when `to` is the longer radius.
 * @throws {RangeError} If a radius is smaller than the half diameter.
 *
 * @example From 3100 to 3000 mm on a 300 mm disc, in cubic centimetres
 * ```ts
 * import { volumeBetweenRadii } from "sagbook/geometry/surface_sag.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const volume = volumeBetweenRadii(mm(3100), mm(3000), mm(150));
 * equal((volume / 1000).toFixed(3), "4.286");
 * ```
 */
export function volumeBetweenRadii(
  from: Millimetres,
  to: Millimetres,
  halfDiameter: Millimetres,
): number {
  if (from === to) return 0;
  const a = halfDiameter;
  const [now, then] = [surfaceSag(from, a), surfaceSag(to, a)];
  const [nowRoot, thenRoot] = [from, to].map((radius) =>
    Math.sqrt((radius - a) * (radius + a))
  );
  // S = a²/(R + √(R² − a²)), so ΔS follows from ΔR without cancellation.
  const deeper = now * then / (a * a) * (from - to) *
    (1 + (from + to) / (nowRoot + thenRoot));
  return Math.PI / 6 * deeper *
    (3 * a * a + now * now + now * then + then * then);
}
