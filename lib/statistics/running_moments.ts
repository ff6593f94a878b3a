/**
 * Mean and spread of a stream of numbers, one at a time.
 *
 * @module
 */
import { requireFinite } from "./_guards.ts";

/**
 * Keeps count, mean, standard deviation and extremes of values as they come.
 *
 * Each value is taken from the first one before it is added, and the sum of
 * squared deviations is updated about the moving mean, so that nothing large
 * is ever subtracted from something large: on a million values round 10⁷ with
 * a spread of 0.1 the standard deviation keeps seven digits or more.
 *
 * @see B. P. Welford (1962), Technometrics 4, 419-420; merging after T. F.
 * Chan, G. H. Golub, R. J. LeVeque (1983), The American Statistician 37,
 * 242-247.
 *
 * @example
 * ```ts
 * import { RunningMoments } from "sagbook/statistics/running_moments.ts";
 * import { equal } from "node:assert/strict";
 *
 * const moments = new RunningMoments();
 * for (const value of [2, 3, 4]) moments.add(value);
 * equal(moments.mean, 3);
 * equal(moments.standardDeviation, 1);
 * ```
 */
export class RunningMoments {
  #count = 0;
  #pivot = 0;
  #offset = 0;
  #squares = 0;
  #min = Infinity;
  #max = -Infinity;

  /**
   * Takes one more value into account.
   *
   * @param value A finite number.
   * @throws {RangeError} If `value` is not finite.
   */
  add(value: number): void {
    requireFinite(value, "add to running moments", "a value");
    if (this.#count === 0) this.#pivot = value;
    this.#count++;
    const shifted = value - this.#pivot;
    const before = shifted - this.#offset;
    this.#offset += before / this.#count;
    this.#squares += before * (shifted - this.#offset);
    if (value < this.#min) this.#min = value;
    if (value > this.#max) this.#max = value;
  }

  /**
   * Takes all values of another stream into account.
   *
   * @param other Moments of the other stream, which stays as it is.
   */
  merge(other: RunningMoments): void {
    if (other.#count === 0) return;
    if (this.#count === 0) this.#pivot = other.#pivot;
    const count = this.#count + other.#count;
    const apart = other.#pivot - this.#pivot + other.#offset - this.#offset;
    this.#squares += other.#squares +
      apart * apart * this.#count * other.#count / count;
    this.#offset += apart * other.#count / count;
    this.#count = count;
    this.#min = Math.min(this.#min, other.#min);
    this.#max = Math.max(this.#max, other.#max);
  }

  /** How many values have been added. */
  get count(): number {
    return this.#count;
  }

  /** Mean of the values; undefined before the first one. */
  get mean(): number | undefined {
    return this.#count === 0 ? undefined : this.#pivot + this.#offset;
  }

  /** Variance with divisor n - 1; undefined below two values. */
  get variance(): number | undefined {
    return this.#count < 2
      ? undefined
      : Math.max(0, this.#squares) / (this.#count - 1);
  }

  /** Standard deviation with divisor n - 1; undefined below two values. */
  get standardDeviation(): number | undefined {
    const variance = this.variance;
    return variance === undefined ? undefined : Math.sqrt(variance);
  }

  /** Smallest value; undefined before the first one. */
  get min(): number | undefined {
    return this.#count === 0 ? undefined : this.#min;
  }

  /** Largest value; undefined before the first one. */
  get max(): number | undefined {
    return this.#count === 0 ? undefined : this.#max;
  }
}
