/**
 * Do two rings give one radius?
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";
import { subtractEstimates } from "../statistics/estimate_arithmetic.ts";
import {
  type ExpandedUncertainty,
  expandUncertainty,
} from "../statistics/estimate_uncertainty.ts";

/** How far two rings agree on one surface. */
export interface RingAgreement {
  /** Difference of the two radii and its uncertainty, in mm. */
  readonly difference: ExpandedUncertainty & { readonly value: number };
  /** The size of the difference over its expanded uncertainty. */
  readonly normalisedError: number;
  /** Whether `normalisedError` is at most 1. */
  readonly agree: boolean;
  /**
   * `with covariance` where the two share a source, whose contributions are
   * subtracted before they are squared; `independent` where they share none.
   */
  readonly form: "with covariance" | "independent";
  /** Ids of the sources that both share. */
  readonly shared: readonly string[];
  /**
   * What agreement cannot show: a slightly spherical reference flat shifts
   * 1/R equally with every ring.
   */
  readonly blindTo: readonly "spherical reference flat"[];
}

/**
 * Compares two radii of one surface, each measured with its own ring.
 *
 * E_n is the difference over the expanded uncertainty of the difference. What
 * the two share (the gauge's scale, the flat) is taken off with its sign
 * before it is squared; the form that adds both uncertainties in quadrature
 * holds only where nothing is shared, and is used only there. The coverage
 * factor is Student's t at the effective degrees of freedom (2 for many).
 *
 * @param first Radius with the first ring, in mm.
 * @param second Radius with the second ring, in mm.
 * @param confidence Probability of the expanded uncertainty, between 0 and 1.
 * @returns The agreement.
 * @throws {RangeError} If the difference carries no uncertainty at all.
 *
 * @see ISO 13528:2022, 9.7 (E_n scores); JCGM 100:2008, 5.2.2.
 *
 * @example What both share cancels and does not hide a disagreement
 * ```ts
 * import { compareRings } from "sagbook/repeatability/compare_rings.ts";
 * import { equal } from "node:assert/strict";
 *
 * const first = { value: 3000, own: 3, dof: Infinity, common: { flat: 20 } };
 * const second = { value: 3011, own: 4, dof: Infinity, common: { flat: 20 } };
 * const found = compareRings(first, second);
 * equal(found.normalisedError.toFixed(3), (11 / (5 * 1.95996)).toFixed(3));
 * equal(found.agree, false);
 * ```
 */
export function compareRings(
  first: Estimate,
  second: Estimate,
  confidence: number = 0.95,
): RingAgreement {
  const apart = subtractEstimates(first, second);
  const expanded = expandUncertainty(apart, confidence);
  if (!(expanded.expanded > 0)) {
    throw new RangeError(
      `Cannot compare two rings as their difference must have an uncertainty above 0 mm: current value is ${expanded.expanded} mm`,
    );
  }
  const shared = Object.keys(first.common).filter((id) =>
    first.common[id] !== 0 && (second.common[id] ?? 0) !== 0
  );
  const normalisedError = Math.abs(apart.value) / expanded.expanded;
  return {
    difference: { ...expanded, value: apart.value },
    normalisedError,
    agree: normalisedError <= 1,
    form: shared.length > 0 ? "with covariance" : "independent",
    shared,
    blindTo: ["spherical reference flat"],
  };
}
