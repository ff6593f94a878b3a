/**
 * The components of scatter on one grade of surface, as data.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import type { DisplayDiagnosis } from "./diagnose_display.ts";
import type { DriftFigure } from "./drift_figure.ts";
import type { ScatterSource } from "./source.ts";
import type { SurfaceDesign } from "./surface_design.ts";

/** A standard deviation with its interval. */
export interface Spread {
  /** The standard deviation, at least 0. */
  readonly deviation: number;
  /** Its interval; absent where the readings give none. */
  readonly interval?: Interval;
}

/** One figure of scatter. */
export interface ScatterFigure {
  /**
   * The sources it holds, at least one. More than one where the design cannot
   * tell them apart: then it is the scatter of all of them together, and none
   * of them has a figure of its own.
   */
  readonly sources: readonly ScatterSource[];
  /** Number of levels, or of readings for `repeat`. */
  readonly levels: number;
  /** Variance in mm² of sag, as estimated; below 0 where `belowZero`. */
  readonly variance: number;
  /** Variance in mm² of sag for use in sums: 0 where the estimate is below. */
  readonly usable: number;
  /**
   * True where the estimate came out below 0: too few levels, or readings
   * that are not independent.
   */
  readonly belowZero: boolean;
  /** Degrees of freedom, where there are any. */
  readonly dof?: number;
  /** Standard deviation in mm of sag. */
  readonly sag: Spread;
  /** Standard deviation in mm of radius, where the ring is known. */
  readonly radius?: Spread;
}

/** One row of an analysis of variance, in mm² of sag. */
export interface VarianceRow {
  /** The source; `zone` is the fixed part. */
  readonly source: ScatterSource | "zone";
  /** Degrees of freedom. */
  readonly dof: number;
  /** Mean square. */
  readonly meanSquare: number;
  /** How often each figure's variance is in the expected mean square. */
  readonly expected: Readonly<Partial<Record<ScatterSource, number>>>;
}

/** What stands in the way of a better answer; sentences are made elsewhere. */
export type ComponentLimit =
  /** The scatter is below what the display can show. */
  | {
    readonly code: "limited by the display";
    readonly step: number;
    /** Least standard uncertainty of a reading, in mm of sag. */
    readonly floor: number;
    /** The same in mm of radius, where the ring is known. */
    readonly radiusFloor?: number;
  }
  /** No display step is known, so that nothing allows for rounding. */
  | { readonly code: "no display step" }
  /** An estimate came out below 0. */
  | {
    readonly code: "below zero";
    readonly source: ScatterSource;
    readonly variance: number;
  }
  /** Fewer than five levels: the interval is wide, and honest. */
  | {
    readonly code: "few levels";
    readonly source: ScatterSource;
    readonly levels: number;
  }
  /** The zero moved in these zeroings, and the sags still hold the drift. */
  | {
    readonly code: "drift not corrected";
    readonly zeroings: readonly string[];
  }
  /** No reading is left over to judge scatter by. */
  | { readonly code: "no degrees of freedom" }
  /** Sessions with different notes: do not merge them unread. */
  | {
    readonly code: "notes differ between sessions";
    readonly notes: readonly {
      readonly session: string;
      readonly notes: readonly string[];
    }[];
  }
  /** Zeroings of several sessions bear one label; they are kept apart. */
  | { readonly code: "labels reused"; readonly labels: readonly string[] }
  /** Some readings do not say who took them, along which diameter, or how. */
  | {
    readonly code: "partly recorded";
    readonly sources: readonly ScatterSource[];
  };

/** One zeroing, for a figure of readings by zeroing; lengths in mm of sag. */
export interface ZeroingSummary {
  /** The zeroing. */
  readonly zeroing: string;
  /**
   * Best prediction of what its readings share, session and operator included;
   * 0 where the readings cannot tell.
   */
  readonly shift: number;
  /** Each reading less the mean of its zone over all zeroings, in order. */
  readonly departures: readonly number[];
}

/** All there is to say about the scatter on one grade of surface. */
export interface SurfaceComponents {
  /** The ring. */
  readonly ring: string;
  /** Grade of the surface, where recorded. */
  readonly grade?: string;
  /** What the readings can tell apart. */
  readonly design: SurfaceDesign;
  /** What the display step does. */
  readonly display: DisplayDiagnosis;
  /**
   * `estimated`; `limited by the display` (all readings of every zone equal:
   * no figure but the display's); `too few readings` (none left over).
   */
  readonly status: "estimated" | "limited by the display" | "too few readings";
  /**
   * How the figures were found: `anova` for balanced chains of factors, with
   * modified-large-sample intervals; `reml` otherwise, with intervals from the
   * profile of the likelihood; `none` without figures.
   */
  readonly method: "anova" | "reml" | "none";
  /** The figures, `repeat` first. */
  readonly figures: readonly ScatterFigure[];
  /** The analysis of variance behind `anova`. */
  readonly table?: readonly VarianceRow[];
  /**
   * The same figures by restricted likelihood where `figures` are by `anova`:
   * a figure below 0 is 0 there and the rest is pooled.
   */
  readonly byLikelihood?: readonly ScatterFigure[];
  /**
   * One reading on a fresh zero: every figure of the gauge together. Diameters
   * belong to the work and are left out, unless a figure holds both.
   */
  readonly total?: ScatterFigure;
  /** Readings by zeroing, in order. */
  readonly zeroings: readonly ZeroingSummary[];
  /** Creep of the zero, from looks at the flat. */
  readonly drift?: DriftFigure;
  /** The total with the drift left alone, where the sags are corrected. */
  readonly totalWithDrift?: ScatterFigure;
  /** Mean sag in mm, every zeroing counting equally. */
  readonly meanSag: number;
  /** The radius that belongs to it, in mm, where the ring is known. */
  readonly meanRadius?: number;
  /** Change of radius for 1 mm of sag, its size, where the ring is known. */
  readonly perSag?: number;
  /** Confidence of every interval. */
  readonly confidence: number;
  /** What stands in the way of a better answer. */
  readonly limits: readonly ComponentLimit[];
}
