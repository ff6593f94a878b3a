/**
 * Control charts of single values and of small groups.
 *
 * @module
 */
import { requireAllFinite, requireLength } from "./_guards.ts";
import type { Interval } from "./interval.ts";
import { deviationMean, rangeDeviation, rangeMean } from "./range_constants.ts";
import { findRuns, type RunsSignal } from "./runs_rules.ts";

/** Constants of control charts for groups of one size. */
export interface ControlChartConstants {
  /** Mean range over sigma. */
  readonly d2: number;
  /** Standard deviation of the range over sigma. */
  readonly d3: number;
  /** Mean standard deviation over sigma. */
  readonly c4: number;
  /** Limits of group means over the mean range. */
  readonly A2: number;
  /** Lower limit of ranges over the mean range, 0 or more. */
  readonly D3: number;
  /** Upper limit of ranges over the mean range. */
  readonly D4: number;
}

/** One chart: a line through the middle, its limits, its points. */
export interface ControlChart {
  /** The points in order. */
  readonly points: readonly number[];
  /** Centre line. */
  readonly centre: number;
  /** Control limits. */
  readonly limits: Interval;
  /** Patterns that chance would seldom make. */
  readonly signals: readonly RunsSignal[];
}

/** A chart of values or group means, and the chart of their ranges. */
export interface ControlChartPair {
  /** Standard deviation of a single value, from the ranges. */
  readonly sigma: number;
  /** Chart of the values or of the group means. */
  readonly location: ControlChart;
  /**
   * Chart of moving or group ranges; only points beyond its limits are
   * signals, for ranges are not symmetric and moving ones not independent.
   */
  readonly range: ControlChart;
}

/**
 * Finds the constants of control charts for groups of a given size.
 *
 * Computed from the distribution of the range, to 1e-9; printed tables agree to
 * their last digit but one.
 *
 * @param size Readings in a group, a whole number of at least 2.
 * @returns The constants.
 * @throws {RangeError} If `size` is not a whole number of at least 2.
 *
 * @see ASTM Manual on Presentation of Data and Control Chart Analysis, MNL 7.
 *
 * @example
 * ```ts
 * import { controlChartConstants } from "sagbook/statistics/control_chart.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(controlChartConstants(5).A2.toFixed(3), "0.577");
 * ```
 */
export function controlChartConstants(size: number): ControlChartConstants {
  const [d2, d3] = [rangeMean(size), rangeDeviation(size)];
  return {
    d2,
    d3,
    c4: deviationMean(size),
    A2: 3 / (d2 * Math.sqrt(size)),
    D3: Math.max(0, 1 - 3 * d3 / d2),
    D4: 1 + 3 * d3 / d2,
  };
}

/**
 * Makes the chart of single values with the chart of their moving ranges.
 *
 * Sigma comes from the mean difference between neighbours, so that a slow drift
 * shows as points out of limits and does not widen them. Where all values are
 * equal the limits meet the centre line and there is no signal.
 *
 * @param values The values in order of time, at least two.
 * @returns Both charts.
 * @throws {RangeError} If there are fewer than two values or one is not finite.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.2.
 *
 * @example
 * ```ts
 * import { individualsChart } from "sagbook/statistics/control_chart.ts";
 * import { equal } from "node:assert/strict";
 *
 * const chart = individualsChart([10, 11, 10, 12, 11]);
 * equal(chart.range.centre, 1.25);
 * equal(chart.location.limits.high.toFixed(3), "14.123");
 * ```
 */
export function individualsChart(values: readonly number[]): ControlChartPair {
  const action = "chart single values";
  requireLength(values.length, 2, action, "values");
  requireAllFinite(values, action, "value");
  const ranges = values.slice(1).map((value, i) => Math.abs(value - values[i]));
  const meanRange = meanOf(ranges);
  const { d2, D3, D4 } = controlChartConstants(2);
  const sigma = meanRange / d2;
  return {
    sigma,
    location: chart(values, meanOf(values), sigma, 3 * sigma),
    range: rangeChart(ranges, meanRange, D3, D4),
  };
}

/**
 * Makes the chart of group means with the chart of the groups' ranges.
 *
 * Sigma comes from the mean range within groups; where groups differ for a
 * reason of their own, such as a new zeroing, every other mean will lie out of
 * limits, and a chart of the means as single values is the right one.
 *
 * @param groups Groups of equal size in order of time, at least one, each of at
 * least two values.
 * @returns Both charts.
 * @throws {RangeError} If there is no group, sizes differ or are below two, or a
 * value is not finite.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.1.
 *
 * @example
 * ```ts
 * import { groupsChart } from "sagbook/statistics/control_chart.ts";
 * import { equal } from "node:assert/strict";
 *
 * const chart = groupsChart([[10, 12], [11, 11], [10, 13]]);
 * equal(chart.location.limits.high.toFixed(3), "14.300");
 * ```
 */
export function groupsChart(
  groups: readonly (readonly number[])[],
): ControlChartPair {
  const action = "chart groups";
  requireLength(groups.length, 1, action, "groups");
  const size = groups[0].length;
  requireLength(size, 2, action, "values in a group");
  for (const group of groups) {
    if (group.length !== size) {
      throw new RangeError(
        `Cannot ${action} as every group must have ${size} values: current value is ${group.length}`,
      );
    }
    requireAllFinite(group, action, "value");
  }
  const means = groups.map(meanOf);
  const ranges = groups.map((group) => Math.max(...group) - Math.min(...group));
  const meanRange = meanOf(ranges);
  const { d2, A2, D3, D4 } = controlChartConstants(size);
  const sigma = meanRange / d2;
  return {
    sigma,
    location: chart(
      means,
      meanOf(means),
      sigma / Math.sqrt(size),
      A2 * meanRange,
    ),
    range: rangeChart(ranges, meanRange, D3, D4),
  };
}

/** A chart of points of one standard deviation. */
function chart(
  points: readonly number[],
  centre: number,
  sigma: number,
  reach: number,
): ControlChart {
  return {
    points,
    centre,
    limits: { low: centre - reach, high: centre + reach },
    signals: sigma > 0 ? findRuns(points, centre, sigma) : [],
  };
}

/** A chart of ranges. */
function rangeChart(
  points: readonly number[],
  centre: number,
  low: number,
  high: number,
): ControlChart {
  const limits = { low: low * centre, high: high * centre };
  const signals = points.flatMap((point, i): RunsSignal[] =>
    point > limits.high || point < limits.low
      ? [{ rule: "one beyond three sigma", from: i, to: i }]
      : []
  );
  return { points, centre, limits, signals };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
