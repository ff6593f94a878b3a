/**
 * The focal length that geometry alone foretells.
 *
 * @module
 */
import { figuredRadius } from "../geometry/focal_length.ts";
import type { Interval } from "../statistics/interval.ts";
import type { Millimetres } from "../units/length.ts";

/** A focal length from the ground radius and the geometry of figuring. */
export interface GeometricFocalLength {
  /** Middle of what figuring may make of it, in mm. */
  readonly value: number;
  /** Standard uncertainty: of the radius, and of the zone left untouched. */
  readonly standardUncertainty: number;
  /** Its effective degrees of freedom; the range counts as known. */
  readonly dof: number;
  /** Focal lengths for an edge worked down (high) and a centre deepened (low). */
  readonly range: Interval;
}

/**
 * Finds the focal length a ground radius becomes if polishing leaves it alone.
 *
 * A sphere keeps half its radius. Figuring to a paraboloid that touches the
 * sphere at an unknown zone gives anything between an untouched centre and an
 * untouched edge, taken as equally likely. What polishing itself does to the
 * radius is not in it: that is a shop's habit.
 *
 * @param radius Radius at the end of grinding, in mm.
 * @param radiusUncertainty Its standard uncertainty, in mm.
 * @param halfDiameter Half the clear diameter in mm.
 * @param figure What it is figured to.
 * @param radiusDof Degrees of freedom of the radius's uncertainty; endless
 * unless stated.
 * @returns Focal length with its range, in mm.
 *
 * @see JCGM 100:2008 (GUM), 4.3.7, for the uncertainty of a range; G.4.1 for
 * the degrees of freedom.
 *
 * @example
 * ```ts
 * import { geometricFocalLength } from "sagbook/fabrication/geometric_focal_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { range } = geometricFocalLength(mm(3000), mm(2), mm(150), "paraboloid");
 * equal(range.low.toFixed(3), "1498.124");
 * equal(range.high, 1500);
 * ```
 */
export function geometricFocalLength(
  radius: Millimetres,
  radiusUncertainty: Millimetres,
  halfDiameter: Millimetres,
  figure: "sphere" | "paraboloid",
  radiusDof: number = Infinity,
): GeometricFocalLength {
  const high = radius / 2;
  const low = figure === "sphere"
    ? high
    : figuredRadius(radius, halfDiameter, 1) / 2;
  const ofRadius = radiusUncertainty / 2;
  const all = Math.hypot(ofRadius, (high - low) / Math.sqrt(12));
  return {
    value: (low + high) / 2,
    standardUncertainty: all,
    dof: ofRadius === 0 ? Infinity : radiusDof * (all / ofRadius) ** 4,
    range: { low, high },
  };
}
