/**
 * What `piece.json` holds, as a user writes it.
 *
 * @module
 */

/** A length in a JSON file: `{ "value": 300, "unit": "mm" }` or `"300 mm"`. */
export type LengthText = string | {
  /** The number. */
  readonly value: number;
  /** Its unit. */
  readonly unit: string;
};

/** Where the radius should go; exactly one of the first three is given. */
export interface TargetFile {
  /** Wanted radius of curvature. */
  readonly radius?: LengthText;
  /** Wanted focal length of the finished surface. */
  readonly focal_length?: LengthText;
  /** Wanted focal ratio: focal length over diameter. */
  readonly focal_ratio?: number;
  /** How far off is still good: a length, or a number beside a focal ratio. */
  readonly tolerance?: LengthText | number;
}

/** How far from a sphere is still good; exactly one is given. */
export interface SphericityFile {
  /** Largest difference of two zones at the gauge. */
  readonly sag?: LengthText;
  /** Peak-to-valley error of the surface. */
  readonly surface?: LengthText;
  /** Largest difference between the radii of two zones. */
  readonly radius?: LengthText;
}

/** The other surface of a lens. */
export interface LensSurfaceFile {
  /** Which way it curves, seen from its own outside. */
  readonly form: "concave" | "convex" | "flat";
  /** Its radius of curvature; a flat has none. */
  readonly radius?: LengthText;
  /** Standard uncertainty of that. */
  readonly radius_uncertainty?: LengthText;
}

/** What makes the piece a lens: its glass, and its other surface. */
export interface LensFile {
  /** Refractive index of the glass. */
  readonly index: number;
  /** Standard uncertainty of the index; 0 unless given. */
  readonly index_uncertainty?: number;
  /** Thickness at the centre. */
  readonly thickness?: LengthText;
  /** Standard uncertainty of that thickness. */
  readonly thickness_uncertainty?: LengthText;
  /** The surface that is not being measured. */
  readonly second_surface?: LensSurfaceFile;
}

/** Fringes seen against a test plate of the other form. */
export interface TestPlateFile {
  /** Your name for the plate. */
  readonly id: string;
  /** Its radius of curvature, from its certificate. */
  readonly radius: LengthText;
  /** Standard uncertainty of that. */
  readonly radius_uncertainty: LengthText;
  /** Diameter over which fringes were counted from the centre to its edge. */
  readonly diameter: LengthText;
  /** How many fringes. */
  readonly fringes: number;
  /** Standard uncertainty of that count; 0.1 unless given. */
  readonly fringe_uncertainty?: number;
  /** Where plate and work touch. */
  readonly touch: "centre" | "edge";
  /** Wavelength of the light, such as "0.589 µm". */
  readonly wavelength: LengthText;
}

/** What `piece.json` holds. */
export interface PieceFile {
  /** The schema this file follows, for editors. */
  readonly $schema?: string;
  /** Your name for the piece. */
  readonly name: string;
  /** Which way the measured surface curves. */
  readonly form: "concave" | "convex";
  /** Outer diameter. */
  readonly diameter: LengthText;
  /** Width of the bevel along the radius. */
  readonly bevel?: LengthText;
  /** How far inside the bevel every foot must stay; 0.5 mm unless given. */
  readonly margin?: LengthText;
  /** Thickness at the edge. */
  readonly thickness?: LengthText;
  /** The glass. */
  readonly glass?: string;
  /** Where the radius should go. */
  readonly target?: TargetFile;
  /** How far from a sphere is still good. */
  readonly sphericity_tolerance?: SphericityFile;
  /** Radius before work began. */
  readonly starting_radius?: LengthText;
  /** What makes it a lens. */
  readonly lens?: LensFile;
  /** Fringes seen against a test plate. */
  readonly test_plate?: TestPlateFile;
  /** The unit answers are given in; the diameter's unless given. */
  readonly unit?: "mm" | "in";
  /** Relative path of a bench file shared by several pieces. */
  readonly bench?: string;
  /** True for invented demonstration data. */
  readonly invented?: boolean;
  /** Anything else. */
  readonly note?: string;
}
