/**
 * Two ends of an interval.
 *
 * @module
 */

/** A lower and an upper end, in the unit of the value between them. */
export interface Interval {
  /** The lower end. */
  readonly low: number;
  /** The upper end. */
  readonly high: number;
}
