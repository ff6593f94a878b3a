/**
 * How good the gauge is: scatter by source, capability, and the plan that
 * decides a question.
 *
 * @example Two zeroings read twice each: what can be told apart
 * ```ts
 * import { describeDesign } from "sagbook/repeatability/mod.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const readings = ["1", "1", "2", "2"].map((zeroing) => ({
 *   ring: "A", session: "S1", zeroing, on: "work", offset: 0, sag: 0.7,
 *   zone: { label: "centre", distance: 0 }, foot: { kind: "unknown" },
 * } as unknown as Parameters<typeof describeDesign>[0][number]));
 * deepEqual(describeDesign(readings)[0].estimable, ["repeat", "zeroing"]);
 * ```
 *
 * @module
 */
export * from "./bench_sheet.ts";
export * from "./bench_sheet_csv.ts";
export * from "./compare_rings.ts";
export * from "./correct_by_operator.ts";
export * from "./decide_change.ts";
export * from "./decide_radius.ts";
export * from "./describe_design.ts";
export * from "./diagnose_display.ts";
export * from "./drift_figure.ts";
export * from "./estimate_components.ts";
export * from "./flag_readings.ts";
export * from "./gauge_forms.ts";
export * from "./group_readings.ts";
export * from "./invented_study.ts";
export * from "./judge_capability.ts";
export * from "./plan_study.ts";
export * from "./scatter_model.ts";
export * from "./scatter_model_of.ts";
export * from "./simulate_sets.ts";
export * from "./source.ts";
export * from "./study_plan.ts";
export * from "./surface_components.ts";
export * from "./surface_design.ts";
export * from "./weigh_study.ts";
export * from "./zero_chart.ts";
