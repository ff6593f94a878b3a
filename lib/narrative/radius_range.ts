/**
 * All that a stated radius may be.
 *
 * @module
 */
import type { RadiusRange } from "../fabrication/against_target.ts";
import type { RadiusStatement } from "./radius_statement.ts";

/**
 * All that a stated radius may be, whichever way its uncertainty is given.
 *
 * @param statement The radius.
 * @returns The ends in mm; undefined where nothing is known of them.
 *
 * @example
 * ```ts
 * import { rangeOf } from "sagbook/narrative/radius_range.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(rangeOf({ radius: mm(2200), expanded: mm(8) }), { low: 2192, high: 2208 });
 * ```
 */
export function rangeOf(
  { radius, expanded, interval }: Pick<
    RadiusStatement,
    "radius" | "expanded" | "interval"
  >,
): RadiusRange | undefined {
  return expanded === undefined
    ? interval
    : { low: radius - expanded, high: radius + expanded };
}
