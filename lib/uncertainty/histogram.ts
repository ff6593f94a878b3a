/**
 * Counts of a sample in cells of equal width.
 *
 * @module
 */
import type { CoverageInterval } from "./coverage_interval.ts";

/** Counts in cells of equal width. */
export interface Histogram {
  /** Lower end of the first cell. */
  readonly start: number;
  /** Width of each cell. */
  readonly width: number;
  /** Values in each cell. */
  readonly counts: readonly number[];
  /** Values below the first cell and above the last. */
  readonly outside: readonly [below: number, above: number];
}

/**
 * Counts a sample in cells over and around its coverage interval.
 *
 * The cells reach half the interval's width beyond either end; what lies
 * farther is counted too, as outside.
 *
 * @param values The sample.
 * @param interval A coverage interval of it.
 * @param cells How many cells, 80 unless stated.
 * @returns The counts; their sum with `outside` is the size of the sample. A
 * sample of one value only gets one cell of no width.
 *
 * @example
 * ```ts
 * import { histogramOf } from "sagbook/uncertainty/histogram.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const values = Float64Array.of(-9, 0.1, 0.4, 0.9);
 * const { counts, outside } = histogramOf(values, { lower: 0, upper: 1 }, 4);
 * deepEqual(counts, [0, 2, 1, 0]);
 * deepEqual(outside, [1, 0]);
 * ```
 */
export function histogramOf(
  values: Float64Array,
  interval: CoverageInterval,
  cells: number = 80,
): Histogram {
  const span = interval.upper - interval.lower;
  if (!(span > 0)) {
    return {
      start: interval.lower,
      width: 0,
      counts: [values.length],
      outside: [0, 0],
    };
  }
  const start = interval.lower - span / 2;
  const width = 2 * span / cells;
  const counts = new Array<number>(cells).fill(0);
  let [below, above] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    const cell = Math.floor((values[i] - start) / width);
    if (cell < 0) below++;
    else if (cell >= cells) above++;
    else counts[cell]++;
  }
  return { start, width, counts, outside: [below, above] };
}
