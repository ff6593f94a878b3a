/**
 * The feet of a ring or bar as a user describes them.
 *
 * @module
 */
import type { Millimetres } from "../units/length.ts";

/** A ring, or a bar, as made. */
export type RingShape =
  | {
    readonly kind: "balls";
    /** Radius of the circle through the three ball centres, in mm. */
    readonly circleRadius: Millimetres;
    /** Radius of the balls, in mm. */
    readonly ballRadius: Millimetres;
    /** Distance of the probe from the circle's centre, in mm. */
    readonly probeOffset: Millimetres;
    /** The three centre spacings the radius came from, in mm. */
    readonly spacings?: readonly [Millimetres, Millimetres, Millimetres];
  }
  | {
    readonly kind: "edge";
    /** Radius of the inner edge, which convex work touches, in mm. */
    readonly innerRadius: Millimetres;
    /** Radius of the outer edge, which concave work touches, in mm. */
    readonly outerRadius: Millimetres;
  }
  | {
    readonly kind: "bar";
    /** Distance between the two feet, in mm. */
    readonly span: Millimetres;
    /** Radius of the feet, in mm, 0 for points. */
    readonly ballRadius: Millimetres;
  };
