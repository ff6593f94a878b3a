/**
 * The distribution of a radius of curvature, by drawing all its sources.
 *
 * @module
 */
import type { Random } from "../numerics/random.ts";
import {
  type CoverageInterval,
  coverageIntervals,
} from "./coverage_interval.ts";
import { type Histogram, histogramOf } from "./histogram.ts";
import {
  type BudgetCheck,
  checkBudget,
  monteCarlo,
  type MonteCarloOptions,
} from "./monte_carlo.ts";
import { type RadiusBudget, radiusBudget } from "./radius_budget.ts";
import type { RadiusMeasurement } from "./radius_measurement.ts";
import { radiusModel } from "./radius_model.ts";

/** What the draws say about a radius. */
export interface RadiusDistribution {
  /** The budget of first order beside it. */
  readonly budget: RadiusBudget;
  /** How many draws were made. */
  readonly draws: number;
  /** Whether the results have settled to two figures of the uncertainty. */
  readonly settled: boolean;
  /** Share the intervals hold. */
  readonly confidence: number;
  /** Mean R in mm; absent when heavy-tailed or nearly flat. */
  readonly mean?: number;
  /** Standard deviation of R in mm; absent when heavy-tailed or nearly flat. */
  readonly standardUncertainty?: number;
  /** Shortest interval of R in mm; absent when heavy-tailed or nearly flat. */
  readonly shortest?: CoverageInterval;
  /**
   * The interval of R in mm with equal shares outside, from the curvature's;
   * absent when it includes a flat.
   */
  readonly symmetric?: CoverageInterval;
  /** The shortest radius the interval of curvature allows, in mm. */
  readonly atLeast: number;
  /** The interval of curvature with equal shares outside, in 1/mm. */
  readonly curvature: CoverageInterval;
  /** Draws in which the surface curves the other way; none is dropped. */
  readonly otherSideDraws: number;
  /**
   * Whether R ± U of the budget may stand for the interval with equal shares
   * outside, which like it is meant to be even about R, and whose ends carry
   * less of the draws' own scatter than the shortest interval's.
   */
  readonly check?: BudgetCheck;
  /** Counts over R in mm, or over curvature in 1/mm where R has no mean. */
  readonly histogram: Histogram;
  /** What the histogram counts. */
  readonly histogramOf: "radius" | "curvature";
}

/**
 * Finds the distribution of a radius by drawing all its sources.
 *
 * The curvature is drawn, which passes smoothly through a flat, and turned
 * into R at the end. Where R has a usable mean it is given with its standard
 * deviation and shortest interval. Where it has none (a flat is within reach)
 * the draws on the other side are counted and kept, the interval is taken in
 * curvature and inverted, and neither mean nor deviation is given: they would
 * change from seed to seed without limit.
 *
 * @param measurement What was measured, with what.
 * @param options Random numbers, share, and a number of draws if the run is
 * not to stop by itself when two figures have settled.
 * @returns Intervals, moments where they exist, and the clause 8 check.
 *
 * @see JCGM 101:2008, 6.4 (distributions), 7 (method), 8 (check of the GUM's
 * own interval).
 *
 * @example
 * ```ts
 * import { radiusMonteCarlo } from "sagbook/uncertainty/radius_monte_carlo.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { ok } from "node:assert/strict";
 *
 * const ring = {
 *   id: "A", radiusUncertainty: mm(0.02), radiusUncertaintyAssumed: false,
 *   ballRadiusUncertainty: mm(0.001), expansion: 11.5e-6, foot: { kind: "unknown" },
 *   shape: { kind: "balls", circleRadius: mm(60), ballRadius: mm(3), probeOffset: mm(0) },
 * } as const;
 * const sag = { value: 0.715, own: 0.0005, dof: Infinity, common: {} };
 * const found = radiusMonteCarlo({ form: "concave", sag, ring }, {
 *   random: new Random(1), draws: 20_000,
 * });
 * ok(Math.abs((found.standardUncertainty ?? 0) - 2.43) < 0.1);
 * ok(found.otherSideDraws === 0);
 * ```
 */
export function radiusMonteCarlo(
  measurement: RadiusMeasurement,
  options: Omit<MonteCarloOptions, "correlation"> & { readonly random: Random },
): RadiusDistribution {
  const { confidence = 0.95 } = options;
  const budget = radiusBudget(measurement, { confidence });
  const { inputs, curvature: model } = radiusModel(measurement);
  const drawn = monteCarlo(model, inputs, options);
  const { values, draws, symmetric } = drawn;
  let otherSideDraws = 0;
  for (let i = 0; i < draws; i++) if (!(values[i] > 0)) otherSideDraws++;
  const { lower, upper } = symmetric;
  const base = {
    budget,
    draws,
    confidence,
    curvature: symmetric,
    otherSideDraws,
    atLeast: 1 / Math.max(Math.abs(lower), Math.abs(upper)),
    ...(lower > 0 ? { symmetric: { lower: 1 / upper, upper: 1 / lower } } : {}),
  };
  if (budget.estimate === undefined || otherSideDraws > 0) {
    return {
      ...base,
      settled: drawn.settled,
      histogram: histogramOf(values, symmetric),
      histogramOf: "curvature",
    };
  }
  // One draw, one radius: the same draws, in the unit that is asked for.
  for (let i = 0; i < draws; i++) values[i] = 1 / values[i];
  const { shortest } = coverageIntervals(values, confidence);
  const { mean, deviation } = momentsOf(values);
  const { standardUncertainty: u = 0, expanded = 0, radius = 0 } = budget;
  return {
    ...base,
    settled: drawn.settled,
    mean,
    standardUncertainty: deviation,
    shortest,
    check: checkBudget(
      {
        lower: radius - expanded,
        upper: radius + expanded,
        standardUncertainty: u,
      },
      { lower: 1 / upper, upper: 1 / lower },
    ),
    histogram: histogramOf(values, shortest),
    histogramOf: "radius",
  };
}

function momentsOf(values: Float64Array): { mean: number; deviation: number } {
  const origin = values[0];
  let [sum, squares] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    const distance = values[i] - origin;
    sum += distance;
    squares += distance * distance;
  }
  const n = values.length;
  const variance = Math.max(0, squares - sum * sum / n) / (n - 1);
  return { mean: origin + sum / n, deviation: Math.sqrt(variance) };
}
