/**
 * What the reader of lines is told of its file and of a reading's cell.
 *
 * @module
 */
import type { Bench } from "./bench.ts";
import type { TidyColumn } from "./tidy_columns.ts";
import type { Piece } from "./piece.ts";
import type { ProblemCollector } from "./_problem_collector.ts";
import type { FileDecimal } from "./_read_cell.ts";

/** What a line reader needs to know of its file. */
export interface LineSource {
  /** The file as the user named it. */
  readonly file: string;
  /** The piece. */
  readonly piece: Piece;
  /** The bench. */
  readonly bench: Bench;
  /** The decimal mark of the file. */
  readonly decimal: FileDecimal;
  /** Index of each known column. */
  readonly columns: ReadonlyMap<TidyColumn, number>;
  /** Headings as typed. */
  readonly headings: readonly string[];
  /** Indices of columns nobody knows. */
  readonly unknown: readonly number[];
  /** Where problems go. */
  readonly problems: ProblemCollector;
}

/** The cell of a row that holds a reading. */
export interface ReadingCell {
  /** Its index in the row. */
  readonly index: number;
  /** The unit in its heading or in the row of units, blank for none. */
  readonly unit: string;
  /** The zone its heading names, on a bench sheet. */
  readonly zone?: string;
}
