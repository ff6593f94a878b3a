/**
 * What heat does to a radius of curvature.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import { type Millimetres, millimetres } from "../units/length.ts";

/**
 * Finds the radius after a change of temperature that is the same throughout.
 *
 * A homogeneous body stays similar to itself, so R grows by `1 + α ΔT`.
 *
 * @param radius Radius of curvature in mm.
 * @param expansion Linear expansion α, in 1/K.
 * @param warmerBy Change of temperature in kelvin.
 * @returns The new radius in mm.
 *
 * @see ISO 1:2022 (lengths are stated at 20 °C).
 *
 * @example Borosilicate, 5 K warmer
 * ```ts
 * import { radiusWarmedBy } from "sagbook/uncertainty/thermal_radius.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(radiusWarmedBy(mm(2000), 3.3e-6, 5).toFixed(4), "2000.0330");
 * ```
 */
export function radiusWarmedBy(
  radius: Millimetres,
  expansion: number,
  warmerBy: number,
): Millimetres {
  return millimetres(radius * (1 + expansion * warmerBy));
}

/** A piece of glass as heat sees it. */
export interface WarmPiece {
  /** Radius of curvature in mm, above 0. */
  readonly radius: Millimetres;
  /** Which way the measured, upper surface curves. */
  readonly form: SurfaceForm;
  /** Thickness in mm, above 0. */
  readonly thickness: Millimetres;
  /** Linear expansion per kelvin. */
  readonly expansion: number;
}

/**
 * Finds how much longer a radius reads while one face is warmer.
 *
 * A plate whose upper face is warmer by ΔT bends up in the middle: its upper
 * surface gains α ΔT/t of curvature on the convex side, so a concave radius
 * reads longer and a convex one shorter. To first order, R² α ΔT/t.
 *
 * @param piece The glass.
 * @param upperFaceWarmerBy Temperature of the upper face less that of the
 * lower, in kelvin; for a profile that is not straight, 12 times its first
 * moment over the thickness.
 * @returns Reading less true radius, in mm, signed.
 *
 * @see Timoshenko, "Analysis of bi-metal thermostats", 1925, for a plate of
 * one material under a linear gradient: curvature α ΔT/t.
 *
 * @example 40 mm of borosilicate, 1 K
 * ```ts
 * import { radiusReadLonger } from "sagbook/uncertainty/thermal_radius.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const piece = {
 *   radius: mm(3000), form: "concave", thickness: mm(40), expansion: 3.3e-6,
 * } as const;
 * equal(radiusReadLonger(piece, 1).toFixed(2), "0.74");
 * ```
 */
export function radiusReadLonger(
  piece: WarmPiece,
  upperFaceWarmerBy: number,
): Millimetres {
  const { radius, form, thickness, expansion } = piece;
  if (!(thickness > 0)) {
    throw new RangeError(
      `Cannot find what a gradient does as the thickness must be above 0 mm: current value is ${thickness} mm`,
    );
  }
  const bend = expansion * upperFaceWarmerBy / thickness;
  const curvature = form === "concave" ? 1 / radius - bend : 1 / radius + bend;
  return millimetres(1 / curvature - radius);
}
