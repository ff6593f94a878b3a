/**
 * What was read when a focal length was measured, before anything is made of it.
 *
 * @module
 */
import type { Millimetres } from "../units/length.ts";

/** A focal length as it was read at the bench, by the way it was measured. */
export type FocusReading =
  | {
    readonly method: "centre of curvature";
    /** From the vertex to where the zone's rays cross, in mm. */
    readonly distance: Millimetres;
    /** Standard uncertainty of that, in mm. */
    readonly uncertainty?: Millimetres;
    /** Distance of the zone from the axis, in mm; 0 for the centre. */
    readonly zone: Millimetres;
    /** Whether the source moves with the tester or stands still. */
    readonly source: "moves" | "fixed";
    /** What the surface is. */
    readonly surface: "sphere" | "paraboloid";
  }
  | {
    readonly method: "lamp";
    /** From the surface to the sharp image, in mm. */
    readonly image: Millimetres;
    /** Standard uncertainty of that, in mm. */
    readonly uncertainty?: Millimetres;
    /** From the surface to the lamp, in mm. */
    readonly lamp: Millimetres;
    /** Standard uncertainty of that, in mm. */
    readonly lampUncertainty?: Millimetres;
  }
  | {
    readonly method: "star";
    /** From the surface to the image, in mm. */
    readonly image: Millimetres;
    /** Standard uncertainty of the method, in mm. */
    readonly uncertainty?: Millimetres;
  };
