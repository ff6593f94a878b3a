/**
 * Rows of a table that sum up the rows above them.
 *
 * @module
 */
import { goesOnWithSummary, isSummaryWord } from "./_summary_line.ts";
import type { TableLayout } from "./_table_layout.ts";
import type { TidyColumn } from "./tidy_columns.ts";

/** Columns whose cell labels a row. */
const LABELS: readonly TidyColumn[] = [
  "session",
  "zeroing",
  "diameter_deg",
  "zone",
];

/** Knows the rows that are means and the like by the words that label them. */
export class SummaryRows {
  readonly #labels: readonly number[];
  #wasSummary = false;

  /** Finds the columns that label a row: known ones, and a first unknown one. */
  constructor({ columns, unknown }: TableLayout) {
    this.#labels = [
      ...LABELS.map((name) => columns.get(name)),
      unknown.includes(0) ? 0 : undefined,
    ].filter((index) => index !== undefined);
  }

  /** The word that makes a row a summary; `undefined` for any other row. */
  wordIn(row: readonly string[]): string | undefined {
    for (const index of this.#labels) {
      const cell = row[index];
      if (cell === undefined || cell === "") continue;
      if (
        isSummaryWord(cell) || this.#wasSummary && goesOnWithSummary(cell)
      ) {
        this.#wasSummary = true;
        return cell.trim();
      }
    }
    this.#wasSummary = false;
    return undefined;
  }
}
