/**
 * The radius a report states, and what its uncertainty covers.
 *
 * @module
 */
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";

/** A radius with what is known of its uncertainty. */
export interface RadiusStatement {
  /** Radius of curvature in mm. */
  readonly radius: Millimetres;
  /** Expanded uncertainty in mm, about 95 %; undefined when nothing is known. */
  readonly expanded?: Millimetres;
  /** Coverage factor behind `expanded`. */
  readonly coverageFactor?: number;
  /** Effective degrees of freedom behind `expanded`. */
  readonly dof?: number;
  /** Where it was read: all zones of a sphere, or the centre only. */
  readonly over: "all zones" | "centre";
  /**
   * What the uncertainty covers: `everything` a budget names (repeating, ring,
   * ball, gauge, flat), or `repeating` alone.
   */
  readonly covers: "everything" | "repeating" | "nothing";
}

/**
 * Chooses the radius a report may state for a session.
 *
 * A sphere has one radius, from all its zones. On a surface that is not one,
 * or is not known to be, the zones are not averaged into a figure that belongs
 * to no place: the radius is that of the innermost zone.
 *
 * @param session The session.
 * @returns Undefined when no radius belongs to the readings.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function stateRadius(
  session: Pick<SessionAnalysis, "zones" | "whole" | "sphericity">,
): RadiusStatement | undefined {
  const sphere = session.sphericity.verdict === "within" ||
    session.zones.length === 1;
  const from = sphere ? session.whole : session.zones[0];
  if (from?.radius === undefined) return undefined;
  const { radius, interval95 } = from.radius;
  const over = sphere && session.zones.length > 1 ? "all zones" : "centre";
  if (interval95 === undefined) return { radius, over, covers: "nothing" };
  // The interval of a reciprocal is lopsided; the longer side is stated.
  const expanded = Math.max(interval95.high - radius, radius - interval95.low);
  const dof = from.mean.dof;
  return {
    radius,
    expanded: millimetres(expanded),
    dof,
    over,
    covers: "repeating",
  };
}

/**
 * Writes a stated length, or half of it, with its uncertainty.
 *
 * @param statement The radius.
 * @param unit The user's unit.
 * @param part 1 for the radius, 1/2 for the focal length of a sphere.
 * @returns Such as `2519.7 ± 1.4 mm`; without an uncertainty `about 2520 mm`.
 *
 * @example
 * ```ts
 * import { writeRadius } from "sagbook/narrative/radius_statement.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const statement = {
 *   radius: mm(2519.667), expanded: mm(2.4), over: "centre", covers: "repeating",
 * } as const;
 * equal(writeRadius(statement, "mm").replaceAll("\u00a0", " "), "2519.7 ± 2.4 mm");
 * ```
 */
export function writeRadius(
  statement: RadiusStatement,
  unit: LengthUnit,
  part: number = 1,
): string {
  const value = millimetres(statement.radius * part);
  return statement.expanded === undefined
    ? `about ${formatLength(value, unit, unit === "mm" ? 0 : 1)}`
    : formatWithUncertainty(
      value,
      millimetres(statement.expanded * part),
      unit,
    );
}
