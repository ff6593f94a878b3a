/**
 * Results as JSON that any program reads.
 *
 * @module
 */

/**
 * Copies a value without what is undefined, and with every number finite.
 *
 * JSON has no infinity. Degrees of freedom without end mean "taken as known",
 * and so does leaving them out: an endless `dof` is left out, any other
 * number that is not finite is refused.
 *
 * @param value Plain data.
 * @returns Plain JSON.
 * @throws {RangeError} If a number other than `dof` is not finite.
 *
 * @example
 * ```ts
 * import { plainJson } from "sagbook/narrative/plain_json.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(plainJson({ a: 1, b: undefined, dof: Infinity }), { a: 1 });
 * ```
 */
export function plainJson(
  value: object,
): Readonly<Record<string, unknown>> {
  return JSON.parse(JSON.stringify(value, (key, part) => {
    if (typeof part !== "number" || Number.isFinite(part)) return part;
    if (key === "dof" && part === Infinity) return undefined;
    throw new RangeError(
      `Cannot write results as every number must be finite: current value is ${part} in ${key}`,
    );
  }));
}
