/**
 * A radius of curvature from the fringes against a test plate.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { radiusFromSurfaceSag, surfaceSag } from "../geometry/surface_sag.ts";
import { type Budget, budgetOf } from "./budget.ts";
import type { UncertainInput } from "./distribution.ts";

/** Fringes seen between a piece of work and a test plate of the other form. */
export interface FringeMeasurement {
  /** Which way the work curves; the plate curves the other way. */
  readonly form: SurfaceForm;
  /** The plate's name. */
  readonly plate: string;
  /** Radius of the plate in mm, above 0, with its uncertainty. */
  readonly plateRadius: Estimate;
  /** Diameter in mm over which fringes were counted, centre to edge. */
  readonly diameter: Millimetres;
  /** Fringes from the centre to the edge of that diameter, at least 0. */
  readonly fringes: number;
  /** Standard uncertainty of that count; 0.1 unless stated. */
  readonly fringeUncertainty?: number;
  /** Where the two touch: press lightly and see where fringes run to. */
  readonly touch: "centre" | "edge";
  /** Wavelength of the light in mm, such as 0.000589. */
  readonly wavelength: Millimetres;
}

/** Doubt about a count of fringes: common practice, no source. */
const DOUBT = 0.1;

/**
 * Finds a radius from the fringes between work and test plate.
 *
 * Each fringe is half a wavelength of gap, so over the half diameter a the two
 * sags differ by N λ/2. Concave work that touches its plate at the centre is
 * the flatter of the two, and so is convex work that touches at the edge.
 * Seen from straight above; on surfaces that are not spheres the fringes bend,
 * and one number does not describe them.
 *
 * @param measurement Plate, diameter, fringes and light.
 * @returns R of the work in mm with its budget; the plate's error is common
 * under `plate NAME radius`.
 * @throws {RangeError} If fringes or diameter are out of range, or the plate's
 * radius is below half the diameter.
 *
 * @see Newton's rings, any text on physical optics.
 *
 * @example No fringe: the plate's own radius
 * ```ts
 * import { radiusAgainstPlate } from "sagbook/uncertainty/test_plate.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const plateRadius = { value: 400, own: 0.02, dof: Infinity, common: {} };
 * const found = radiusAgainstPlate({
 *   form: "convex", plate: "P", plateRadius, diameter: mm(50), fringes: 0,
 *   touch: "edge", wavelength: mm(0.000589),
 * });
 * equal(found.value.toFixed(9), "400.000000000");
 * ```
 */
export function radiusAgainstPlate(measurement: FringeMeasurement): Budget {
  const { form, plate, plateRadius, diameter, fringes, touch } = measurement;
  const { fringeUncertainty = DOUBT, wavelength } = measurement;
  if (!(fringes >= 0 && Number.isFinite(fringes))) {
    throw new RangeError(
      `Cannot find a radius from fringes as their number must be at least 0, where they touch telling which is flatter: current value is ${fringes}`,
    );
  }
  const flatter = (touch === "centre") === (form === "concave");
  const half = millimetres(diameter / 2);
  const inputs: UncertainInput[] = [
    {
      source: `radius of plate ${plate}`,
      unit: "mm",
      value: plateRadius.value,
      distribution: { kind: "normal", standardDeviation: totalOf(plateRadius) },
      common: `plate ${plate} radius`,
    },
    {
      source: "count of fringes",
      unit: "",
      value: flatter ? fringes : -fringes,
      distribution: { kind: "normal", standardDeviation: fringeUncertainty },
    },
  ];
  return budgetOf(([known, count]) => {
    const sag = surfaceSag(millimetres(known), half) - count * wavelength / 2;
    return radiusFromSurfaceSag(millimetres(sag), half);
  }, inputs);
}

/** Everything a plate's radius is uncertain by, as one: it is one plate. */
function totalOf({ own, common }: Estimate): number {
  return Math.hypot(own, ...Object.values(common));
}
