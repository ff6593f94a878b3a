/**
 * Can the gauge decide what is asked of it?
 *
 * @module
 */
import { normalQuantile } from "../statistics/normal_distribution.ts";
import { figureOf, MICROMETRES, rootOf } from "./_raw_figure.ts";
import type { ScatterSource } from "./source.ts";
import type {
  ScatterFigure,
  Spread,
  SurfaceComponents,
} from "./surface_components.ts";

/** What is asked of a gauge. */
export interface CapabilityQuestion {
  /** Tolerance of the radius, either way, in mm of radius, above 0. */
  readonly radiusTolerance?: number;
  /** Tolerance of the sag, either way, in mm of sag; wins over the radius'. */
  readonly sagTolerance?: number;
  /** Change of sag by one stretch of work, in mm, above 0. */
  readonly change?: number;
  /**
   * Scatter of the surfaces the gauge is used on, in mm of sag: from a study
   * of several, or as declared.
   */
  readonly surfaces?: {
    /** Standard deviation between surfaces, in mm of sag, above 0. */
    readonly deviation: number;
    /** Number of surfaces it rests on; left out where it is declared. */
    readonly count?: number;
  };
}

/** The usual bands of a percentage: common practice after AIAG. */
export type CapabilityBand = "under 10" | "10 to 30" | "over 30";

/** One line of a verdict on a gauge. */
export interface CapabilityLine {
  /** What the figure holds. */
  readonly sources: readonly ScatterSource[];
  /**
   * `figure` for one figure, `drift` for the creep of the zero, `total` for
   * the gauge as a whole, `total with drift` if nobody takes the drift out.
   */
  readonly kind: "figure" | "drift" | "total" | "total with drift";
  /** Standard deviation in mm of sag, with its interval. */
  readonly sag: Spread;
  /** The same in mm of radius, where the ring is known. */
  readonly radius?: Spread;
  /** Six standard deviations, in mm of sag. */
  readonly sixSigma: number;
  /** Six sigma as a percentage of the width of the tolerance. */
  readonly percentOfTolerance?: number;
  /** Six sigma as a percentage of the change of one stretch of work. */
  readonly percentOfChange?: number;
  /** Spread as a percentage of the spread of gauge and surfaces together. */
  readonly percentOfStudy?: number;
}

/** What a gauge can do. */
export type GaugeCapability =
  | {
    readonly kind: "judged";
    /** Every figure, the drift where it was looked for, the total last. */
    readonly lines: readonly CapabilityLine[];
    /** Shares of the gauge's own variance, in per cent; they add up to 100. */
    readonly contributions: readonly {
      readonly sources: readonly ScatterSource[];
      readonly percent: number;
    }[];
    /** Where the total stands, by the tolerance. */
    readonly toleranceBand?: CapabilityBand;
    /** Where the total stands, by the study. */
    readonly studyBand?: CapabilityBand;
    /**
     * Smallest change of sag that one reading before and one after, each on
     * its own zero, show with 95 % confidence, in mm of sag.
     */
    readonly smallestChange: number;
    /** The same in mm of radius, where the ring is known. */
    readonly smallestRadiusChange?: number;
    /** Number of groups of surfaces the gauge can tell apart. */
    readonly distinctCategories?: number;
    /** Whether fewer than five surfaces stand behind that. */
    readonly fewSurfaces: boolean;
    /**
     * Why percent of study and distinct categories are absent: on one surface
     * nothing varies for the gauge to tell apart.
     */
    readonly noStudy?: "one surface" | "fewer than two surfaces";
    /** Tolerance in mm of sag, either way, where one was given. */
    readonly sagTolerance?: number;
  }
  | {
    readonly kind: "not judged";
    /** The display hides the scatter, or too little was read. */
    readonly reason: "limited by the display" | "too few readings";
    /** Least standard uncertainty of a reading, in mm of sag, where known. */
    readonly floor?: number;
    /** The floor's share of the tolerance: six sigma are at least this, in %. */
    readonly leastPercentOfTolerance?: number;
    /** The floor's share of the change, in %. */
    readonly leastPercentOfChange?: number;
  };

/**
 * Judges a gauge on one grade of surface against what is asked of it.
 *
 * Six sigma of a reading on a fresh zero stand against the width of the
 * tolerance and against the change of one stretch of work. Percent of study
 * variation and distinct categories need surfaces of different curvature (or a
 * declared scatter of them); on one surface they are left out with the reason.
 * Spread and contribution to the variance are kept apart. Readings that are
 * all equal give no percentage but the least the display allows.
 *
 * @param components Components of scatter on one grade of surface.
 * @param question What is asked.
 * @returns The verdict as data.
 * @throws {RangeError} If a tolerance, change or deviation is not above 0.
 *
 * @see AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter II D (bands
 * of 10 and 30 %) and III.
 *
 * @example
 * ```ts
 * import { estimateComponents, judgeCapability } from "sagbook/repeatability/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const readings = [["1", 1], ["1", 3], ["2", 2], ["2", 4]].map(([zeroing, um]) => ({
 *   ring: "A", session: "S1", zeroing, on: "work", offset: 0, step: 0.001,
 *   sag: 0.7 + Number(um) / 1000, zone: { label: "centre", distance: 0 },
 *   foot: { kind: "unknown" },
 * } as unknown as Parameters<typeof estimateComponents>[0][number]));
 * const found = judgeCapability(estimateComponents(readings)[0], { change: 0.012 });
 * equal(found.kind === "judged" && found.noStudy, "one surface");
 * ```
 */
export function judgeCapability(
  components: SurfaceComponents,
  question: CapabilityQuestion,
): GaugeCapability {
  const { perSag, figures, total, status, display } = components;
  const { radiusTolerance, change, surfaces } = question;
  for (
    const [name, value] of [
      ["tolerance", radiusTolerance],
      ["tolerance", question.sagTolerance],
      ["change", change],
      ["scatter of the surfaces", surfaces?.deviation],
    ] as const
  ) {
    if (value !== undefined && !(value > 0 && Number.isFinite(value))) {
      throw new RangeError(
        `Cannot judge a gauge as the ${name} must be above 0 mm: current value is ${value} mm`,
      );
    }
  }
  const sagTolerance = question.sagTolerance ??
    (radiusTolerance === undefined || perSag === undefined
      ? undefined
      : radiusTolerance / perSag);
  const percent = (deviation: number, width?: number): number | undefined =>
    width === undefined ? undefined : 600 * deviation / width;
  const ofTolerance = (deviation: number): number | undefined =>
    percent(deviation, sagTolerance && 2 * sagTolerance);
  if (!total) {
    const { floor } = display;
    return {
      kind: "not judged",
      reason: status === "too few readings" ? status : "limited by the display",
      ...some("floor", floor),
      ...some("leastPercentOfTolerance", floor && ofTolerance(floor)),
      ...some("leastPercentOfChange", floor && percent(floor, change)),
    };
  }
  const studied = surfaces !== undefined && (surfaces.count ?? 2) >= 2;
  const study = studied
    ? Math.hypot(total.sag.deviation, surfaces.deviation)
    : undefined;
  const line = (
    figure: ScatterFigure,
    kind: CapabilityLine["kind"],
  ): CapabilityLine => {
    const { deviation } = figure.sag;
    return {
      sources: figure.sources,
      kind,
      sag: figure.sag,
      ...some("radius", figure.radius),
      sixSigma: 6 * deviation,
      ...some("percentOfTolerance", ofTolerance(deviation)),
      ...some("percentOfChange", percent(deviation, change)),
      ...some("percentOfStudy", study && 100 * deviation / study),
    };
  };
  const gauge = figures.filter(({ sources }) =>
    sources.every((source) => total.sources.includes(source))
  );
  const sum = gauge.reduce((all, { usable }) => all + usable, 0);
  const whole = line(total, "total");
  const smallestChange = normalQuantile(0.025, "upper") * Math.SQRT2 *
    total.sag.deviation;
  return {
    kind: "judged",
    lines: [
      ...figures.map((figure) => line(figure, "figure")),
      ...driftFigures(components).map((figure) => line(figure, "drift")),
      ...(components.totalWithDrift
        ? [line(components.totalWithDrift, "total with drift")]
        : []),
      whole,
    ],
    contributions: sum > 0
      ? gauge.map(({ sources, usable }) => ({
        sources,
        percent: 100 * usable / sum,
      }))
      : [],
    ...some("toleranceBand", bandOf(whole.percentOfTolerance)),
    ...some("studyBand", bandOf(whole.percentOfStudy)),
    smallestChange,
    ...some("smallestRadiusChange", perSag && perSag * smallestChange),
    ...(studied
      ? {
        distinctCategories: Math.floor(
          Math.SQRT2 * surfaces.deviation / total.sag.deviation,
        ),
      }
      : {
        noStudy: surfaces === undefined
          ? "one surface"
          : "fewer than two surfaces",
      }),
    fewSurfaces: studied && (surfaces.count ?? 5) < 5,
    ...some("sagTolerance", sagTolerance),
  };
}

/** The drift as a figure, where the flat was looked at again. */
function driftFigures(
  { drift, perSag }: SurfaceComponents,
): readonly ScatterFigure[] {
  if (!drift) return [];
  return [figureOf({
    sources: ["drift"],
    levels: drift.zeroings,
    variance: drift.variance * MICROMETRES ** 2,
    dof: drift.dof,
    interval: rootOf({
      low: drift.varianceInterval.low * MICROMETRES ** 2,
      high: drift.varianceInterval.high * MICROMETRES ** 2,
    }),
  }, perSag)];
}

function bandOf(percent: number | undefined): CapabilityBand | undefined {
  if (percent === undefined) return undefined;
  return percent < 10 ? "under 10" : percent <= 30 ? "10 to 30" : "over 30";
}

/** A property where there is a value, none where there is not. */
function some<Name extends string, Value>(
  name: Name,
  value: Value | undefined,
): { readonly [name in Name]?: Value } {
  return (value === undefined ? {} : { [name]: value }) as {
    readonly [name in Name]?: Value;
  };
}
