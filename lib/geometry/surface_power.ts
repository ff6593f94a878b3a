/**
 * Surface power in dioptres, always with the index it is meant for.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { SurfaceForm } from "./feet.ts";

function checkedIndex(index: number): number {
  if (!(index > 1 && Number.isFinite(index))) {
    throw new RangeError(
      `Cannot use a surface power as its index must be above 1: current value is ${index}`,
    );
  }
  return index;
}

/**
 * Finds the power of a surface in air.
 *
 * `D = 1000 (n − 1) / R` with R in mm; positive for a convex surface, negative
 * for a concave one. Curves of tools are marked for n = 1.530 whatever the
 * glass, so the index has no default and must be written beside the power.
 *
 * @param radius Radius of curvature in mm, above 0 for either form.
 * @param form Which way the surface curves.
 * @param index Refractive index, above 1.
 * @returns The power in dioptres (1/m).
 * @throws {RangeError} If the radius is not above 0, or the index not above 1.
 *
 * @see Public optometry texts on the lens measure for 1.530 (some use 1.523);
 * no clause of a standard was found that fixes it.
 *
 * @example
 * ```ts
 * import { powerFromRadius } from "sagbook/geometry/surface_power.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(powerFromRadius(mm(530), "convex", 1.53).toFixed(6), "1.000000");
 * equal(powerFromRadius(mm(212), "concave", 1.53).toFixed(6), "-2.500000");
 * ```
 */
export function powerFromRadius(
  radius: Millimetres,
  form: SurfaceForm,
  index: number,
): number {
  if (radius <= 0) {
    throw new RangeError(
      `Cannot find a power as the radius of curvature must be above 0 mm: current value is ${radius} mm`,
    );
  }
  const size = 1000 * (checkedIndex(index) - 1) / radius;
  return form === "convex" ? size : -size;
}

/** A radius of curvature and the way its surface curves. */
export interface CurvedSurface {
  /** Radius of curvature in mm, above 0 for either form. */
  readonly radius: Millimetres;
  /** Which way the surface curves. */
  readonly form: SurfaceForm;
}

/**
 * Finds the radius and the form of a surface from its power in air.
 *
 * @param power Power in dioptres (1/m), not 0; negative for a concave surface.
 * @param index The refractive index the power is meant for, above 1.
 * @returns Radius in mm and form.
 * @throws {RangeError} If the power is 0 (a flat) or not finite, or the index
 * is not above 1.
 *
 * @example
 * ```ts
 * import { radiusFromPower } from "sagbook/geometry/surface_power.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { radius, form } = radiusFromPower(-5.3, 1.53);
 * equal(radius.toFixed(9), "100.000000000");
 * equal(form, "concave");
 * ```
 */
export function radiusFromPower(power: number, index: number): CurvedSurface {
  if (power === 0 || !Number.isFinite(power)) {
    throw new RangeError(
      `Cannot find a radius as the power must be finite and not 0: current value is ${power} D`,
    );
  }
  return {
    radius: millimetres(1000 * (checkedIndex(index) - 1) / Math.abs(power)),
    form: power > 0 ? "convex" : "concave",
  };
}

/**
 * Turns a power read for one index into the power for another.
 *
 * A lens measure is marked for one index. On glass of index n its reading is
 * scaled by (n − 1)/(n_marked − 1), because the curve it saw is the same.
 *
 * @param power Power in dioptres as read, of either sign.
 * @param markedIndex The index the reading is meant for, above 1.
 * @param glassIndex The index wanted, above 1.
 * @returns The power in dioptres for `glassIndex`.
 * @throws {RangeError} If the power is not finite or an index is not above 1.
 *
 * @example A reading of −10 D marked for 1.530, on glass of 1.600
 * ```ts
 * import { convertPower } from "sagbook/geometry/surface_power.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(convertPower(-10, 1.53, 1.6).toFixed(2), "-11.32");
 * ```
 */
export function convertPower(
  power: number,
  markedIndex: number,
  glassIndex: number,
): number {
  if (!Number.isFinite(power)) {
    throw new RangeError(
      `Cannot convert a power as it must be finite: current value is ${power} D`,
    );
  }
  return power * (checkedIndex(glassIndex) - 1) /
    (checkedIndex(markedIndex) - 1);
}
