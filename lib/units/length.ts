/**
 * Lengths that carry their unit in the type.
 *
 * @module
 */

/** The key of the brand; it exists in types only, never at run time. */
export declare const lengthUnit: unique symbol;

/** A length held in millimetres. */
export type Millimetres = number & { readonly [lengthUnit]: "mm" };

/** A length held in inches. */
export type Inches = number & { readonly [lengthUnit]: "in" };

/** Millimetres in one inch, exact by definition (ISO 80000-3). */
const MILLIMETRES_PER_INCH = 25.4;

function finite(value: number, unit: string): number {
  if (!Number.isFinite(value)) {
    throw new RangeError(
      `Cannot make a length as its value must be a finite number: current value is ${value} ${unit}`,
    );
  }
  return value;
}

/**
 * Marks a number as millimetres.
 *
 * @param value A finite number of millimetres, of either sign.
 * @returns The same number, typed.
 * @throws {RangeError} If `value` is not finite.
 *
 * @example
 * ```ts
 * import { millimetres } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(millimetres(0.601), 0.601);
 * ```
 */
export function millimetres(value: number): Millimetres {
  return finite(value, "mm") as Millimetres;
}

/**
 * Marks a number as inches.
 *
 * @param value A finite number of inches, of either sign.
 * @returns The same number, typed.
 * @throws {RangeError} If `value` is not finite.
 *
 * @example
 * ```ts
 * import { inches } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(inches(0.0237), 0.0237);
 * ```
 */
export function inches(value: number): Inches {
  return finite(value, "in") as Inches;
}

/**
 * Converts inches to millimetres.
 *
 * @param length A length in inches.
 * @returns The same length in millimetres, within one rounding.
 *
 * @see ISO 80000-3: one inch is 25.4 mm exactly.
 *
 * @example
 * ```ts
 * import { inches, inchesToMillimetres } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(inchesToMillimetres(inches(10)), 254);
 * ```
 */
export function inchesToMillimetres(length: Inches): Millimetres {
  return millimetres(length * MILLIMETRES_PER_INCH);
}

/**
 * Converts millimetres to inches.
 *
 * @param length A length in millimetres.
 * @returns The same length in inches, within one rounding.
 *
 * @see ISO 80000-3: one inch is 25.4 mm exactly.
 *
 * @example
 * ```ts
 * import { millimetres, millimetresToInches } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(millimetresToInches(millimetres(254)), 10);
 * ```
 */
export function millimetresToInches(length: Millimetres): Inches {
  return inches(length / MILLIMETRES_PER_INCH);
}
