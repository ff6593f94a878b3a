/**
 * Millimetres or inches.
 *
 * @module
 */
import type { LengthUnitName } from "./length_unit.ts";

/**
 * Tells which of the two units that answers are given in a unit belongs to.
 *
 * @param unit A unit of length.
 * @returns `in` for inches and their parts, else `mm`.
 *
 * @example
 * ```ts
 * import { familyOf } from "sagbook/units/unit_family.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(familyOf("thou"), "in");
 * equal(familyOf("µm"), "mm");
 * ```
 */
export function familyOf(unit: LengthUnitName): "mm" | "in" {
  return unit === "in" || unit === "thou" || unit === "µin" ? "in" : "mm";
}
