/**
 * What `bench.json` holds, as a user writes it.
 *
 * @module
 */
import type { LengthText } from "./piece_file.ts";

/** A ring size set in a gauge that shows radius or power. */
export interface SetRingFile {
  /** Foot circle radius set in the gauge. */
  readonly circle_radius: LengthText;
  /** Ball radius set in the gauge; 0 unless given. */
  readonly ball_radius?: LengthText;
  /** Refractive index set in a gauge that shows power. */
  readonly index?: number;
}

/** The gauge. */
export interface GaugeFile {
  /** Your name for it. */
  readonly id?: string;
  /** What it shows; sag unless given. */
  readonly shows?: "sag" | "radius" | "power";
  /** The ring size set in a gauge that shows radius or power. */
  readonly set_ring?: SetRingFile;
  /** The surface on which its numbers grow. */
  readonly counts_up_on?: "concave" | "convex";
  /** The unit of a reading that names none. */
  readonly unit?: "mm" | "in";
  /** Display step, one length or one for each unit. */
  readonly display_step?: LengthText | {
    /** Step while the display shows millimetres. */
    readonly mm?: LengthText;
    /** Step while the display shows inches. */
    readonly in?: LengthText;
  };
  /** Standard uncertainty of the scale as a fraction (0.001) or "0.1 %". */
  readonly scale_uncertainty?: number | string;
  /** Lean of the stem in degrees, if it has been measured. */
  readonly stem_tilt_deg?: number;
}

/** A surface of known radius, and what the ring showed on it. */
export interface KnownSurfaceFile {
  /** Your name for it. */
  readonly id: string;
  /** Which way it curves; its radius and sags carry no sign. */
  readonly form: "concave" | "convex";
  /** Its radius of curvature, from its certificate. */
  readonly radius: LengthText;
  /** Standard uncertainty of that. */
  readonly radius_uncertainty: LengthText;
  /** Sags read on it, one for each zeroing, above 0 for its own form. */
  readonly sags: readonly LengthText[];
}

/** The caliper that spanned the feet. */
export interface CaliperFile {
  /** Your name for it. */
  readonly id?: string;
  /** Standard uncertainty of one figure, reading and feel. */
  readonly uncertainty?: LengthText;
  /** Standard uncertainty of its scale as a fraction; 0 unless given. */
  readonly scale_uncertainty?: number;
}

/** A calibration of an earlier year. */
export interface EarlierCalibrationFile {
  /** Its date, year-month-day. */
  readonly on: string;
  /** Radius of the foot circle it found. */
  readonly radius: LengthText;
  /** Standard uncertainty of that. */
  readonly radius_uncertainty: LengthText;
}

/** What was measured to calibrate a ring, kept beside its size. */
export interface RingCalibrationFile {
  /**
   * Three spacings to hold against the radius above, or the path of a CSV file
   * that holds them; rings that give spacings of their own need none here.
   */
  readonly spacings?: readonly LengthText[] | string;
  /** How those were measured. */
  readonly spacings_measured?: "centre to centre" | "outside to outside";
  /** The caliper. */
  readonly caliper?: CaliperFile;
  /** Surfaces of known radius that the ring was read on. */
  readonly known_surfaces?: readonly KnownSurfaceFile[];
  /** Calibrations of earlier years. */
  readonly earlier?: readonly EarlierCalibrationFile[];
  /** How many months a calibration holds; 12 unless given. */
  readonly every_months?: number;
  /** Name of the ring of the bench that is its duplicate. */
  readonly twin?: string;
}

/** One ring or bar. */
export interface RingFile {
  /** Your name for it. */
  readonly id: string;
  /** Its feet; balls unless given. */
  readonly feet?: "balls" | "edge" | "bar";
  /** Radius of the circle through the ball centres. */
  readonly radius?: LengthText;
  /**
   * The three spacings of the balls, instead of the radius; or the path of a
   * CSV file that holds them, seen from the bench file.
   */
  readonly spacings?: readonly LengthText[] | string;
  /** How the spacings were measured; over the outsides includes a ball. */
  readonly spacings_measured?: "centre to centre" | "outside to outside";
  /** Ball radius. */
  readonly ball_radius?: LengthText;
  /** Ball diameter, instead of the ball radius. */
  readonly ball_diameter?: LengthText;
  /** Distance of the probe from the circle's centre; 0 unless given. */
  readonly probe_offset?: LengthText;
  /** Inner radius of a sharp edge, which convex work touches. */
  readonly inner_radius?: LengthText;
  /** Outer radius of a sharp edge, which concave work touches. */
  readonly outer_radius?: LengthText;
  /** Distance between the two feet of a bar. */
  readonly span?: LengthText;
  /** Standard uncertainty of the foot circle's radius. */
  readonly radius_uncertainty?: LengthText;
  /** Standard uncertainty of the ball radius. */
  readonly ball_radius_uncertainty?: LengthText;
  /** What it is made of: steel, aluminium, brass, invar. */
  readonly material?: string;
  /** Linear expansion per kelvin, instead of the material's. */
  readonly expansion?: number;
  /** How foot 1 stands unless a reading says otherwise. */
  readonly foot?: number | string;
  /** Date of the last calibration, year-month-day. */
  readonly calibrated_on?: string;
  /** What was measured to calibrate it. */
  readonly calibration?: RingCalibrationFile;
  /** False while the sizes above are stand-ins that nobody has measured. */
  readonly measured?: boolean;
  /** Anything else. */
  readonly note?: string;
}

/** The reference flat. */
export interface FlatFile {
  /** Your name for it. */
  readonly id?: string;
  /** Its side or diameter. */
  readonly size?: LengthText;
  /** Largest departure from a plane over its size. */
  readonly flatness?: LengthText;
}

/** A stroke of your own. */
export interface StrokeFile {
  /** Which lies on top. */
  readonly position: "mirror on top" | "tool on top" | "alternate";
  /** The stroke in your words. */
  readonly stroke: string;
}

/** Your strokes, by what they are for; those left out are the common ones. */
export interface StrokesFile {
  /** The centre reads deeper than the edge, the radius is not too short. */
  readonly deep_centre?: StrokeFile;
  /** The centre reads deeper than the edge, the radius is too short. */
  readonly deep_centre_short?: StrokeFile;
  /** The edge reads deeper than the centre, the radius is not too long. */
  readonly deep_edge?: StrokeFile;
  /** The edge reads deeper than the centre, the radius is too long. */
  readonly deep_edge_long?: StrokeFile;
  /** A sphere that must become shorter. */
  readonly shorten?: StrokeFile;
  /** A sphere that must become longer. */
  readonly lengthen?: StrokeFile;
}

/** Glass your work takes off everywhere. */
export interface RemovalFile {
  /** By one wet or minute. */
  readonly amount: LengthText;
  /** Standard uncertainty of that; 0 unless given. */
  readonly uncertainty?: LengthText;
  /** What the amount is for. */
  readonly per: "wet" | "minute";
}

/** How you work, where it is not as is common. */
export interface WorkFile {
  /** Your strokes. */
  readonly strokes?: StrokesFile;
  /** Mean grain sizes of the grade before to take off for its pits. */
  readonly pit_grain_sizes?: number;
  /** Glass taken off by the work, where no thickness was read. */
  readonly removal?: RemovalFile;
  /** Standard uncertainty of one thickness; 0.01 mm unless given. */
  readonly thickness_uncertainty?: LengthText;
}

/** What `bench.json` holds. */
export interface BenchFile {
  /** The schema this file follows, for editors. */
  readonly $schema?: string;
  /** The gauge. */
  readonly gauge: GaugeFile;
  /** Every ring and bar. */
  readonly rings: readonly RingFile[];
  /** The reference flat. */
  readonly flat?: FlatFile;
  /** How you work, where it is not as is common. */
  readonly work?: WorkFile;
  /** The decimal mark of your CSV files, where they cannot show it. */
  readonly decimal_mark?: "point" | "comma";
  /** Anything else. */
  readonly note?: string;
}
