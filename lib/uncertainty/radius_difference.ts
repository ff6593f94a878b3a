/**
 * How two radii differ that share a ring, a gauge, a flat or a zero.
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";
import { subtractEstimates } from "../statistics/estimate_arithmetic.ts";
import { expandUncertainty } from "../statistics/estimate_uncertainty.ts";

/** A difference of two radii, and what both share. */
export interface RadiusDifference {
  /** First radius less second, in mm. */
  readonly difference: number;
  /** Standard uncertainty of that in mm, shared parts taken off first. */
  readonly standardUncertainty: number;
  /** Expanded uncertainty in mm, 95 %. */
  readonly expanded: number;
  /** Size of the difference over its expanded uncertainty (E_n). */
  readonly normalisedError: number;
  /** Expanded uncertainty in mm if nothing were shared, for comparison. */
  readonly asIfIndependent: number;
  /** Ids of the sources that act on both. */
  readonly shared: readonly string[];
}

/**
 * Subtracts two radii, letting what they share cancel as far as it does.
 *
 * A ring's radius, its balls, the gauge's scale and the flat act on both radii
 * of a pair; in the difference only the difference of their effects is left.
 *
 * @param first A radius with shared parts by id, in mm.
 * @param second Another.
 * @returns The difference with its uncertainty; undefined when neither has an
 * uncertainty, where nothing can be judged.
 *
 * @see JCGM 100:2008, 5.2.2; ISO 13528:2022, 9.7 (E_n scores).
 *
 * @example Two zones read with one ring: its error is all but gone
 * ```ts
 * import { radiusDifference } from "sagbook/uncertainty/radius_difference.ts";
 * import { equal } from "node:assert/strict";
 *
 * const zone = (value: number, ring: number) => ({
 *   value, own: 1.765, dof: Infinity, common: { "ring A radius": ring },
 * });
 * const found = radiusDifference(zone(2527.9, 1.683), zone(2520.84, 1.6783));
 * equal(found?.expanded.toFixed(2), "4.89");
 * equal(found?.asIfIndependent.toFixed(2), "6.76");
 * ```
 */
export function radiusDifference(
  first: Estimate,
  second: Estimate,
): RadiusDifference | undefined {
  const apart = subtractEstimates(first, second);
  const { expanded, standardUncertainty } = expandUncertainty(apart);
  if (!(expanded > 0)) return undefined;
  return {
    difference: apart.value,
    standardUncertainty,
    expanded,
    normalisedError: Math.abs(apart.value) / expanded,
    asIfIndependent: Math.hypot(
      expandUncertainty(first).expanded,
      expandUncertainty(second).expanded,
    ),
    shared: Object.keys(first.common).filter((id) =>
      first.common[id] !== 0 && (second.common[id] ?? 0) !== 0
    ),
  };
}
