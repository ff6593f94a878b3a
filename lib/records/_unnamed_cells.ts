/**
 * Filled cells below a heading that is blank.
 *
 * @module
 */
import type { Problem } from "./problem.ts";
import type { TableLayout } from "./_table_layout.ts";

/** Counts the filled cells of columns without a name. */
export class UnnamedCells {
  readonly #columns: { index: number; count: number; line: number }[];

  /** Finds the columns whose heading is blank. */
  constructor({ unknown, headings }: TableLayout) {
    this.#columns = unknown.filter((index) => headings[index].trim() === "")
      .map((index) => ({ index, count: 0, line: 0 }));
  }

  /** Looks at one row. */
  see(row: readonly string[], line: number): void {
    for (const column of this.#columns) {
      const cell = row[column.index];
      if (cell === undefined || cell === "" || cell.trim() === "") continue;
      if (column.count++ === 0) column.line = line;
    }
  }

  /** A word on each column that holds something and has no name. */
  problems(file: string): Problem[] {
    return this.#columns.filter(({ count }) => count > 0).map((
      { index, count, line },
    ) => ({
      severity: "warning",
      code: "unnamed-column",
      file,
      line,
      message: `column ${
        index + 1
      } has no heading and is not used, but is filled in ${
        count === 1 ? "a line" : `${count} lines`
      }, the first here`,
      mend: "name the column in the header, each zone in its own column",
    }));
  }
}
