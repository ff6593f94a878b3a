/**
 * Grinding: what to do next at the bench.
 *
 * @example A sphere that is still too long
 * ```ts
 * import { nextStep } from "sagbook/fabrication/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const step = nextStep({
 *   form: "concave", sphericity: "within", radiusLessTarget: 80, tolerance: 10,
 * });
 * equal(step.kind, "shorten");
 * ```
 *
 * @module
 */
export {
  COMMON_STROKES,
  type NextStep,
  nextStep,
  type Position,
  type Stroke,
  type StrokeTable,
  type SurfaceState,
} from "./next_step.ts";
