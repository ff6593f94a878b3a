/**
 * Student's interval of a mean, widened by what a display step may hide.
 *
 * @module
 */
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import type { Interval } from "../statistics/interval.ts";
import { normalQuantile } from "../statistics/normal_distribution.ts";
import {
  roundingHalfWidth,
  survivingRounding,
} from "../statistics/rounding_floor.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { summarise } from "../statistics/summary.ts";

/** A mean with the intervals that decide. */
export interface MeanIntervals {
  readonly mean: number;
  readonly interval90: Interval;
  readonly interval95: Interval;
}

interface Factors {
  readonly t90: number;
  readonly t95: number;
  readonly chiSquareUpper5: number;
}

const remembered = new Map<number, Factors>();

/** Quantiles for whole degrees of freedom, computed once. */
function factorsFor(dof: number): Factors {
  let known = remembered.get(dof);
  if (!known) {
    known = {
      t90: studentTQuantile(0.05, dof, "upper"),
      t95: studentTQuantile(0.025, dof, "upper"),
      chiSquareUpper5: chiSquareQuantile(0.05, dof, "upper"),
    };
    remembered.set(dof, known);
  }
  return known;
}

/**
 * What two roundings hide of a mean of values with a scatter, in mm, for one
 * half width at the given probability outside.
 *
 * Rounding errors of a reading and of its zero make a triangle of one step
 * either way. The scatter averages it by `exp(-2 π² σ²)` with σ in steps; the
 * lower 95 % limit of the estimated scatter is used, less the rounding in it.
 */
function hidden(
  variance: number,
  dof: number,
  step: number,
  tail: number,
): number {
  if (step === 0) return 0;
  const left = survivingRounding(
    variance / (step * step),
    dof,
    factorsFor(dof).chiSquareUpper5,
  );
  return roundingHalfWidth(tail) * step * left;
}

/**
 * Intervals of the mean of independent values; undefined below two. `known` is
 * a standard deviation of their common error, which they cannot show.
 */
export function intervalsOfMean(
  values: readonly number[],
  step: number,
  known: number = 0,
): MeanIntervals | undefined {
  if (values.length < 2) return undefined;
  const { mean, standardDeviation = 0 } = summarise(values);
  const dof = values.length - 1;
  const variance = standardDeviation ** 2;
  return around(mean, variance / values.length, variance, dof, step, 1, known);
}

/**
 * Intervals of the mean of `second` less that of `first`, one variance.
 * `known` is a standard deviation of the difference that they cannot show.
 */
export function intervalsOfChange(
  first: readonly number[],
  second: readonly number[],
  step: number,
  known: number,
): MeanIntervals | undefined {
  const dof = first.length + second.length - 2;
  if (first.length < 1 || second.length < 1 || dof < 1) return undefined;
  const [a, b] = [summarise(first), summarise(second)];
  const squares = ({ count, standardDeviation = 0 }: typeof a): number =>
    (count - 1) * standardDeviation ** 2;
  const variance = (squares(a) + squares(b)) / dof;
  return around(
    b.mean - a.mean,
    variance * (1 / a.count + 1 / b.count),
    variance,
    dof,
    step,
    Math.SQRT2,
    known,
  );
}

function around(
  mean: number,
  varianceOfMean: number,
  variance: number,
  dof: number,
  step: number,
  times: number = 1,
  known: number = 0,
): MeanIntervals {
  const { t90, t95 } = factorsFor(dof);
  const interval = (t: number, tail: number): Interval => {
    const half = Math.hypot(
      t * Math.sqrt(varianceOfMean),
      times * hidden(variance, dof, step, tail),
      known === 0 ? 0 : known * normalQuantile(tail / 2, "upper"),
    );
    return { low: mean - half, high: mean + half };
  };
  return {
    mean,
    interval90: interval(t90, 0.1),
    interval95: interval(t95, 0.05),
  };
}
