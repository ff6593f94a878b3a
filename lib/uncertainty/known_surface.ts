/**
 * Readings of a ring on a surface whose radius is known.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import type { ReferenceFlat } from "../records/bench.ts";
import type { Millimetres } from "../units/length.ts";

/** A test plate and what the ring showed on it. */
export interface KnownSurface {
  /** The plate's name. */
  readonly id: string;
  /** Which way it curves; a radius has no sign here. */
  readonly form: SurfaceForm;
  /** Its radius of curvature in mm, above 0. */
  readonly radius: Millimetres;
  /** Standard uncertainty of that in mm, from its certificate. */
  readonly radiusUncertainty: Millimetres;
  /** Sags read on it in mm, one for each zeroing, all above 0. */
  readonly sags: readonly Millimetres[];
}

/** Known surfaces, and the ring and gauge that were put on them. */
export interface SurfaceMeasurement {
  /** The ring's id. */
  readonly ring: string;
  /** The surfaces, at least one. */
  readonly surfaces: readonly KnownSurface[];
  /** Radius of the balls in mm, from a micrometer; 0 for a sharp edge. */
  readonly ballRadius: Millimetres;
  /** Its standard uncertainty in mm; the prior of the fit. */
  readonly ballRadiusUncertainty: Millimetres;
  /**
   * Standard deviation of one reading in mm, where it is known better than
   * from these readings; needed when no surface was read twice.
   */
  readonly repeatability?: {
    /** Standard deviation in mm, above 0. */
    readonly standardDeviation: number;
    /** Its degrees of freedom, `Infinity` unless stated. */
    readonly dof?: number;
  };
  /** Display step in mm; rounding is not counted without it. */
  readonly step?: Millimetres;
  /** The part of the rounding error that averaging leaves, 0 to 1; 1 unless stated. */
  readonly roundingShare?: number;
  /** The gauge. */
  readonly gauge?: {
    /** Its name. */
    readonly id: string;
    /** Standard uncertainty of its scale, as a fraction. */
    readonly scaleUncertainty: number;
  };
  /** The flat it was zeroed on. */
  readonly flat?: ReferenceFlat;
  /** Foot circle radius by another way in mm, to notice a plate of the wrong form. */
  readonly expectedRadius?: {
    /** The radius in mm. */
    readonly value: Millimetres;
    /** Its standard uncertainty in mm. */
    readonly standardUncertainty: Millimetres;
  };
}
