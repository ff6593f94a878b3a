/**
 * What the plan of the work needs.
 *
 * @module
 */
import type { FootDirection } from "../geometry/feet.ts";

/** One reading of the work. */
export interface PlanFigureReading {
  /** Signed distance of the gauge's axis along the diameter, in mm. */
  readonly offset: number;
  /** Direction of the diameter in the work's own axes, in degrees. */
  readonly diameterDegrees?: number;
  /** Where foot 1 pointed. */
  readonly foot: FootDirection;
  /**
   * Sag less the mean of its set, in mm: 0 everywhere on a sphere, whatever the
   * zero.
   */
  readonly departure: number;
}

/** What `planFigure` draws. */
export interface PlanFigureInput {
  /** Half the outer diameter of the work, in mm. */
  readonly halfDiameter: number;
  /** Width of the bevel, in mm. */
  readonly bevel: number;
  /** Distance from the gauge's axis at which the feet touch, in mm. */
  readonly contactRadius: number;
  /** What stands there: three balls, two feet of a bar, or a whole edge. */
  readonly feet: "balls" | "bar" | "edge";
  /**
   * Display step of the gauge, in mm. Departures are told apart by half of it
   * at best, or by a nanometre where it is not given.
   */
  readonly displayStep?: number;
  /** The readings. */
  readonly readings: readonly PlanFigureReading[];
}
