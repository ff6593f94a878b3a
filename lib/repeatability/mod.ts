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
export * from "./describe_design.ts";
export * from "./group_readings.ts";
export * from "./source.ts";
export * from "./surface_design.ts";
