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
  /** The unit answers are given in; the diameter's unless given. */
  readonly unit?: "mm" | "in";
  /** Relative path of a bench file shared by several pieces. */
  readonly bench?: string;
  /** True for invented demonstration data. */
  readonly invented?: boolean;
  /** Anything else. */
  readonly note?: string;
}
