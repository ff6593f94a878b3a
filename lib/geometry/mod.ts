/**
 * The shape of a surface under a gauge: feet, sag, radius, reach and contact.
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
export * from "./asphericity.ts";
export * from "./carrying_feet.ts";
export * from "./conic.ts";
export * from "./contact_circle.ts";
export * from "./contact_departures.ts";
export * from "./contact_gauge.ts";
export * from "./contact_points.ts";
export * from "./contact_reading.ts";
export * from "./contact_sag.ts";
export * from "./contact_surface.ts";
export * from "./edge_ring_mean.ts";
export * from "./effective_feet.ts";
export * from "./feet.ts";
export * from "./focal_length.ts";
export * from "./foot_direction.ts";
export * from "./leaning_stem.ts";
export * from "./probe_circle.ts";
export * from "./radius_from_sag.ts";
export * from "./reach.ts";
export * from "./ball_ring.ts";
export * from "./ring.ts";
export * from "./ring_from_spacings.ts";
export * from "./ring_from_surface.ts";
export * from "./sag_from_radius.ts";
export * from "./sensitivities.ts";
export * from "./simulate_session.ts";
export * from "./surface_power.ts";
export * from "./surface_sag.ts";
export * from "./three_foot_mean.ts";
