/**
 * What an analysis of variance gives.
 *
 * @module
 */

/** One row of a table. */
export interface AnovaSource {
  /** Name of the source. */
  readonly name: string;
  /** Degrees of freedom. */
  readonly dof: number;
  /** Sum of squares. */
  readonly sumOfSquares: number;
  /** Sum of squares per degree of freedom; undefined where there is none. */
  readonly meanSquare: number | undefined;
  /**
   * What the mean square is expected to be: the factor of each component's
   * variance in it.
   */
  readonly expected: Readonly<Record<string, number>>;
  /** Name of the source it is tested against. */
  readonly against: string | undefined;
  /** Ratio to that mean square; undefined where that one is 0 or missing. */
  readonly f: number | undefined;
  /** Chance of so large a ratio if the source adds nothing. */
  readonly p: number | undefined;
}

/** A mean square's share in an estimate. */
export interface MeanSquareTerm {
  /** Factor of the mean square. */
  readonly coefficient: number;
  /** The mean square. */
  readonly meanSquare: number;
  /** Its degrees of freedom. */
  readonly dof: number;
}

/** A component of variance by the method of moments. */
export interface MomentComponent {
  /** Name of the source. */
  readonly name: string;
  /** The estimate as it comes, which may be negative. */
  readonly estimate: number;
  /** The estimate, or 0 where it is negative: for use in sums. */
  readonly variance: number;
  /** The mean squares it is made of. */
  readonly terms: readonly MeanSquareTerm[];
}

/** An analysis of variance. */
export interface AnovaTable {
  /** Number of readings. */
  readonly observations: number;
  /** Mean of all readings. */
  readonly grandMean: number;
  /** The sources, the innermost last. */
  readonly sources: readonly AnovaSource[];
  /** All of them together. */
  readonly total: { readonly dof: number; readonly sumOfSquares: number };
  /**
   * Components of variance; a source is missing where the design leaves no
   * degrees of freedom to judge it by.
   */
  readonly components: readonly MomentComponent[];
}
