/**
 * How a measured radius lies to its target: the verdict and its rule.
 *
 * @module
 */

/** A radius as a range of values that are all possible, in mm. */
export interface RadiusRange {
  /** Shortest radius. */
  readonly low: number;
  /** Longest radius; absent where a flat is possible. */
  readonly high?: number;
}

/** A wanted radius. */
export interface WantedRadius {
  /** In mm. */
  readonly radius: number;
  /** How far from it is still good, in mm, either way. */
  readonly tolerance?: number;
}

/** Whether a radius is good, told by all of its range and not its best value. */
export type TargetVerdict =
  /** All of the range lies inside the tolerance. */
  | "within"
  /** All of the range lies above the tolerance: R is longer. */
  | "longer"
  /** All of the range lies below the tolerance: R is shorter. */
  | "shorter"
  /** The range crosses an end of the tolerance. */
  | "not decided";

/**
 * Judges a radius against its target by all values it may have.
 *
 * The ends are used, never half a width, since a range may lie unevenly about
 * its best value. A target without a tolerance is one of 0 mm: a measured
 * radius can miss it for certain and never reach it for certain. Without a
 * range nothing is decided.
 *
 * @param range The radius with its uncertainty, in mm.
 * @param target The wanted radius, in mm.
 * @returns The verdict.
 *
 * @see ISO 14253-1, decision rules: the uncertainty takes from the tolerance
 * when conformity is to be shown, and adds to it for non-conformity.
 *
 * @example An interval that is wider than the tolerance decides nothing
 * ```ts
 * import { againstTarget } from "sagbook/fabrication/against_target.ts";
 * import { equal } from "node:assert/strict";
 *
 * const target = { radius: 2200, tolerance: 10 };
 * equal(againstTarget({ low: 2158, high: 2245 }, target), "not decided");
 * equal(againstTarget({ low: 2195, high: 2207 }, target), "within");
 * equal(againstTarget({ low: 2211 }, target), "longer");
 * ```
 */
export function againstTarget(
  range: RadiusRange | undefined,
  { radius, tolerance = 0 }: WantedRadius,
): TargetVerdict {
  if (range === undefined) return "not decided";
  const { low, high = Infinity } = range;
  if (low > radius + tolerance) return "longer";
  if (high < radius - tolerance) return "shorter";
  return low >= radius - tolerance && high <= radius + tolerance
    ? "within"
    : "not decided";
}
