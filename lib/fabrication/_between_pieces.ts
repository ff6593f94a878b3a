/**
 * Scatter between pieces that their uncertainties leave over.
 *
 * @module
 */
import { findRoot } from "../numerics/root.ts";
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";

/** Below this chance pieces agree better than their uncertainties let them. */
const TOO_GOOD = 0.02;

/** Scatter between pieces, and the factor of all variances. */
export interface BetweenPieces {
  /** Variance between pieces, at least 0. */
  readonly variance: number;
  /** Factor of all variances: 1, or less where the pieces agree better. */
  readonly scale: number;
}

/**
 * The variance at which the weighted squares equal their degrees of freedom;
 * where none is needed, how far the stated uncertainties are too large.
 */
export function betweenPieces(
  left: (variance: number) => number,
  dof: number,
  guess: number,
  stated: boolean,
): BetweenPieces {
  const bare = left(0);
  if (bare <= dof) {
    const least = stated ? chiSquareQuantile(TOO_GOOD, dof) / dof : 0;
    return { variance: 0, scale: Math.max(bare / dof, least) };
  }
  let high = guess;
  while (left(high) > dof) high *= 4;
  const variance = findRoot((v) => left(v) - dof, 0, high, {
    tolerance: 1e-9 * high,
  });
  return { variance, scale: 1 };
}
