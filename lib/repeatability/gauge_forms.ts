/**
 * A gauge study of several surfaces in the standard's forms.
 *
 * @module
 */
import { crossedAnova } from "../statistics/crossed_anova.ts";
import {
  gaugeTerms,
  type GaugeVariances,
  gaugeVariances,
} from "../statistics/gauge_study.ts";
import type { Interval } from "../statistics/interval.ts";
import { type RangeFactors, rangeStudy } from "../statistics/range_study.ts";
import { varianceInterval } from "../statistics/variance_interval.ts";

/** One reading of a study of several surfaces. */
export interface SurfaceReading {
  /** The surface (the standard's "part"). */
  readonly surface: string;
  /** Who read it (the standard's "appraiser"). */
  readonly operator: string;
  /** The value, in any one unit. */
  readonly value: number;
}

/** One line of the form. */
export interface GaugeFormLine {
  /** What it is about. */
  readonly name: keyof GaugeVariances;
  /** Standard deviation, in the unit of the readings. */
  readonly deviation: number;
  /** Six standard deviations. */
  readonly sixSigma: number;
  /** Spread as a percentage of the study's spread; these do not add up. */
  readonly percentOfStudy: number;
  /** Spread (six sigma) as a percentage of the width of the tolerance. */
  readonly percentOfTolerance?: number;
}

/** A gauge study in the standard's forms. */
export interface GaugeForms {
  /** `anova` or `averages and ranges`. */
  readonly method: "anova" | "averages and ranges";
  /** Number of surfaces; five or more to be of use. */
  readonly surfaces: number;
  /** False with fewer than five surfaces. */
  readonly enoughSurfaces: boolean;
  /** Whether the interaction was pooled into the repeatability. */
  readonly pooled: boolean;
  /** Standard deviations and spreads. */
  readonly lines: readonly GaugeFormLine[];
  /**
   * Shares of the variance, in per cent; these add up, and are not spreads.
   */
  readonly contributions: Readonly<Record<keyof GaugeVariances, number>>;
  /** How many groups of surfaces the gauge can tell apart, rounded down. */
  readonly distinctCategories?: number;
  /** The same before rounding. */
  readonly distinctCategoriesUnrounded?: number;
  /** Intervals of the variances of the gauge and of the total, by `anova`. */
  readonly intervals?: { readonly gauge: Interval; readonly total: Interval };
}

/** Why a study of surfaces has no form. */
export interface NoGaugeForms {
  /** Always `none`. */
  readonly method: "none";
  /** `one surface`, `one operator`, or every reading the same. */
  readonly reason: "one surface" | "one operator" | "no variation";
}

/** Choices for the form. */
export interface GaugeFormOptions {
  /** Width of the tolerance, from end to end, in the unit of the readings. */
  readonly toleranceWidth?: number;
  /**
   * `separate`, `pooled`, or `as tested` (the default): pooled where its p is
   * above 0.25.
   */
  readonly interaction?: "separate" | "pooled" | "as tested";
  /** Confidence of the intervals; 0.95 unless stated. */
  readonly confidence?: number;
}

/**
 * Puts a study of several surfaces, each read equally often by every operator,
 * into the standard's forms by analysis of variance.
 *
 * Spread (percent of study, percent of tolerance) and contribution to the
 * variance are kept apart: a spread of 30 % is a contribution of 9 %. An
 * interaction with p above 0.25 is pooled, as the standard advises. Surfaces
 * must differ in curvature on purpose, and five or more are of use.
 *
 * @param readings The readings, balanced.
 * @param options Tolerance and choices.
 * @returns The form, or why there is none.
 * @throws {RangeError} If a cell is missing or cells differ in size, or the
 * tolerance is not above 0.
 *
 * @see AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III; Burdick,
 * Borror and Montgomery (2005) for the intervals.
 *
 * @example
 * ```ts
 * import { fillGaugeForms } from "sagbook/repeatability/gauge_forms.ts";
 * import { equal } from "node:assert/strict";
 *
 * const readings = ["a", "b"].flatMap((operator) =>
 *   [10, 20, 30].flatMap((value, k) =>
 *     [0, 1].map((repeat) => ({ surface: `${k}`, operator, value: value + repeat }))
 *   )
 * );
 * const form = fillGaugeForms(readings);
 * equal(form.method === "anova" && form.distinctCategories, 23);
 * ```
 */
export function fillGaugeForms(
  readings: readonly SurfaceReading[],
  options: GaugeFormOptions = {},
): GaugeForms | NoGaugeForms {
  const { interaction = "as tested", confidence = 0.95 } = options;
  const none = reasonForNone(readings);
  if (none) return none;
  const response = readings.map(({ value }) => value);
  const surface = {
    name: "surface",
    labels: readings.map((one) => one.surface),
  };
  const operator = {
    name: "operator",
    labels: readings.map((one) => one.operator),
  };
  const table = (how: "separate" | "pooled") =>
    crossedAnova(response, surface, operator, how);
  const separate = table("separate");
  const p = separate.sources.find(({ name }) => name === "interaction")?.p;
  const used = interaction === "pooled" ||
      (interaction === "as tested" && p !== undefined && p > 0.25)
    ? table("pooled")
    : separate;
  const variances = gaugeVariances(used);
  if (!variances) return { method: "none", reason: "no variation" };
  const terms = gaugeTerms(used);
  return {
    method: "anova",
    pooled: !used.interaction,
    ...formOf(variances, readings, options, Math.SQRT2),
    ...(terms
      ? {
        intervals: {
          gauge: varianceInterval(terms.gauge, confidence),
          total: varianceInterval(terms.total, confidence),
        },
      }
      : {}),
  };
}

/**
 * Puts the same study into the standard's forms by averages and ranges.
 *
 * The way of the printed forms, with its factor 1.41 for distinct categories;
 * it cannot see an interaction.
 *
 * @param readings The readings, balanced, two repeats or more.
 * @param options Tolerance; the printed factors where a form is to be matched.
 * @returns The form, or why there is none.
 * @throws {RangeError} If a cell is missing, cells differ in size or hold one
 * reading, or the tolerance is not above 0.
 *
 * @see AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III.
 *
 * @example
 * ```ts
 * import { fillRangeForms } from "sagbook/repeatability/gauge_forms.ts";
 * import { equal } from "node:assert/strict";
 *
 * const one = [{ surface: "1", operator: "a", value: 1 }];
 * const form = fillRangeForms(one);
 * equal(form.method === "none" && form.reason, "one surface");
 * ```
 */
export function fillRangeForms(
  readings: readonly SurfaceReading[],
  options:
    & Pick<GaugeFormOptions, "toleranceWidth">
    & { readonly factors?: RangeFactors } = {},
): GaugeForms | NoGaugeForms {
  const none = reasonForNone(readings);
  if (none) return none;
  const found = rangeStudy(
    readings.map(({ value }) => value),
    { name: "surface", labels: readings.map(({ surface }) => surface) },
    { name: "operator", labels: readings.map(({ operator }) => operator) },
    options.factors,
  );
  const variances: GaugeVariances = {
    repeatability: found.repeatability ** 2,
    operator: found.reproducibility ** 2,
    interaction: 0,
    reproducibility: found.reproducibility ** 2,
    gauge: found.gauge ** 2,
    surface: found.surface ** 2,
    total: found.total ** 2,
  };
  if (!(variances.total > 0)) return { method: "none", reason: "no variation" };
  return {
    method: "averages and ranges",
    pooled: true,
    ...formOf(variances, readings, options, 1.41),
  };
}

function reasonForNone(
  readings: readonly SurfaceReading[],
): NoGaugeForms | undefined {
  const levels = (of: (reading: SurfaceReading) => string): number =>
    new Set(readings.map(of)).size;
  if (levels(({ surface }) => surface) < 2) {
    return { method: "none", reason: "one surface" };
  }
  if (levels(({ operator }) => operator) < 2) {
    return { method: "none", reason: "one operator" };
  }
  return readings.every(({ value }) => value === readings[0].value)
    ? { method: "none", reason: "no variation" }
    : undefined;
}

const LINES = [
  "gauge",
  "repeatability",
  "reproducibility",
  "operator",
  "interaction",
  "surface",
  "total",
] as const;

function formOf(
  variances: GaugeVariances,
  readings: readonly SurfaceReading[],
  { toleranceWidth }: Pick<GaugeFormOptions, "toleranceWidth">,
  factor: number,
): Omit<GaugeForms, "method" | "pooled" | "intervals"> {
  if (toleranceWidth !== undefined && !(toleranceWidth > 0)) {
    throw new RangeError(
      `Cannot fill in a gauge form as the tolerance must be above 0: current value is ${toleranceWidth}`,
    );
  }
  const surfaces = new Set(readings.map(({ surface }) => surface)).size;
  const spread = Math.sqrt(variances.total);
  const categories = variances.gauge > 0
    ? factor * Math.sqrt(variances.surface / variances.gauge)
    : undefined;
  return {
    surfaces,
    enoughSurfaces: surfaces >= 5,
    lines: LINES.map((name) => {
      const deviation = Math.sqrt(variances[name]);
      return {
        name,
        deviation,
        sixSigma: 6 * deviation,
        percentOfStudy: 100 * deviation / spread,
        ...(toleranceWidth === undefined
          ? {}
          : { percentOfTolerance: 600 * deviation / toleranceWidth }),
      };
    }),
    contributions: Object.fromEntries(
      LINES.map((name) => [name, 100 * variances[name] / variances.total]),
    ) as Record<keyof GaugeVariances, number>,
    ...(categories === undefined ? {} : {
      distinctCategories: Math.floor(categories),
      distinctCategoriesUnrounded: categories,
    }),
  };
}
