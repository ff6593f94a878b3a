/**
 * Sagbook: from spherometer readings to the radius, the shape and the next step.
 *
 * @example The radius that a sag belongs to
 * ```ts
 * import { millimetres as mm, radiusFromSag } from "sagbook";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(50), ballRadius: mm(2.5) };
 * equal(radiusFromSag(mm(0.5), feet, "concave"), 2502.75);
 * ```
 *
 * @module
 */
export * from "./display/mod.ts";
export * from "./exercises/mod.ts";
export * from "./fabrication/mod.ts";
export * from "./figures/mod.ts";
export * from "./geometry/mod.ts";
export * from "./live/mod.ts";
export * from "./narrative/mod.ts";
export * from "./numerics/mod.ts";
export * from "./records/mod.ts";
export * from "./repeatability/mod.ts";
export * from "./statistics/mod.ts";
export * from "./uncertainty/mod.ts";
export * from "./units/mod.ts";
export * from "./zones/mod.ts";
export { VERSION } from "./version.ts";
