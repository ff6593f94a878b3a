/**
 * Notes that call their line a mean.
 *
 * @module
 */
import type { LineFaults } from "./_line_faults.ts";
import { MEAN_IN_NOTE } from "./_row_words.ts";
import { isSummaryWord } from "./_summary_line.ts";

/** Says where a note calls its line a mean; `at` is the column of the notes. */
export function sayMeanInNote(
  faults: LineFaults,
  row: readonly string[],
  line: number,
  at: number | undefined,
): void {
  const note = at === undefined ? "" : row[at];
  if (note === undefined || note === "" || !isSummaryWord(note)) return;
  faults.start(line);
  faults.remark("warning", "note", note, MEAN_IN_NOTE);
}
