/**
 * The range of a normal sample, and the studentized range.
 *
 * @module
 */
import { findRoot } from "../numerics/root.ts";
import { integrate } from "./_gauss_legendre.ts";
import { requireDegreesOfFreedom, requireProbability } from "./_guards.ts";
import { complementaryErrorFunction, logGamma } from "./_special_functions.ts";
import { chiSquareQuantile } from "./chi_square_distribution.ts";
import type { Tail } from "./normal_distribution.ts";

/** Beyond this many standard deviations a normal density adds nothing. */
const FAR = 8.5;

/**
 * Finds the probability that the range of a standard normal sample lies below
 * a value.
 *
 * Integrates the density of the smallest value times the chance that the rest
 * lie within the range above it, both halves of the symmetric chance at once.
 * Absolute accuracy 1e-13.
 *
 * @param range Value, 0 or more, in standard deviations.
 * @param count Number of values in the sample, a whole number of at least 2.
 * @returns The probability, 0 to 1.
 * @throws {RangeError} If an argument is out of range.
 *
 * @see H. L. Harter (1960), Annals of Mathematical Statistics 31, 1122-1147.
 *
 * @example Two values differ by less than one standard deviation
 * ```ts
 * import { normalRangeProbability } from "sagbook/statistics/studentized_range.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(normalRangeProbability(1, 2).toFixed(6), "0.520500");
 * ```
 */
export function normalRangeProbability(range: number, count: number): number {
  requireCount(count, "find a probability of a range");
  if (!(range >= 0)) {
    throw new RangeError(
      `Cannot find a probability of a range as the value must be 0 or more: current value is ${range}`,
    );
  }
  if (range === 0) return 0;
  if (range > 4 * FAR) return 1;
  const half = range / 2;
  const chance = integrate((u) => {
    const within = (complementaryErrorFunction((u - half) / Math.SQRT2) -
      complementaryErrorFunction((u + half) / Math.SQRT2)) / 2;
    const density = Math.exp(-((u - half) ** 2) / 2) +
      Math.exp(-((u + half) ** 2) / 2);
    return density * within ** (count - 1);
  }, [-FAR, -3, 0, 3, FAR].map((step) => Math.max(0, half + step)));
  return Math.min(1, count * chance / Math.sqrt(2 * Math.PI));
}

/**
 * Finds the probability that a studentized range lies below, or above, a
 * value.
 *
 * The range of `count` means divided by an independent standard error with
 * `dof` degrees of freedom. Absolute accuracy 1e-11.
 *
 * @param q Value, 0 or more.
 * @param count Number of means compared, a whole number of at least 2.
 * @param dof Degrees of freedom of the standard error, at least 1; `Infinity`
 * is allowed.
 * @param tail Which side is asked for.
 * @returns The probability, 0 to 1.
 * @throws {RangeError} If an argument is out of range.
 *
 * @see H. L. Harter (1960), Annals of Mathematical Statistics 31, 1122-1147.
 *
 * @example
 * ```ts
 * import { studentizedRangeProbability } from "sagbook/statistics/studentized_range.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(studentizedRangeProbability(3.877, 3, 10, "upper").toFixed(3), "0.050");
 * ```
 */
export function studentizedRangeProbability(
  q: number,
  count: number,
  dof: number,
  tail: Tail = "lower",
): number {
  const action = "find a probability of a studentized range";
  requireCount(count, action);
  requireDofOfRange(dof, action);
  if (!(q >= 0)) {
    throw new RangeError(
      `Cannot ${action} as the value must be 0 or more: current value is ${q}`,
    );
  }
  const below = dof === Infinity
    ? normalRangeProbability(q, count)
    : averagedOverStandardError(q, count, dof);
  return tail === "lower" ? below : 1 - below;
}

/**
 * Finds the value that a studentized range exceeds, or stays below, with a
 * given probability.
 *
 * Used to compare every pair of several means at once: two means differ when
 * they are further apart than this times the standard error of one mean.
 * Relative accuracy 1e-9 for probabilities from 0.001 to 0.999.
 *
 * @param probability Probability of the tail, above 0 and below 1.
 * @param count Number of means compared, a whole number of at least 2.
 * @param dof Degrees of freedom of the standard error, at least 1; `Infinity`
 * is allowed.
 * @param tail Which side of the value has that probability.
 * @returns The value, above 0.
 * @throws {RangeError} If an argument is out of range.
 *
 * @see H. L. Harter (1960), Annals of Mathematical Statistics 31, 1122-1147.
 *
 * @example Three zones, ten degrees of freedom
 * ```ts
 * import { studentizedRangeQuantile } from "sagbook/statistics/studentized_range.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(studentizedRangeQuantile(0.05, 3, 10, "upper").toFixed(2), "3.88");
 * ```
 */
export function studentizedRangeQuantile(
  probability: number,
  count: number,
  dof: number,
  tail: Tail = "lower",
): number {
  const action = "find a quantile of a studentized range";
  requireProbability(probability, action);
  requireCount(count, action);
  requireDofOfRange(dof, action);
  const excess = (q: number) =>
    studentizedRangeProbability(q, count, dof, tail) - probability;
  const sign = tail === "lower" ? 1 : -1;
  let [low, high] = [0, 4];
  while (excess(high) * sign < 0 && high < 1e12) [low, high] = [high, 2 * high];
  return findRoot(excess, low, high, { tolerance: 1e-12 * high });
}

/** Averages the probability of the range over the standard error's spread. */
function averagedOverStandardError(
  q: number,
  count: number,
  dof: number,
): number {
  if (q === 0) return 0;
  const half = dof / 2;
  const logFactor = Math.log(2) + half * Math.log(half) - logGamma(half);
  const density = (s: number) =>
    Math.exp(logFactor + (dof - 1) * Math.log(s) - half * s * s);
  const least = Math.sqrt(chiSquareQuantile(1e-15, dof, "lower") / dof);
  const most = Math.sqrt(chiSquareQuantile(1e-15, dof, "upper") / dof);
  const breaks = [least, most];
  for (const p of [1e-8, 1e-3, 0.1, 0.5, 0.9, 0.999, 1 - 1e-8]) {
    breaks.push(Math.sqrt(chiSquareQuantile(p, dof) / dof));
  }
  for (const w of [0.25, 0.5, 1, 2, 3, 4, 6, 8, 12, 20]) {
    if (w / q > least && w / q < most) breaks.push(w / q);
  }
  const chance = integrate(
    (s) => density(s) * normalRangeProbability(q * s, count),
    breaks.sort(ascending),
  );
  return Math.min(1, chance);
}

function ascending(a: number, b: number): number {
  return a - b;
}

/** Refuses a number of values that has no range. */
function requireCount(count: number, action: string): void {
  if (!(Number.isInteger(count) && count >= 2)) {
    throw new RangeError(
      `Cannot ${action} as the number of values must be a whole number of at least 2: current value is ${count}`,
    );
  }
}

/** Refuses degrees of freedom below 1. */
function requireDofOfRange(dof: number, action: string): void {
  requireDegreesOfFreedom(dof, action);
  if (dof < 1) {
    throw new RangeError(
      `Cannot ${action} as degrees of freedom must be at least 1: current value is ${dof}`,
    );
  }
}
