/**
 * What a linear mixed model is made of, and what fitting it gives.
 *
 * @module
 */

/** One column of the fixed part of a model. */
export interface FixedColumn {
  /** Name of the column's coefficient. */
  readonly name: string;
  /** One finite number for each reading. */
  readonly values: ArrayLike<number>;
}

/** One factor whose levels shift readings at random. */
export interface RandomFactor {
  /** Name of the factor. */
  readonly name: string;
  /** The level of each reading. Levels are the same where labels are. */
  readonly labels: ArrayLike<string | number>;
}

/**
 * Readings with columns that shift them by fixed amounts and factors that
 * shift them at random: y = X β + Σ Z_k u_k + e, all u and e independent.
 */
export interface MixedModel {
  /** The readings. */
  readonly response: ArrayLike<number>;
  /** Fixed columns; include an intercept unless cell means are given. */
  readonly fixed: readonly FixedColumn[];
  /** Random factors, crossed or nested; none is allowed. */
  readonly random: readonly RandomFactor[];
}

/** Which likelihood a fit maximises: restricted (REML) or full (ML). */
export type LikelihoodKind = "restricted" | "full";

/** The variance of one source of scatter. */
export interface VarianceComponent {
  /** Name of the factor, or `"residual"`. */
  readonly name: string;
  /** Number of levels; of readings for the residual. */
  readonly levels: number;
  /**
   * Variance, 0 or more; undefined for a source that the design cannot tell
   * from another one that stands in for it.
   */
  readonly variance: number | undefined;
  /** Its square root. */
  readonly standardDeviation: number | undefined;
  /**
   * Standard error of the variance from the curvature of the likelihood;
   * undefined on the zero boundary, where it has none.
   */
  readonly standardError: number | undefined;
  /** Whether the likelihood is highest at a variance of exactly 0. */
  readonly atBoundary: boolean;
  /**
   * Sources that the design cannot tell from this one; where the variance is
   * given it is that of all of them together. Empty if it stands alone.
   */
  readonly confoundedWith: readonly string[];
}

/** One coefficient of the fixed part. */
export interface FixedEffect {
  /** Name of its column. */
  readonly name: string;
  /** The coefficient; undefined if the column follows from earlier ones. */
  readonly estimate: number | undefined;
  /** Its standard error. */
  readonly standardError: number | undefined;
  /** Satterthwaite's degrees of freedom of the standard error. */
  readonly dof: number | undefined;
  /** Earlier columns that make this one up; empty if it stands alone. */
  readonly aliasedWith: readonly string[];
}

/** The predicted shifts of one factor's levels. */
export interface RandomShifts {
  /** Name of the factor. */
  readonly name: string;
  /** Its levels in order of first appearance. */
  readonly labels: readonly string[];
  /** Best linear unbiased prediction of each level's shift. */
  readonly shifts: readonly number[];
  /** Standard deviation of shift less prediction. */
  readonly errors: readonly number[];
}

/**
 * Whether there was something to fit: `"no residual scatter"` if fixed part and
 * random shifts together meet every reading exactly, so that the residual
 * variance is 0 and only the others are fitted; `"no scatter"` if the fixed
 * part alone does, though readings are left over; `"saturated"` if no reading
 * is left over.
 */
export type FitStatus =
  | "fitted"
  | "no residual scatter"
  | "no scatter"
  | "saturated";

/** A fitted mixed model, as plain data. */
export interface MixedModelFit {
  /** Whether there was something to fit. */
  readonly status: FitStatus;
  /** Number of readings. */
  readonly observations: number;
  /** Number of independent fixed columns. */
  readonly rank: number;
  /** Which likelihood was maximised. */
  readonly likelihood: LikelihoodKind;
  /**
   * Its highest logarithm. Restricted: -½[(n-p) ln 2π + ln|V| + ln|X'V⁻¹X| +
   * (y-Xβ)'V⁻¹(y-Xβ)], without a term in X'X; full: the same without the term
   * in X and with n for n-p. Undefined unless fitted.
   */
  readonly logLikelihood: number | undefined;
  /** One component for each factor in the order given, then the residual. */
  readonly components: readonly VarianceComponent[];
  /** One coefficient for each fixed column in the order given. */
  readonly fixed: readonly FixedEffect[];
  /** Covariance of the independent coefficients, in order. */
  readonly fixedCovariance: readonly (readonly number[])[];
  /** Predicted shifts of each factor that stands alone or stands in. */
  readonly shifts: readonly RandomShifts[];
  /** What Satterthwaite's degrees of freedom of any contrast need. */
  readonly curvature: MixedModelCurvature;
  /** How often the likelihood was evaluated. */
  readonly evaluations: number;
}

/** How the covariance of the coefficients depends on the variances. */
export interface MixedModelCurvature {
  /** Names of the variances above 0, the residual last. */
  readonly names: readonly string[];
  /** Covariance of their estimates, from the observed information. */
  readonly covariance: readonly (readonly number[])[];
  /** For each variance the derivative of `fixedCovariance` by it. */
  readonly slopes: readonly (readonly (readonly number[])[])[];
}
