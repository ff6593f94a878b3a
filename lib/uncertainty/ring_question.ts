/**
 * What can be asked of a ring, and what the answer hangs on.
 *
 * @module
 */
import type { FootDirection, SurfaceForm } from "../geometry/feet.ts";
import type { Gauge, ReferenceFlat, Ring } from "../records/bench.ts";
import type { Millimetres } from "../units/length.ts";
import type { HalfWidthRule } from "./detection.ts";

/** The questions for which rings are compared. */
export type RingQuestion = "radius" | "conic" | "edge fault" | "astigmatism";

/** Work, gauge and plan that the rings are compared for. */
export interface RingChoicePlan {
  /** The work. */
  readonly work: {
    /** Which way it curves. */
    readonly form: SurfaceForm;
    /** Radius of curvature in mm, as expected. */
    readonly radius: Millimetres;
    /** Diameter in mm. */
    readonly diameter: Millimetres;
    /** Bevel and safety margin together, in mm along the radius. */
    readonly margin: Millimetres;
  };
  /** Scatter of this gauge as standard deviations in mm of sag. */
  readonly scatter: {
    /** From reading to reading, rounding apart. */
    readonly repeat: number;
    /** From zeroing to zeroing. */
    readonly zeroing: number;
    /** From diameter to diameter, off centre; 0 unless stated. */
    readonly diameter?: number;
  };
  /** Display step in mm. */
  readonly step: Millimetres;
  /** Sets of readings, one zeroing and one diameter each; at least 2. */
  readonly sets: number;
  /** The gauge; its scale counts towards R. */
  readonly gauge?: Pick<Gauge, "id" | "scaleUncertainty">;
  /**
   * The flat; its bow counts towards R, and a ring larger than it cannot be
   * zeroed there, which R needs and a difference of places does not.
   */
  readonly flat?: ReferenceFlat;
  /** Width in mm of the turned edge to look for; 20 unless stated. */
  readonly edgeWidth?: Millimetres;
  /** How the feet stand; each ring's own way unless stated. */
  readonly foot?: FootDirection;
  /** Chance to show the smallest amount; 0.8 unless stated. */
  readonly power?: number;
  /**
   * Half the 95 % interval that the analysis of zones puts round a mean
   * difference between centre and edge; `studentRule` with the display floor
   * unless stated.
   */
  readonly halfWidth?: HalfWidthRule;
}

/** What one ring can show for one question. */
export interface RingAnswer {
  /** The ring's id. */
  readonly ring: string;
  /** Its foot circle (half its span for a bar), in mm. */
  readonly circleRadius: Millimetres;
  /**
   * Smallest amount shown with the chance asked for; absent when this ring
   * cannot show any, or does not fit.
   */
  readonly detectable?: number;
  /** Where the gauge stands for it, in mm from the centre. */
  readonly offset?: Millimetres;
  /** For `radius`: the expanded uncertainty of R in mm, 95 %. */
  readonly expanded?: number;
  /** Why there is no amount. */
  readonly reason?:
    | "does not fit the work"
    | "does not fit the flat"
    | "cannot leave the centre"
    | "does not touch the fault"
    | "three feet cannot see it"
    | "reads it as a sphere";
}

/** All rings for one question. */
export interface RingChoice {
  /** The question. */
  readonly question: RingQuestion;
  /**
   * What the amounts are: mm of R off its target; conic constant; depth of
   * the turned edge at the rim in mm; peak-to-valley astigmatism in mm.
   */
  readonly amount:
    | "mm of radius"
    | "conic constant"
    | "mm of depth"
    | "mm peak to valley";
  /** Every ring owned, in the order given. */
  readonly rings: readonly RingAnswer[];
  /** The ring with the smallest amount; absent when none can show any. */
  readonly recommended?: string;
  /** The best ring radius possible on this work, with its amount. */
  readonly best?: {
    /** Foot circle radius in mm. */
    readonly circleRadius: Millimetres;
    /** Smallest amount it would show. */
    readonly detectable: number;
  };
  /** Smallest amount against foot circle radius in mm, for a figure. */
  readonly curve: readonly {
    /** Foot circle radius in mm. */
    readonly circleRadius: Millimetres;
    /** Smallest amount it would show. */
    readonly detectable: number;
  }[];
}

/** A ring for which answers are worked out. */
export type ComparedRing = Pick<
  Ring,
  | "id"
  | "shape"
  | "radiusUncertainty"
  | "radiusUncertaintyAssumed"
  | "ballRadiusUncertainty"
  | "expansion"
  | "foot"
>;
