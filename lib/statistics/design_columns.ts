/**
 * Fixed columns from labels.
 *
 * @module
 */
import type { FixedColumn } from "./mixed_model.ts";

/**
 * Makes the column of ones.
 *
 * @param count Number of readings.
 * @returns The column, named `"(Intercept)"`.
 *
 * @see C. R. Rao, Linear Statistical Inference and Its Applications, 4a.
 *
 * @example
 * ```ts
 * import { interceptColumn } from "sagbook/statistics/design_columns.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual([...Array.from(interceptColumn(2).values)], [1, 1]);
 * ```
 */
export function interceptColumn(count: number): FixedColumn {
  return { name: "(Intercept)", values: new Float64Array(count).fill(1) };
}

/**
 * Makes one column of noughts and ones for each level of a factor.
 *
 * Without an intercept the coefficients are the means of the levels.
 *
 * @param name Name of the factor; a column is named by it and the level.
 * @param labels The level of each reading.
 * @param order Levels in the order wanted; by default of first appearance.
 * Levels that no reading has get no column.
 * @returns One column for each level that occurs.
 * @throws {RangeError} If a label is not in `order`.
 *
 * @see C. R. Rao, Linear Statistical Inference and Its Applications, 4a.
 *
 * @example
 * ```ts
 * import { levelColumns } from "sagbook/statistics/design_columns.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const columns = levelColumns("zone", ["edge", "centre", "edge"]);
 * deepEqual(columns.map((column) => column.name), ["zoneedge", "zonecentre"]);
 * ```
 */
export function levelColumns(
  name: string,
  labels: ArrayLike<string | number>,
  order?: readonly (string | number)[],
): FixedColumn[] {
  const columns = new Map<string, Float64Array>();
  for (const level of order ?? []) {
    columns.set(String(level), new Float64Array(labels.length));
  }
  const seen = new Set<string>();
  for (let i = 0; i < labels.length; i++) {
    const label = String(labels[i]);
    let column = columns.get(label);
    if (!column) {
      if (order) {
        throw new RangeError(
          `Cannot make columns of ${name} as every label must be among its levels: current value is "${label}" at position ${i}`,
        );
      }
      columns.set(label, column = new Float64Array(labels.length));
    }
    column[i] = 1;
    seen.add(label);
  }
  return [...columns].filter(([label]) => seen.has(label)).map((
    [label, values],
  ) => ({ name: name + label, values }));
}

/**
 * Makes an intercept and, for each level but the first, a column of its
 * difference from the first.
 *
 * @param name Name of the factor; a column is named by it and the level.
 * @param labels The level of each reading.
 * @param order Levels in the order wanted, the reference first; by default of
 * first appearance. Levels that no reading has get no column.
 * @returns The intercept and one column for each further level that occurs.
 * @throws {RangeError} If a label is not in `order`.
 *
 * @see C. R. Rao, Linear Statistical Inference and Its Applications, 4a.
 *
 * @example
 * ```ts
 * import { treatmentColumns } from "sagbook/statistics/design_columns.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const columns = treatmentColumns("zone", ["centre", "edge", "centre"]);
 * deepEqual(columns.map((column) => column.name), ["(Intercept)", "zoneedge"]);
 * ```
 */
export function treatmentColumns(
  name: string,
  labels: ArrayLike<string | number>,
  order?: readonly (string | number)[],
): FixedColumn[] {
  const [, ...others] = levelColumns(name, labels, order);
  return [interceptColumn(labels.length), ...others];
}
