/**
 * The fixed part of a mixed model as an orthonormal basis.
 *
 * @module
 */
import type { FixedColumn } from "./mixed_model.ts";

/** A column counts as made up of others below this share of its length. */
const NEGLIGIBLE = 1e-8;

/** A column that keeps this share of its length is clear of the others. */
const ENOUGH = 0.1;

/** Fixed columns X = Q R, dependent ones set aside. */
export interface FixedPart {
  /** Orthonormal columns, one for each independent column of X. */
  readonly basis: readonly Float64Array[];
  /** Upper triangular R: `upper[j][i]` for i <= j. */
  readonly upper: readonly (readonly number[])[];
  /** Positions of the independent columns in the order given. */
  readonly kept: readonly number[];
  /** For each other column the names of the earlier ones that make it up. */
  readonly aliases: ReadonlyMap<number, readonly string[]>;
}

/** Orthonormalises the fixed columns, setting dependent ones aside. */
export function orthonormalise(columns: readonly FixedColumn[]): FixedPart {
  const basis: Float64Array[] = [];
  const upper: number[][] = [];
  const kept: number[] = [];
  const aliases = new Map<number, readonly string[]>();
  columns.forEach((column, position) => {
    const rest = copyOf(column.values);
    const length = Math.sqrt(dot(rest, rest));
    const parts = new Array(basis.length).fill(0);
    let left = length;
    for (let pass = 0; pass < 2; pass++) {
      basis.forEach((unit, i) => {
        const part = dot(unit, rest);
        parts[i] += part;
        for (let row = 0; row < rest.length; row++) {
          rest[row] -= part * unit[row];
        }
      });
      left = Math.sqrt(dot(rest, rest));
      // What little is lost to rounding needs no second pass.
      if (left > ENOUGH * length) break;
    }
    if (left <= NEGLIGIBLE * length) {
      const weights = solveUpper(upper, parts);
      const names = kept.filter((_, i) =>
        Math.abs(weights[i]) * norm(upper[i]) > 1e-6 * length
      ).map((index) => columns[index].name);
      aliases.set(position, names);
      return;
    }
    for (let row = 0; row < rest.length; row++) rest[row] /= left;
    basis.push(rest);
    upper.push([...parts, left]);
    kept.push(position);
  });
  return { basis, upper, kept, aliases };
}

/** Solves R x = b for R given by columns. */
export function solveUpper(
  upper: readonly (readonly number[])[],
  right: readonly number[],
): number[] {
  const x = [...right];
  for (let j = x.length - 1; j >= 0; j--) {
    x[j] /= upper[j][j];
    for (let i = 0; i < j; i++) x[i] -= upper[j][i] * x[j];
  }
  return x;
}

function norm(values: readonly number[]): number {
  return Math.hypot(...values);
}

/** A copy that may be written to. */
export function copyOf(values: ArrayLike<number>): Float64Array {
  // Twenty times as fast as `from`, which asks an iterator for each value.
  return values instanceof Float64Array
    ? values.slice()
    : Float64Array.from(values);
}

/** Sum of products. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}
