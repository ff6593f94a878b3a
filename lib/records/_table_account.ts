/**
 * What became of a table once its last row has been read.
 *
 * @module
 */
import type { FileAccount } from "./folder.ts";
import { NO_READINGS } from "./_row_words.ts";
import type { TableLayout } from "./_table_layout.ts";
import type { TableScan } from "./_table_scan.ts";

/** Ends a walk, says where there was nothing to read, and counts. */
export function endTable(
  scan: TableScan,
  file: string,
  { headerLine, sheet }: TableLayout,
): FileAccount {
  scan.finish();
  const { read, used, reported } = scan.count;
  if (read === 0) scan.count.say("note", headerLine, NO_READINGS);
  return { file, read, used, reported, layout: sheet ? "sheet" : "tidy" };
}
