/**
 * A file of readings, walked once from top to bottom.
 *
 * @module
 */
import type { Bench } from "./bench.ts";
import { decodeText, tableLines } from "./_decode_text.ts";
import { findLayout } from "./_find_layout.ts";
import type { FileAccount } from "./folder.ts";
import type { Piece } from "./piece.ts";
import type { ProblemCollector } from "./_problem_collector.ts";
import type { Reading } from "./reading.ts";
import { loadCsvParser } from "./_rows_of_text.ts";
import { scanCableLog } from "./_scan_cable_log.ts";
import { scanTable } from "./_scan_table.ts";

/** What a scan needs to know. */
export interface ScanSource {
  /** The file as the user named it. */
  readonly file: string;
  /** The piece. */
  readonly piece: Piece;
  /** The bench. */
  readonly bench: Bench;
  /** Running number of the first reading. */
  readonly firstOrder: number;
  /** Session of a bench sheet that names none. */
  readonly sheetSession: string;
  /** Where problems go. */
  readonly problems: ProblemCollector;
  /** Where readings go. */
  readonly visit: (reading: Reading) => void;
}

/** Lines of a text that are neither blank nor comments. */
function filledLines(text: string): number {
  let count = 0;
  for (const line of text.split("\n")) {
    const bare = line.trim();
    if (bare !== "" && !bare.startsWith("#")) count++;
  }
  return count;
}

/** Text of a file whose every line ends in LF, without marks. */
function textOf(content: string | Uint8Array, source: ScanSource) {
  const { text, problems } = decodeText(content, source.file);
  source.problems.addAll(problems);
  const refused = problems.some((one) => one.severity === "refused");
  return refused ? undefined : tableLines(text);
}

/** Walks a file; every line of readings in it is used or reported. */
export async function scanText(
  content: string | Uint8Array,
  source: ScanSource,
): Promise<FileAccount> {
  const { file, problems } = source;
  const nothing = (count: number): FileAccount => ({
    file,
    read: count,
    used: 0,
    reported: count,
    layout: "none",
  });
  const text = textOf(content, source);
  if (text === undefined) return nothing(1);
  if (text.trim() === "") {
    problems.add({
      severity: "warning",
      code: "empty-file",
      file,
      message: "the file is empty",
      mend: "write a header and the readings, or take the file away",
    });
    return nothing(0);
  }
  const parse = await loadCsvParser();
  const layout = findLayout(
    text,
    file,
    (line, delimiter) => parse(line, delimiter).data[0] ?? [],
  );
  if (layout.kind === "cable") return scanCableLog(text, source);
  if (layout.kind === "table") return scanTable(text, layout, source, parse);
  const count = Math.max(1, filledLines(text) - layout.headings);
  problems.addAll(
    layout.problems.map((problem, i) =>
      i === 0 ? { ...problem, count } : problem
    ),
  );
  return nothing(count);
}
