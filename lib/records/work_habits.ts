/**
 * How a shop works: its own strokes, pits, removal and thickness readings.
 *
 * @module
 */
import type { Millimetres } from "../units/length.ts";

/** A stroke as the shop uses it. */
export interface StrokeHabit {
  /** Which lies on top. */
  readonly position: "mirror on top" | "tool on top" | "alternate";
  /** The stroke in the shop's words. */
  readonly stroke: string;
}

/** What a stroke is for; concave work, mirror and tool exchanged on convex. */
export type StrokeCase =
  | "deepCentre"
  | "deepCentreShort"
  | "deepEdge"
  | "deepEdgeLong"
  | "shorten"
  | "lengthen";

/** The shop's own rate of removal. */
export interface RemovalHabit {
  /** Glass taken off everywhere by one wet or minute, in mm, above 0. */
  readonly amount: Millimetres;
  /** Its standard uncertainty, in mm. */
  readonly uncertainty: Millimetres;
  /** What it is for. */
  readonly per: "wet" | "minute";
}

/** What a shop states about its own work; what is absent is common practice. */
export interface WorkHabits {
  /** Strokes of its own, by what they are for. */
  readonly strokes?: Readonly<Partial<Record<StrokeCase, StrokeHabit>>>;
  /** Mean grain sizes of the grade before to take off for its pits. */
  readonly pitGrainSizes?: number;
  /** Glass taken off by the work, where no thickness was read. */
  readonly removal?: RemovalHabit;
  /** Standard uncertainty of one thickness, in mm. */
  readonly thicknessUncertainty?: Millimetres;
}
