/**
 * What analyses hand to one another: a value with an uncertainty that
 * remembers which part of it is shared.
 *
 * @module
 */

/**
 * A value, its own standard uncertainty, and what it shares with others.
 *
 * Two results that share a source (the same ring, the same flat) carry the
 * same id in `common`, with the signed change of the value for one standard
 * uncertainty of that source; in a difference the contributions of one id are
 * subtracted before they are squared, so that what is shared cancels where it
 * really does.
 */
export interface Estimate {
  /** The value, in the unit its owner states. */
  readonly value: number;
  /** This result's independent standard uncertainty, at least 0. */
  readonly own: number;
  /** Degrees of freedom of `own`; `Infinity` where it is taken as known. */
  readonly dof: number;
  /** Source id to the signed contribution of one standard uncertainty. */
  readonly common: Readonly<Record<string, number>>;
}
