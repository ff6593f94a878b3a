/**
 * Surfaces of revolution that are conics, and how far they leave the sphere.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";

/** `√(1 − (1 + K) ρ²/R²)`, the part that the sag and its slope share. */
function root(
  distance: Millimetres,
  vertexRadius: Millimetres,
  conic: number,
): number {
  const ratio = distance / vertexRadius;
  const inside = 1 - (1 + conic) * ratio * ratio;
  if (!(inside >= 0)) {
    throw new RangeError(
      `Cannot find the sag of a conic as the distance must lie inside the surface of vertex radius ${vertexRadius} mm and conic constant ${conic}: current value is ${distance} mm`,
    );
  }
  return Math.sqrt(inside);
}

/**
 * Finds the sag of a conic of revolution.
 *
 * `z = ρ² / (R [1 + √(1 − (1 + K) ρ²/R²)])`: K = 0 sphere, −1 paraboloid,
 * between them an ellipse on its long axis, above 0 the oblate one. The form
 * keeps its digits near the vertex.
 *
 * @param distance Distance ρ from the axis in mm.
 * @param vertexRadius Vertex radius R in mm, not 0; a negative one gives a
 * negative sag.
 * @param conic Conic constant K.
 * @returns The sag in mm.
 * @throws {RangeError} If the distance lies outside the surface.
 *
 * @see ISO 10110-12 (the clause from memory; the formula is in public optics
 * documentation).
 *
 * @example
 * ```ts
 * import { conicSag } from "sagbook/geometry/conic.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(conicSag(mm(100), mm(1600), -1), 3.125);
 * equal(conicSag(mm(5), mm(13), 0), 1);
 * ```
 */
export function conicSag(
  distance: Millimetres,
  vertexRadius: Millimetres,
  conic: number,
): Millimetres {
  const w = root(distance, vertexRadius, conic);
  return millimetres(distance * distance / (vertexRadius * (1 + w)));
}

/**
 * Finds the slope of a conic of revolution, `dz/dρ = (ρ/R) / √(1 − (1+K) ρ²/R²)`.
 *
 * @param distance Distance ρ from the axis in mm.
 * @param vertexRadius Vertex radius R in mm, not 0.
 * @param conic Conic constant K.
 * @returns The slope, without a unit; infinite at the equator of a closed
 * conic.
 * @throws {RangeError} If the distance lies outside the surface.
 *
 * @example
 * ```ts
 * import { conicSlope } from "sagbook/geometry/conic.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(conicSlope(mm(100), mm(1600), -1), 0.0625);
 * ```
 */
export function conicSlope(
  distance: Millimetres,
  vertexRadius: Millimetres,
  conic: number,
): number {
  return distance / vertexRadius / root(distance, vertexRadius, conic);
}

/**
 * Finds the sag of a conic less that of the sphere of the same vertex radius.
 *
 * Computed without subtracting the two: to leading order K ρ⁴/(8R³), negative
 * for a paraboloid, which is the shallower of the two.
 *
 * @param distance Distance ρ from the axis in mm.
 * @param vertexRadius Vertex radius R in mm, not 0.
 * @param conic Conic constant K.
 * @returns The departure in mm.
 * @throws {RangeError} If the distance lies outside either surface.
 *
 * @example
 * ```ts
 * import { conicDeparture } from "sagbook/geometry/conic.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(conicDeparture(mm(100), mm(1600), -1).toFixed(6), "-0.003058");
 * equal(conicDeparture(mm(100), mm(1600), 0), 0);
 * ```
 */
export function conicDeparture(
  distance: Millimetres,
  vertexRadius: Millimetres,
  conic: number,
): Millimetres {
  const w = root(distance, vertexRadius, conic);
  const sphere = root(distance, vertexRadius, 0);
  const square = distance * distance;
  const numerator = conic * square * square / vertexRadius ** 3;
  return millimetres(
    numerator === 0 ? 0 : numerator / ((w + sphere) * (1 + w) * (1 + sphere)),
  );
}
