/**
 * The shape of a surface under a gauge: feet, sag, radius and reach.
 *
 * @example From a reading to a radius and back
 * ```ts
 * import { radiusFromSag, sagFromRadius } from "sagbook/geometry/mod.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(50), ballRadius: mm(2.5) };
 * const radius = radiusFromSag(mm(0.5), feet, "concave");
 * equal(sagFromRadius(radius, feet, "concave"), 0.5);
 * ```
 *
 * @module
 */
export * from "./contact_circle.ts";
export * from "./effective_feet.ts";
export * from "./feet.ts";
export * from "./foot_direction.ts";
export * from "./radius_from_sag.ts";
export * from "./reach.ts";
export * from "./ring.ts";
export * from "./sag_from_radius.ts";
export * from "./sensitivities.ts";
