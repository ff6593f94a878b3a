/**
 * What makes a piece a lens, and what a test plate showed on it.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import type { Millimetres } from "../units/length.ts";

/** The surface of a lens that is not being measured, seen from its outside. */
export type SecondSurface =
  | { readonly form: "flat" }
  | {
    /** Which way it curves. */
    readonly form: SurfaceForm;
    /** Its radius of curvature in mm, above 0. */
    readonly radius: Millimetres;
    /** Standard uncertainty of that in mm. */
    readonly radiusUncertainty: Millimetres;
  };

/** The glass of a lens, and its other surface. */
export interface LensRecord {
  /** Refractive index, above 1. */
  readonly index: number;
  /** Standard uncertainty of the index. */
  readonly indexUncertainty: number;
  /** Thickness at the centre in mm; there whenever a second surface is. */
  readonly thickness?: Millimetres;
  /** Standard uncertainty of that in mm. */
  readonly thicknessUncertainty: Millimetres;
  /** The surface that is not being measured. */
  readonly second?: SecondSurface;
}

/** Fringes seen between the work and a test plate of the other form. */
export interface TestPlateRecord {
  /** The user's name for the plate. */
  readonly id: string;
  /** Its radius of curvature in mm. */
  readonly radius: Millimetres;
  /** Standard uncertainty of that in mm. */
  readonly radiusUncertainty: Millimetres;
  /** Diameter over which fringes were counted, in mm. */
  readonly diameter: Millimetres;
  /** Fringes from the centre to the edge of it. */
  readonly fringes: number;
  /** Standard uncertainty of that count, where the user states one. */
  readonly fringeUncertainty?: number;
  /** Where plate and work touch. */
  readonly touch: "centre" | "edge";
  /** Wavelength of the light in mm. */
  readonly wavelength: Millimetres;
}
