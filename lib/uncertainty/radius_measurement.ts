/**
 * Everything that a radius of curvature from a ring and a gauge hangs on.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import type { Gauge, ReferenceFlat, Ring } from "../records/bench.ts";
import type { Estimate } from "../statistics/estimate.ts";
import type { Millimetres } from "../units/length.ts";

/** A belief about a quantity: nominal value, and rectangular limits about it. */
export interface Limits {
  /** The nominal value, taken off or corrected for. */
  readonly value: number;
  /** Half the distance between the limits, at least 0. */
  readonly halfWidth: number;
}

/** A measurement of one radius of curvature. */
export interface RadiusMeasurement {
  /** Which way the surface curves. */
  readonly form: SurfaceForm;
  /**
   * The mean sag in mm, positive for the declared surface, as the readers give
   * it (a stated lean of the stem is taken out already); its own standard
   * error and degrees of freedom from repeated zeroings, and what it shares
   * with other sags (a zero, a drift) by id in mm of sag. For a single zeroing
   * put 0 and give `zeroing`.
   */
  readonly sag: Estimate;
  /** The ring (or bar), with its uncertainties. */
  readonly ring: Ring;
  /** The gauge; without it the scale counts as exact, which is reported. */
  readonly gauge?: Pick<Gauge, "id" | "scaleUncertainty" | "tiltDegrees">;
  /** Display step in mm; without it rounding is not counted, and reported. */
  readonly step?: Millimetres;
  /**
   * The part of the rounding error that averaging has not removed, from 0 to
   * 1 (1 unless stated): 1 when readings repeat to the last figure, 0 when
   * scatter of two steps or more has already spread it.
   */
  readonly roundingShare?: number;
  /** Scatter of one act of zeroing in mm of sag, where `sag.own` lacks it. */
  readonly zeroing?: {
    /** Standard uncertainty in mm. */
    readonly standardUncertainty: number;
    /** Its degrees of freedom, `Infinity` unless stated. */
    readonly dof?: number;
  };
  /** Drift between zero and reading, in mm of sag. */
  readonly drift?: {
    /** Standard uncertainty in mm. */
    readonly standardUncertainty: number;
    /** Its degrees of freedom, `Infinity` unless stated. */
    readonly dof?: number;
  };
  /** The flat the gauge was zeroed on; without it, reported as not counted. */
  readonly flat?: ReferenceFlat;
  /** Doubt about the lean of the stem. */
  readonly tilt?: {
    /** Standard uncertainty of the lean in degrees. */
    readonly standardUncertaintyDegrees: number;
  };
  /** Ring warmer than at its calibration, in kelvin. */
  readonly ringWarmerBy?: Limits;
  /** Upper face of the work warmer than its lower face, in kelvin. */
  readonly upperFaceWarmerBy?: Limits;
  /** Thickness of the work in mm and its expansion per kelvin. */
  readonly work?: {
    /** Thickness in mm, above 0. */
    readonly thickness: Millimetres;
    /** Linear expansion per kelvin. */
    readonly expansion: number;
  };
  /** Distance of the gauge's axis from the vertex, and the conic constant. */
  readonly centring?: {
    /** Standard uncertainty of the place in mm; the place itself is 0. */
    readonly standardUncertainty: number;
    /** Conic constant of the surface: 0 for a sphere, which does not mind. */
    readonly conic: number;
  };
  /** Standard uncertainty of the probe's place in its ring, in mm. */
  readonly probeOffsetUncertainty?: Millimetres;
  /**
   * Name of the session: temperatures and lean then are common to all its
   * results; without it they count as this result's own.
   */
  readonly session?: string;
}
