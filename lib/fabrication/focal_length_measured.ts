/**
 * A measured focal length, by the way it was measured.
 *
 * @module
 */
import { focalLengthFromLamp } from "../geometry/focal_length.ts";
import type { Estimate } from "../statistics/estimate.ts";
import type { Millimetres } from "../units/length.ts";

/** How a focal length was measured, with what was read. */
export type FocalLengthMeasurement =
  | {
    readonly method: "centre of curvature";
    /** Distance from the vertex to where the zone's rays cross, in mm. */
    readonly distance: Millimetres;
    /** Its standard uncertainty in mm. */
    readonly uncertainty: Millimetres;
    /** Distance of the zone from the axis in mm; 0 for the centre. */
    readonly zone: Millimetres;
    /** The surface; a sphere focuses all zones in one place. */
    readonly surface: "sphere" | "paraboloid";
    /** Whether the source moves with the tester or stands still. */
    readonly source: "moves" | "fixed";
  }
  | {
    readonly method: "lamp";
    /** Distance from the mirror to the sharp image, in mm. */
    readonly image: Millimetres;
    /** Its standard uncertainty in mm. */
    readonly uncertainty: Millimetres;
    /** Distance from the mirror to the lamp in mm. */
    readonly lamp: Millimetres;
    /** Its standard uncertainty in mm. */
    readonly lampUncertainty: Millimetres;
  }
  | {
    readonly method: "star";
    /** Distance from the mirror to the image, in mm. */
    readonly image: Millimetres;
    /** Standard uncertainty of the method in mm. */
    readonly uncertainty: Millimetres;
  };

/**
 * Finds the focal length that a measurement stands for.
 *
 * At the centre of curvature of a paraboloid a zone at distance ρ crosses the
 * axis at `R + ρ²/(2R)` from the vertex when the source moves with the tester
 * (exact), and at about `R + ρ²/R` when it stands still at the centre of
 * curvature of the vertex (first order in ρ²/R²); half of R is the focal
 * length. A lamp stands at a finite distance: `1/f = 1/image + 1/lamp`. A
 * star is far enough. Never the Sun, with a polished or wet surface.
 *
 * @param measurement What was read, in mm.
 * @returns The focal length in mm with its own uncertainty, taken as known.
 * @throws {RangeError} If a distance or an uncertainty is out of range.
 *
 * @see Any text on geometrical optics: the mirror equation.
 *
 * @example The edge of a 300 mm f/5 paraboloid, the source moving along
 * ```ts
 * import { focalLengthMeasured } from "sagbook/fabrication/focal_length_measured.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { value, own } = focalLengthMeasured({
 *   method: "centre of curvature",
 *   distance: mm(3003.75),
 *   uncertainty: mm(1),
 *   zone: mm(150),
 *   surface: "paraboloid",
 *   source: "moves",
 * });
 * equal(value.toFixed(6), "1500.000000");
 * equal(own.toFixed(2), "0.50");
 * ```
 */
export function focalLengthMeasured(
  measurement: FocalLengthMeasurement,
): Estimate {
  const { uncertainty } = measurement;
  if (!(uncertainty >= 0)) {
    throw new RangeError(
      `Cannot find a focal length as its uncertainty must be 0 mm or more: current value is ${uncertainty} mm`,
    );
  }
  const known = (value: number, own: number): Estimate => ({
    value,
    own,
    dof: Infinity,
    common: {},
  });
  switch (measurement.method) {
    case "star": {
      const { image } = measurement;
      if (!(image > 0)) {
        throw new RangeError(
          `Cannot find a focal length as distances must be above 0 mm: current value is ${image} mm`,
        );
      }
      return known(image, uncertainty);
    }
    case "lamp": {
      const { image, lamp, lampUncertainty } = measurement;
      const focus = focalLengthFromLamp(image, lamp);
      return known(
        focus,
        Math.hypot(
          (focus / image) ** 2 * uncertainty,
          (focus / lamp) ** 2 * lampUncertainty,
        ),
      );
    }
    case "centre of curvature": {
      const { distance, zone, surface, source } = measurement;
      const share = surface === "sphere" ? 0 : source === "moves" ? 0.5 : 1;
      const inside = distance * distance - 4 * share * zone * zone;
      if (!(distance > 0 && inside > 0)) {
        throw new RangeError(
          `Cannot find a focal length as the distance must be above ${
            2 * Math.sqrt(share) * zone
          } mm for a zone at ${zone} mm: current value is ${distance} mm`,
        );
      }
      // R + share ρ²/R = distance, solved for the larger R.
      const root = Math.sqrt(inside);
      const radius = (distance + root) / 2;
      const slope = (1 + distance / root) / 2;
      return known(radius / 2, slope * uncertainty / 2);
    }
  }
}
