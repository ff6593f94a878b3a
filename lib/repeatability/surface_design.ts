/**
 * What a set of readings can tell apart, as data.
 *
 * @module
 */
import type {
  AbsentReason,
  DiameterScatter,
  ScatterSource,
  VariedSource,
} from "./source.ts";

/** One factor of a design. */
export interface DesignFactor {
  /** The source of scatter it stands for. */
  readonly source: VariedSource;
  /** Number of levels. */
  readonly levels: number;
  /** Readings of the level with the fewest. */
  readonly fewest: number;
  /** Readings of the level with the most. */
  readonly most: number;
}

/** How the levels of two factors meet. */
export interface FactorRelation {
  /** The first factor. */
  readonly first: VariedSource;
  /** The second factor. */
  readonly second: VariedSource;
  /**
   * `crossed`: every level meets every level; `nested`: each level of `first`
   * lies in one level of `second`; `matched`: each level of one goes with one
   * level of the other; `partly crossed`: anything else.
   */
  readonly relation: "crossed" | "nested" | "matched" | "partly crossed";
}

/** Readings that would tell two confounded sources apart. */
export interface SeparatingReadings {
  /** What to vary. */
  readonly vary: ScatterSource;
  /** Within one level of this. */
  readonly within: VariedSource;
  /** Least number of levels (or readings) of `vary` in each. */
  readonly least: number;
  /** True where reading the centre in every set does it as well. */
  readonly orReadCentre: boolean;
}

/** Sources that these readings cannot tell apart. */
export interface ConfoundedSources {
  /** All of them; the first one stands for the rest. */
  readonly sources: readonly ScatterSource[];
  /** Readings that would separate them. */
  readonly separatedBy: readonly SeparatingReadings[];
}

/** A source that was not varied. */
export interface AbsentSource {
  /** The source. */
  readonly source: VariedSource;
  /** Why. */
  readonly reason: AbsentReason;
}

/** A place that a zeroing did not read though others did. */
export interface MissingCell {
  /** The zeroing. */
  readonly zeroing: string;
  /** Label of the zone. */
  readonly zone: string;
}

/** The design of the readings of one ring on one grade of surface. */
export interface SurfaceDesign {
  /** The ring. */
  readonly ring: string;
  /** Grade of the surface, where recorded. */
  readonly grade?: string;
  /** Number of readings of the work. */
  readonly readings: number;
  /** Number of looks at the flat. */
  readonly looks: number;
  /** Sessions in order. */
  readonly sessions: readonly string[];
  /** Labels of the zones, from the centre outward. */
  readonly zones: readonly string[];
  /** Factors with two levels or more. */
  readonly factors: readonly DesignFactor[];
  /** How every two of them meet. */
  readonly relations: readonly FactorRelation[];
  /** Fewest readings of one place in one zeroing. */
  readonly leastRepeats: number;
  /** Most readings of one place in one zeroing. */
  readonly mostRepeats: number;
  /** Whether some place was read twice in one zeroing. */
  readonly replicated: boolean;
  /** Whether every zeroing read the same places equally often. */
  readonly balanced: boolean;
  /** Places left out by some zeroing. */
  readonly missing: readonly MissingCell[];
  /** How diameters were taken. */
  readonly diameters: DiameterScatter;
  /** Sources that get a figure of their own. */
  readonly estimable: readonly ScatterSource[];
  /** Sources that do not, in sets. */
  readonly confounded: readonly ConfoundedSources[];
  /** Sources that were not varied. */
  readonly absent: readonly AbsentSource[];
  /** Degrees of freedom that the zones' means leave. */
  readonly dof: number;
  /**
   * Labels of zeroings that occur in several sessions and so name several
   * zeroings.
   */
  readonly reusedLabels: readonly string[];
}
