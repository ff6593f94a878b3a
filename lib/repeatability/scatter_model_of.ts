/**
 * From the components of a study to the gauge of the next plan.
 *
 * @module
 */
import type { ScatterModel } from "./scatter_model.ts";
import type { ScatterSource } from "./source.ts";
import type { ScatterFigure, SurfaceComponents } from "./surface_components.ts";

/** A gauge for a plan, and what had to be assumed for it. */
export interface PlannedGauge {
  /** The gauge. */
  readonly model: ScatterModel;
  /**
   * Figures that hold several sources, and the one they were counted as: the
   * one against which reading more helps least.
   */
  readonly countedAs: readonly {
    readonly sources: readonly ScatterSource[];
    readonly as: keyof ScatterModel;
  }[];
  /** Sources that no figure tells, and that the plan takes to be 0. */
  readonly takenAsNone: readonly ScatterSource[];
}

/**
 * Makes the model of a gauge that a plan simulates from the components that a
 * study found.
 *
 * Rounding is taken off (the plan rounds again): one step²/12 each from the
 * repeat and from the zeroing. Sources that the study could not tell apart
 * count as the one of them that costs most to average. Operators and sessions
 * count as scatter between occasions. Readings that were all equal give the
 * scatter that the display leaves possible.
 *
 * @param components Components of scatter on one grade of surface.
 * @param end Which value of every figure: its estimate, or an end of its
 * interval (the estimate where it has none).
 * @returns The model and what it assumes.
 *
 * @see Sheppard (1898) for the correction of step²/12.
 *
 * @example
 * ```ts
 * import { estimateComponents, scatterModelOf } from "sagbook/repeatability/mod.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const readings = ["1", "2", "3"].map((zeroing, k) => ({
 *   ring: "A", session: "S1", zeroing, on: "work", offset: 0, step: 0.001,
 *   sag: 0.7 + k / 100, zone: { label: "centre", distance: 0 },
 *   foot: { kind: "unknown" },
 * } as unknown as Parameters<typeof estimateComponents>[0][number]));
 * const { countedAs } = scatterModelOf(estimateComponents(readings)[0]);
 * deepEqual(countedAs, [{ sources: ["repeat", "zeroing"], as: "zeroing" }]);
 * ```
 */
export function scatterModelOf(
  components: SurfaceComponents,
  end: "estimate" | "low" | "high" = "estimate",
): PlannedGauge {
  const { figures, display } = components;
  const step = display.step ?? 0;
  const squares = new Map<keyof ScatterModel, number>();
  const countedAs: {
    sources: readonly ScatterSource[];
    as: keyof ScatterModel;
  }[] = [];
  const told = new Set<ScatterSource>();
  for (const figure of figures) {
    const as = costliest(figure.sources);
    if (figure.sources.length > 1) {
      countedAs.push({ sources: figure.sources, as });
    }
    for (const source of figure.sources) told.add(source);
    squares.set(as, (squares.get(as) ?? 0) + valueOf(figure, end) ** 2);
  }
  if (figures.length === 0 && display.scatter) {
    const { deviation, low, high } = display.scatter;
    const value = { estimate: deviation, low, high }[end];
    squares.set("repeat", value ** 2 + step ** 2 / 12);
  }
  const rounded = (name: keyof ScatterModel): number =>
    Math.sqrt(Math.max(0, (squares.get(name) ?? 0) - step ** 2 / 12));
  const plain = (name: keyof ScatterModel): number =>
    Math.sqrt(squares.get(name) ?? 0);
  const sources: ScatterSource[] = [
    "repeat",
    "zeroing",
    "zone × zeroing",
    "diameter",
    "operator",
    "session",
  ];
  return {
    model: {
      repeat: rounded("repeat"),
      zeroing: rounded("zeroing"),
      zoneByZeroing: plain("zoneByZeroing"),
      diameter: plain("diameter"),
      occasion: plain("occasion"),
      step,
    },
    countedAs,
    takenAsNone: sources.filter((source) => !told.has(source)),
  };
}

/** From what costs most to average to what costs least. */
const COSTLIEST: readonly [ScatterSource, keyof ScatterModel][] = [
  ["session", "occasion"],
  ["operator", "occasion"],
  ["zeroing", "zeroing"],
  ["rotation", "zeroing"],
  ["diameter", "diameter"],
  ["zone × zeroing", "zoneByZeroing"],
  ["repeat", "repeat"],
];

function costliest(sources: readonly ScatterSource[]): keyof ScatterModel {
  return COSTLIEST.find(([source]) => sources.includes(source))?.[1] ??
    "repeat";
}

function valueOf(
  { sag }: ScatterFigure,
  end: "estimate" | "low" | "high",
): number {
  return end === "estimate" || !sag.interval
    ? sag.deviation
    : sag.interval[end];
}
