/**
 * The bench: gauge, rings and reference flat.
 *
 * @module
 */
import type { FootDirection, SurfaceForm } from "../geometry/feet.ts";
import type { RingShape } from "../geometry/ring.ts";
import type { Millimetres } from "../units/length.ts";
import type { LengthUnit } from "./piece.ts";
import type { RingRecord } from "./ring_record.ts";
import type { WorkHabits } from "./work_habits.ts";

/** What the gauge's display shows. */
export type GaugeShows =
  | { readonly kind: "sag" }
  | {
    readonly kind: "radius";
    /** Foot circle radius set in the gauge, in mm. */
    readonly circleRadius: Millimetres;
    /** Ball radius set in the gauge, in mm. */
    readonly ballRadius: Millimetres;
  }
  | {
    readonly kind: "power";
    /** Refractive index set in the gauge. */
    readonly index: number;
    /** Foot circle radius (half the span of a bar) set in the gauge, in mm. */
    readonly circleRadius: Millimetres;
    /** Ball radius set in the gauge, in mm. */
    readonly ballRadius: Millimetres;
  };

/** The gauge. */
export interface Gauge {
  /** The user's name for it. */
  readonly id: string;
  /** What it shows. */
  readonly shows: GaugeShows;
  /** The surface on which its numbers grow. */
  readonly countsUpOn: SurfaceForm | "declared surface";
  /** The unit of a reading that names none. */
  readonly unit?: LengthUnit;
  /** Display step in mm for readings in each unit. */
  readonly steps: Readonly<Partial<Record<LengthUnit, Millimetres>>>;
  /** Standard uncertainty of its scale, as a fraction of the sag. */
  readonly scaleUncertainty: number;
  /** Stated lean of the stem in degrees, where the user states one. */
  readonly tiltDegrees?: number;
}

/** One ring (or bar) of the bench. */
export interface Ring {
  /** The user's name for it. */
  readonly id: string;
  /** Its feet. */
  readonly shape: RingShape;
  /** Standard uncertainty of the foot circle's radius, in mm. */
  readonly radiusUncertainty: Millimetres;
  /** True when `radiusUncertainty` is our default, not the user's. */
  readonly radiusUncertaintyAssumed: boolean;
  /** Standard uncertainty of the ball radius, in mm. */
  readonly ballRadiusUncertainty: Millimetres;
  /** Linear expansion per kelvin. */
  readonly expansion: number;
  /** How foot 1 stands when a reading does not say. */
  readonly foot: FootDirection;
  /** ISO date of the last calibration. */
  readonly calibratedOn?: string;
  /** What was measured to calibrate it, where the user keeps that. */
  readonly record?: RingRecord;
}

/** The reference flat the gauge is zeroed on. */
export interface ReferenceFlat {
  /** Its name. */
  readonly id: string;
  /** Side or diameter in mm. */
  readonly size?: Millimetres;
  /** Largest departure from a plane over its size, in mm. */
  readonly flatness?: Millimetres;
}

/** Everything that stays on the bench between pieces. */
export interface Bench {
  /** The gauge. */
  readonly gauge: Gauge;
  /** Every ring and bar, at least one. */
  readonly rings: readonly Ring[];
  /** The reference flat. */
  readonly flat?: ReferenceFlat;
  /** What the shop states about its own work. */
  readonly work?: WorkHabits;
  /** The decimal mark of the user's files, where the user states it. */
  readonly decimalMark?: "point" | "comma";
}
