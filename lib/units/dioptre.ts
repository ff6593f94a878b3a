/**
 * Surface power in dioptres that carries the index it is meant for.
 *
 * @module
 */

/** The key of the brand; it exists in types only, never at run time. */
export declare const powerUnit: unique symbol;

/**
 * A surface power and the refractive index that gives it a meaning.
 *
 * A curve of −10 D marked for 1.530 is −11.32 D on glass of 1.600: a power
 * without its index says nothing about a curve. The index is in the value, and
 * where it is known when the code is written also in the type, so that
 * `Dioptres<1.53>` is not accepted as `Dioptres<1.523>`.
 */
export interface Dioptres<Index extends number = number> {
  /** The power in dioptres (1/m); negative for a concave surface in air. */
  readonly dioptres: number;
  /** The refractive index it is meant for, above 1. */
  readonly index: Index;
  /** Brand: made by {@link dioptres} only. */
  readonly [powerUnit]: "D";
}

/**
 * Makes a surface power.
 *
 * @param value Power in dioptres, finite, negative for a concave surface.
 * @param index The refractive index it is meant for, above 1. No default:
 * tools are marked for 1.530 whatever the glass (common practice, no source).
 * @returns The power with its index.
 * @throws {RangeError} If the power is not finite, or the index not above 1.
 *
 * @example
 * ```ts
 * import { dioptres } from "sagbook/units/dioptre.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(dioptres(-5.3, 1.53).index, 1.53);
 * ```
 */
export function dioptres<const Index extends number>(
  value: number,
  index: Index,
): Dioptres<Index> {
  if (!Number.isFinite(value)) {
    throw new RangeError(
      `Cannot make a power as its value must be a finite number: current value is ${value} D`,
    );
  }
  if (!(index > 1 && Number.isFinite(index))) {
    throw new RangeError(
      `Cannot make a power as its index must be above 1: current value is ${index}`,
    );
  }
  return { dioptres: value, index } as Dioptres<Index>;
}

/**
 * Gives the same curve's power for another index.
 *
 * Power is proportional to n − 1, because the curve stays.
 *
 * @param power A power with its index.
 * @param index The refractive index wanted, above 1.
 * @returns The power for that index.
 * @throws {RangeError} If the index is not above 1.
 *
 * @example
 * ```ts
 * import { dioptres, powerAtIndex } from "sagbook/units/dioptre.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(powerAtIndex(dioptres(-10, 1.53), 1.6).dioptres.toFixed(2), "-11.32");
 * ```
 */
export function powerAtIndex<const Index extends number>(
  power: Dioptres,
  index: Index,
): Dioptres<Index> {
  return dioptres(power.dioptres * (index - 1) / (power.index - 1), index);
}

/**
 * Adds the powers of two surfaces, as for a thin lens.
 *
 * @param first A power.
 * @param second A power meant for the same index.
 * @returns The sum, for that index.
 * @throws {RangeError} If the two are meant for different indices.
 *
 * @example
 * ```ts
 * import { addPowers, dioptres } from "sagbook/units/dioptre.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(addPowers(dioptres(5, 1.5), dioptres(-2, 1.5)).dioptres, 3);
 * ```
 */
export function addPowers<Index extends number>(
  first: Dioptres<Index>,
  second: Dioptres<NoInfer<Index>>,
): Dioptres<Index> {
  if (first.index !== second.index) {
    throw new RangeError(
      `Cannot add powers as both must be meant for one index: current value is ${first.index} and ${second.index}`,
    );
  }
  return dioptres(first.dioptres + second.dioptres, first.index);
}

/**
 * Writes a power with its index.
 *
 * @param power The power.
 * @param decimals Decimals of the power, 0 to 12.
 * @returns Such as `−5.30 D (n = 1.530)`.
 *
 * @example
 * ```ts
 * import { dioptres, formatPower } from "sagbook/units/dioptre.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(formatPower(dioptres(-5.3, 1.53), 2), "−5.30 D (n = 1.530)");
 * ```
 */
export function formatPower(power: Dioptres, decimals: number): string {
  const figures = power.dioptres.toFixed(decimals).replace("-", "−");
  const index = power.index.toString();
  const written = (index.split(".")[1] ?? "").length > 3
    ? index
    : power.index.toFixed(3);
  return `${figures} D (n = ${written})`;
}
