/**
 * The piece of glass that is being made.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import type { Millimetres } from "../units/length.ts";
import type { LensRecord, TestPlateRecord } from "./lens_record.ts";

/** The unit a user wants to read answers in. */
export type LengthUnit = "mm" | "in";

/** Where the radius should go. */
export interface Target {
  /** The wanted radius of curvature, in mm. */
  readonly radius: Millimetres;
  /** How far from it is still good, either way, in mm of radius. */
  readonly tolerance?: Millimetres;
  /** How the user stated it. */
  readonly statedAs: "radius" | "focal length" | "focal ratio";
}

/** How far from a sphere is still good. */
export interface SphericityTolerance {
  /**
   * `sag`: largest difference between two zones at the gauge; `surface`:
   * peak-to-valley error of the surface; `radius`: largest difference between
   * the radii of two zones.
   */
  readonly statedAs: "sag" | "surface" | "radius";
  /** The amount, above 0, in mm. */
  readonly amount: Millimetres;
}

/** One piece of glass. */
export interface Piece {
  /** The user's name for it. */
  readonly name: string;
  /** Which way the measured surface curves. */
  readonly form: SurfaceForm;
  /** Outer diameter in mm. */
  readonly diameter: Millimetres;
  /** Width of the bevel, measured along the radius, in mm. */
  readonly bevel: Millimetres;
  /** How far inside the bevel a foot must stay, in mm. */
  readonly margin: Millimetres;
  /** Edge thickness in mm. */
  readonly thickness?: Millimetres;
  /** The glass, as the user names it. */
  readonly glass?: string;
  /** Where the radius should go. */
  readonly target?: Target;
  /** How far from a sphere is still good. */
  readonly sphericity?: SphericityTolerance;
  /** Radius before work began, in mm. */
  readonly startingRadius?: Millimetres;
  /** What makes it a lens. */
  readonly lens?: LensRecord;
  /** Fringes seen against a test plate. */
  readonly testPlate?: TestPlateRecord;
  /** The unit answers are given in. */
  readonly unit: LengthUnit;
  /** True for invented demonstration data. */
  readonly invented: boolean;
  /** Anything the user wrote about it. */
  readonly note?: string;
}
