/**
 * How sure a radius is, and which ring answers which question.
 *
 * @example R ± U of a session
 * ```ts
 * import { radiusBudget } from "sagbook/uncertainty/mod.ts";
 * import { formatWithUncertainty } from "sagbook/units/format_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const ring = {
 *   id: "A", radiusUncertainty: mm(0.02), radiusUncertaintyAssumed: false,
 *   ballRadiusUncertainty: mm(0.001), expansion: 11.5e-6, foot: { kind: "unknown" },
 *   shape: { kind: "balls", circleRadius: mm(60), ballRadius: mm(3), probeOffset: mm(0) },
 * } as const;
 * const sag = { value: 0.715, own: 0.0005, dof: 3, common: {} };
 * const { radius = 0, expanded = 0 } = radiusBudget({
 *   form: "concave", sag, ring, step: mm(0.001),
 * });
 * const text = formatWithUncertainty(mm(radius), mm(expanded));
 * equal(text.replaceAll("\u00a0", " "), "2520.8 ± 5.9 mm");
 * ```
 *
 * @module
 */
export * from "./budget.ts";
export * from "./calibrate_by_spacings.ts";
export * from "./calibrate_by_surfaces.ts";
export * from "./calibration_history.ts";
export * from "./choose_ring.ts";
export * from "./coverage_interval.ts";
export * from "./detection.ts";
export * from "./distribution.ts";
export * from "./histogram.ts";
export * from "./known_surface.ts";
export * from "./lens_power.ts";
export * from "./material.ts";
export * from "./monte_carlo.ts";
export * from "./numerical_tolerance.ts";
export * from "./radius_budget.ts";
export * from "./radius_difference.ts";
export * from "./radius_measurement.ts";
export * from "./radius_model.ts";
export * from "./radius_monte_carlo.ts";
export * from "./ring_calibration.ts";
export * from "./ring_fit.ts";
export * from "./ring_question.ts";
export * from "./rings_on_record.ts";
export * from "./second_order.ts";
export * from "./test_plate.ts";
export * from "./thermal_check.ts";
export * from "./thermal_piece.ts";
export * from "./thermal_radius.ts";
export * from "./thermal_settling.ts";
