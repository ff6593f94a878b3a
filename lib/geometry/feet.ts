/**
 * The feet a gauge stands on, and the way the surface under them curves.
 *
 * @module
 */
import type { Millimetres } from "../units/length.ts";

/** Which way the work curves, seen from the gauge. */
export type SurfaceForm = "concave" | "convex";

/**
 * The feet as the sag formulas need them.
 *
 * A ring with a sharp edge has `ballRadius` 0 and the radius of the edge that
 * touches; a two-foot bar has half its span as `circleRadius`.
 */
export interface Feet {
  /** Radius of the circle through the ball centres or the touching edge, in mm. */
  readonly circleRadius: Millimetres;
  /** Radius of the balls in mm, 0 for a sharp edge. */
  readonly ballRadius: Millimetres;
}

/**
 * Where foot 1 points.
 *
 * `angle` is measured in the work's own axes, in degrees, as diameters are.
 * `foot out` means that one foot points to the nearest rim, `feet out` that
 * two do; `unknown` that nobody wrote it down.
 */
export type FootDirection =
  | { readonly kind: "angle"; readonly degrees: number }
  | { readonly kind: "foot out" }
  | { readonly kind: "feet out" }
  | { readonly kind: "unknown" };
