/**
 * The two forms a shop's habit may take.
 *
 * @module
 */
import type { StraightLine } from "../statistics/straight_line.ts";

/** The mean of 2f/R − 1, and how the pieces scatter about it. */
export interface MeanRatio {
  /** The mean. */
  readonly value: number;
  /** Its standard error. */
  readonly standardError: number;
  /** Degrees of freedom. */
  readonly dof: number;
  /** Standard deviation between pieces beyond their uncertainties. */
  readonly between: number;
  /** Factor of all variances: 1, or less where the pieces agree better. */
  readonly scale: number;
  /** Standard uncertainty of a typical piece's ratio. */
  readonly typical: number;
}

/** The line, in mm against mm, and how the pieces scatter about it. */
export interface HabitLine {
  /** The line with its standard errors. */
  readonly line: StraightLine;
  /** Degrees of freedom. */
  readonly dof: number;
  /** Standard deviation between pieces beyond their uncertainties, in mm. */
  readonly between: number;
  /** Factor of all variances: 1, or less where the pieces agree better. */
  readonly scale: number;
  /** Standard uncertainty of a typical piece's focal length, in mm. */
  readonly typicalFocus: number;
}
