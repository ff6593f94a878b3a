/**
 * Two ends between which a value lies.
 *
 * @module
 */

/** A lower and an upper end, in the unit of the value they belong to. */
export interface Interval {
  /** Lower end, finite. */
  readonly low: number;
  /** Upper end, finite, not below the lower. */
  readonly high: number;
}
