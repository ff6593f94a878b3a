/**
 * Lengths and surface powers that carry their unit, read and written as people
 * do.
 *
 * @example Read an inch figure, work in millimetres, write it back
 * ```ts
 * import { formatLength, parseLength } from "sagbook/units/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const read = parseLength('0.0237"');
 * if (read.kind !== "length") throw new Error("not a length");
 * equal(formatLength(read.value, "mm", 3), "0.602\u00a0mm");
 * ```
 *
 * @module
 */
export * from "./dioptre.ts";
export * from "./explain_unit_mix_up.ts";
export * from "./format_length.ts";
export * from "./length.ts";
export * from "./length_unit.ts";
export * from "./parse_length.ts";
export * from "./parse_number.ts";
export * from "./round_decimal.ts";
export { familyOf } from "./unit_family.ts";
