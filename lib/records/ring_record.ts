/**
 * What was measured to calibrate a ring.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import type { Spacings } from "../geometry/ring_from_spacings.ts";
import type { Millimetres } from "../units/length.ts";

/** Three caliper figures, as they were read. */
export interface SpacingsRecord {
  /** The figures in the order 1–2, 2–3, 3–1, in mm, a ball included or not. */
  readonly figures: Spacings;
  /** What was spanned: ball centres, or the outsides of the balls. */
  readonly over: "centres" | "outsides";
  /** False when the file does not say, and centres were taken. */
  readonly overStated: boolean;
  /** The caliper. */
  readonly caliper: {
    /** Its name. */
    readonly id: string;
    /** Standard uncertainty of one figure, in mm. */
    readonly standardUncertainty: Millimetres;
    /** True when that is our default, not the user's. */
    readonly assumed: boolean;
    /** Standard uncertainty of its scale, as a fraction. */
    readonly scaleUncertainty: number;
  };
}

/** A surface of known radius, and what the ring showed on it. */
export interface KnownSurfaceRecord {
  /** The user's name for it. */
  readonly id: string;
  /** Which way it curves. */
  readonly form: SurfaceForm;
  /** Its radius of curvature in mm, above 0. */
  readonly radius: Millimetres;
  /** Standard uncertainty of that in mm. */
  readonly radiusUncertainty: Millimetres;
  /** Sags read on it in mm, one for each zeroing, above 0. */
  readonly sags: readonly Millimetres[];
}

/** A calibration of an earlier year. */
export interface EarlierCalibration {
  /** ISO date. */
  readonly on: string;
  /** Radius of the foot circle it found, in mm. */
  readonly radius: Millimetres;
  /** Standard uncertainty of that, in mm. */
  readonly radiusUncertainty: Millimetres;
}

/** Everything kept about a ring's calibration. */
export interface RingRecord {
  /** Caliper figures. */
  readonly spacings?: SpacingsRecord;
  /** Surfaces of known radius; none when the ring was read on none. */
  readonly surfaces: readonly KnownSurfaceRecord[];
  /** Calibrations of earlier years, as written. */
  readonly earlier: readonly EarlierCalibration[];
  /** How many months a calibration holds; absent when nobody said. */
  readonly everyMonths?: number;
  /** Name of its duplicate on the bench. */
  readonly twin?: string;
}
