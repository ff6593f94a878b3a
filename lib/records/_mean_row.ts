/**
 * A last row of a bench sheet that is the mean of those above it.
 *
 * @module
 */
import type { Reading } from "./reading.ts";

interface Column {
  sum: number;
  count: number;
  low: number;
  high: number;
  last: number;
}

/** Rows above a mean: of one or two rows it would say nothing. */
const FEWEST_ROWS = 2;
/** Step in mm of a display that states none. */
const SMALLEST_STEP = 0.001;
/** Part of a display step that a rounded mean may be off by. */
const ROUNDING = 0.51;

/** Watches the rows of a sheet and knows whether the last is their mean. */
export class MeanRow {
  readonly #columns = new Map<number, Column>();
  #rows = 0;
  #line = 0;
  #step = 0;
  #isApart = false;

  /** Starts a row; `isApart` where a blank line or a blank label sets it off. */
  start(line: number, isApart: boolean): void {
    for (const column of this.#columns.values()) {
      if (Number.isNaN(column.last)) continue;
      column.sum += column.last;
      column.count++;
      column.low = Math.min(column.low, column.last);
      column.high = Math.max(column.high, column.last);
      column.last = NaN;
    }
    if (this.#line > 0) this.#rows++;
    this.#line = line;
    this.#isApart = isApart;
  }

  /** Takes a reading of the row. */
  see(index: number, { sag, step }: Reading): void {
    this.#step = Math.max(this.#step, step ?? SMALLEST_STEP);
    let column = this.#columns.get(index);
    if (column === undefined) {
      column = { sum: 0, count: 0, low: Infinity, high: -Infinity, last: NaN };
      this.#columns.set(index, column);
    }
    column.last = sag;
  }

  /** The line that is the mean of the rows above it in every zone, if one is. */
  line(): number | undefined {
    if (!this.#isApart || this.#rows < FEWEST_ROWS) return undefined;
    const columns = [...this.#columns.values()].filter(({ last }) =>
      !Number.isNaN(last)
    );
    const isMean = columns.every(({ sum, count, last }) =>
      count >= FEWEST_ROWS &&
      Math.abs(last - sum / count) < ROUNDING * this.#step
    );
    const varied = columns.some(({ low, high }) => high - low > this.#step / 2);
    return columns.length > 1 && isMean && varied ? this.#line : undefined;
  }
}
