/**
 * R ± U: the uncertainty budget of a radius of curvature.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { studentTProbability } from "../statistics/student_t_distribution.ts";
import { type Budget, type BudgetLine, budgetOf } from "./budget.ts";
import { toleranceOf } from "./numerical_tolerance.ts";
import type { RadiusMeasurement } from "./radius_measurement.ts";
import { radiusModel } from "./radius_model.ts";
import { secondOrderOf } from "./second_order.ts";

/**
 * How the possible radii lie about the best one.
 *
 * `symmetric`: R ± U holds to half a unit of its second figure. `skewed`: the
 * interval's ends lie unevenly about R; give them, not ±. `heavy-tailed`: a
 * flat lies within six standard uncertainties (or has a chance above 3e-5),
 * mean and standard deviation of R do not settle; give the interval and the
 * chance of the other curve. `nearly
 * flat`: the interval includes a flat; only a least radius can be given.
 */
export type RadiusShape =
  | "symmetric"
  | "skewed"
  | "heavy-tailed"
  | "nearly flat";

/** A radius of curvature with its uncertainty. */
export interface RadiusBudget {
  /** Which way the surface was declared to curve. */
  readonly form: SurfaceForm;
  /** How the possible radii lie. */
  readonly shape: RadiusShape;
  /** Best value in mm; absent when the sag is 0 or the other way. */
  readonly radius?: number;
  /** R with shared parts by id, in mm; absent when heavy-tailed or flatter. */
  readonly estimate?: Estimate;
  /** Lines in mm of R; in 1/mm of curvature when `estimate` is absent. */
  readonly lines: readonly BudgetLine[];
  /** Combined standard uncertainty in mm; absent as `estimate` is. */
  readonly standardUncertainty?: number;
  /** Effective degrees of freedom; `Infinity` where all is known. */
  readonly dof: number;
  /** Coverage factor k. */
  readonly factor: number;
  /** Expanded uncertainty U in mm; absent as `estimate` is. */
  readonly expanded?: number;
  /** Probability the interval is meant to hold. */
  readonly confidence: number;
  /** Shortest radius of the interval in mm, on the declared side. */
  readonly lower: number;
  /** Longest radius of the interval in mm; absent when it includes a flat. */
  readonly upper?: number;
  /** Curvature 1/R with its own budget, in 1/mm; it always has one. */
  readonly curvature: Budget;
  /** Chance that the surface curves the other way. */
  readonly otherSideProbability: number;
  /** How far the mean radius lies from `radius` in mm, to second order. */
  readonly secondOrderBias?: number;
  /** Standard uncertainty with the terms of second order, in mm. */
  readonly secondOrderUncertainty?: number;
  /** Sources that could not be counted because nothing is known of them. */
  readonly notCounted: readonly string[];
  /** Sources that took a default of ours instead of the user's figure. */
  readonly assumed: readonly string[];
}

/** Chance of the other curve above which R has no usable deviation. */
const HEAVY_CHANCE = 3e-5;

/** Standard uncertainties to a flat below which the same is said. */
const HEAVY_DISTANCE = 6;

/**
 * Draws up the uncertainty budget of a radius of curvature.
 *
 * All of it is worked out for the curvature, which is well behaved even for a
 * flat, and turned into R at the end: the interval is the curvature's,
 * inverted. Whether `R ± U` may stand for it is in `shape`.
 *
 * Sources common to a ring, a gauge, a flat or a session keep their ids in
 * `estimate.common`: in a difference between zones, dates or rings they cancel
 * as far as they really do.
 *
 * @param measurement What was measured, with what.
 * @param options Confidence, 0.95 unless stated.
 * @returns R, U, k, effective degrees of freedom, interval and lines.
 * @throws {RangeError} If the sag exceeds the foot circle's radius, or an
 * uncertainty is negative or not finite.
 *
 * @see JCGM 100:2008, 5 to 7 and G.4; lines and equation: `radiusModel`.
 *
 * @example A 60 mm ring, four zeroings
 * ```ts
 * import { radiusBudget } from "sagbook/uncertainty/radius_budget.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const ring = {
 *   id: "A", radiusUncertainty: mm(0.02), radiusUncertaintyAssumed: false,
 *   ballRadiusUncertainty: mm(0.001), expansion: 11.5e-6, foot: { kind: "unknown" },
 *   shape: { kind: "balls", circleRadius: mm(60), ballRadius: mm(3), probeOffset: mm(0) },
 * } as const;
 * const sag = { value: 0.715, own: 0.0005, dof: 3, common: {} };
 * const budget = radiusBudget({ form: "concave", sag, ring, step: mm(0.001) });
 * equal(budget.radius?.toFixed(2), "2520.84");
 * equal(budget.shape, "symmetric");
 * equal(budget.expanded?.toFixed(1), "5.9");
 * equal(budget.estimate?.common["ring A radius"].toFixed(3), "1.678");
 * ```
 */
export function radiusBudget(
  measurement: RadiusMeasurement,
  options: { readonly confidence?: number } = {},
): RadiusBudget {
  const { form, sag } = measurement;
  const { inputs, curvature: model, notCounted, assumed } = radiusModel(
    measurement,
  );
  const circle = inputs[8].value;
  if (!(Math.abs(sag.value) <= circle)) {
    throw new RangeError(
      `Cannot find a radius as sag must not exceed the foot circle radius of ${circle} mm: current value is ${sag.value} mm`,
    );
  }
  const curvature = pruned(budgetOf(model, inputs, options));
  const { value, standardUncertainty: u, dof, lower, upper } = curvature;
  const otherSideProbability = u === 0
    ? (value > 0 ? 0 : 1)
    : studentTProbability(-value / u, dof);
  const base = {
    form,
    dof,
    factor: curvature.factor,
    confidence: curvature.confidence,
    lower: 1 / Math.max(upper, -lower),
    curvature,
    otherSideProbability,
    notCounted,
    assumed,
    ...(value > 0 ? { radius: 1 / value } : {}),
  };
  if (!(lower > 0)) {
    return { ...base, shape: "nearly flat", lines: curvature.lines };
  }
  const ends = { lower: 1 / upper, upper: 1 / lower };
  if (otherSideProbability > HEAVY_CHANCE || value < HEAVY_DISTANCE * u) {
    return { ...base, ...ends, shape: "heavy-tailed", lines: curvature.lines };
  }
  const radius = (x: Float64Array): number => 1 / model(x);
  const inR = pruned(budgetOf(radius, inputs, options));
  const { standardUncertainty, expanded } = inR;
  const secondOrder = secondOrderOf(radius, inputs);
  const difference = Math.max(
    Math.abs(inR.lower - ends.lower),
    Math.abs(inR.upper - ends.upper),
  );
  const allowed = standardUncertainty === 0
    ? Infinity
    : toleranceOf(standardUncertainty, 2);
  return {
    ...base,
    ...ends,
    shape: difference <= allowed ? "symmetric" : "skewed",
    estimate: inR.estimate,
    lines: inR.lines,
    standardUncertainty,
    expanded,
    secondOrderBias: secondOrder.bias,
    secondOrderUncertainty: secondOrder.standardUncertainty,
  };
}

/** Leaves out the lines of sources that were not given. */
function pruned(budget: Budget): Budget {
  const lines = budget.lines.filter((line) => line.standardUncertainty > 0);
  const given = new Set(lines.map((line) => line.common));
  const common = Object.fromEntries(
    Object.entries(budget.estimate.common).filter(([id]) => given.has(id)),
  );
  return { ...budget, lines, estimate: { ...budget.estimate, common } };
}
