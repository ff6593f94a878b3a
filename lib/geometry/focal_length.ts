/**
 * From the radius of curvature to the focal length of a mirror.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";

/**
 * Finds the focal length of a mirror from its radius of curvature.
 *
 * Half the radius: exact for rays close to the axis of a sphere, and for every
 * ray of a paraboloid whose vertex radius this is.
 *
 * @param radius Radius of curvature in mm.
 * @returns The focal length in mm.
 *
 * @example
 * ```ts
 * import { focalLength } from "sagbook/geometry/focal_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(focalLength(mm(3000)), 1500);
 * ```
 */
export function focalLength(radius: Millimetres): Millimetres {
  return millimetres(radius / 2);
}

function checkedZone(zone: number): number {
  if (!(zone >= 0 && zone <= 1)) {
    throw new RangeError(
      `Cannot place the zone of tangency as it must be a fraction of the half diameter from 0 to 1: current value is ${zone}`,
    );
  }
  return zone;
}

/**
 * Finds the vertex radius of the paraboloid that figuring makes of a sphere.
 *
 * The paraboloid that touches the sphere along the zone t·a, which figuring
 * leaves alone, has `R_p = √(R² − t²a²)`, about R − t² S. With t = 0 the edge
 * is worked down and the radius stays; with t = 1 the centre is deepened.
 *
 * @param radius Radius of the polished sphere in mm.
 * @param halfDiameter Half the clear diameter in mm, below `radius`.
 * @param zone Untouched zone t as a fraction of the half diameter, 0 to 1.
 * @returns Vertex radius of the paraboloid in mm.
 * @throws {RangeError} If the zone is outside 0 to 1, or lies beyond the
 * sphere.
 *
 * @see The normal of a paraboloid of vertex radius p meets the axis at p above
 * the foot of the ordinate: p² + (t a)² = R² where both surfaces share it.
 *
 * @example A 300 mm f/5 sphere, focal lengths for three ways of figuring
 * ```ts
 * import { figuredRadius, focalLength } from "sagbook/geometry/focal_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const focus = (zone: number) =>
 *   focalLength(figuredRadius(mm(3000), mm(150), zone)).toFixed(3);
 * deepEqual([0, Math.SQRT1_2, 1].map(focus), ["1500.000", "1499.062", "1498.124"]);
 * ```
 */
export function figuredRadius(
  radius: Millimetres,
  halfDiameter: Millimetres,
  zone: number,
): Millimetres {
  const height = checkedZone(zone) * halfDiameter;
  if (height >= radius) {
    throw new RangeError(
      `Cannot figure a sphere as the zone of tangency must lie inside its radius of ${radius} mm: current value is ${height} mm`,
    );
  }
  return millimetres(Math.sqrt((radius - height) * (radius + height)));
}

/**
 * Finds the sphere to polish so that figuring ends at a wanted vertex radius.
 *
 * The inverse of `figuredRadius`: `R = √(R_p² + t²a²)`.
 *
 * @param figured Wanted vertex radius of the paraboloid in mm.
 * @param halfDiameter Half the clear diameter in mm.
 * @param zone Untouched zone t as a fraction of the half diameter, 0 to 1.
 * @returns Radius of the sphere to polish, in mm.
 * @throws {RangeError} If the zone is outside 0 to 1.
 *
 * @example
 * ```ts
 * import { radiusBeforeFiguring } from "sagbook/geometry/focal_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(radiusBeforeFiguring(mm(12), mm(5), 1), 13);
 * ```
 */
export function radiusBeforeFiguring(
  figured: Millimetres,
  halfDiameter: Millimetres,
  zone: number,
): Millimetres {
  return millimetres(Math.hypot(figured, checkedZone(zone) * halfDiameter));
}

/**
 * Finds the focal length from the image of a distant lamp.
 *
 * `1/f = 1/image + 1/lamp`. A lamp is never the Sun, and a polished or wet
 * surface is never turned to the Sun: its image burns and blinds.
 *
 * @param image Distance from the mirror to the sharp image, in mm, above 0.
 * @param lamp Distance from the mirror to the lamp, in mm, above 0.
 * @returns The focal length in mm.
 * @throws {RangeError} If a distance is not above 0.
 *
 * @see Any text on geometrical optics: the mirror equation.
 *
 * @example A lamp at 100 m puts the image of a 1500 mm mirror 23 mm too far out
 * ```ts
 * import { focalLengthFromLamp } from "sagbook/geometry/focal_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(focalLengthFromLamp(mm(1522.843), mm(100_000)).toFixed(2), "1500.00");
 * ```
 */
export function focalLengthFromLamp(
  image: Millimetres,
  lamp: Millimetres,
): Millimetres {
  for (const distance of [image, lamp]) {
    if (distance <= 0) {
      throw new RangeError(
        `Cannot find a focal length as distances must be above 0 mm: current value is ${distance} mm`,
      );
    }
  }
  return millimetres(image * lamp / (image + lamp));
}

/**
 * Finds how far apart a paraboloid's zones focus when tested at its centre of
 * curvature.
 *
 * The normal of a paraboloid at distance ρ from its axis meets the axis
 * `ρ²/(2R)` farther out than the vertex normal. With a source that moves with
 * the tester that is the shift; with a source that stands still it is twice as
 * much, to first order in ρ²/R².
 *
 * @param vertexRadius Vertex radius of the paraboloid in mm, above 0.
 * @param distance Distance of the zone from the axis in mm.
 * @param sourceMoves Whether the source moves with the tester.
 * @returns The shift from the centre's focus in mm.
 *
 * @example From centre to edge of a 300 mm f/5 mirror
 * ```ts
 * import { zonalShift } from "sagbook/geometry/focal_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(zonalShift(mm(3000), mm(150), true), 3.75);
 * equal(zonalShift(mm(3000), mm(150), false), 7.5);
 * ```
 */
export function zonalShift(
  vertexRadius: Millimetres,
  distance: Millimetres,
  sourceMoves: boolean,
): Millimetres {
  const shift = distance * distance / vertexRadius;
  return millimetres(sourceMoves ? shift / 2 : shift);
}
