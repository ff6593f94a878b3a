/**
 * One reading through the reader of files, before it is in one.
 *
 * @module
 */
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Problem } from "../records/problem.ts";
import type { Reading } from "../records/reading.ts";
import { scanReadings } from "../records/scan_readings.ts";

/** A reading, or why it is none, and what is suspicious about it. */
export interface ReadLine {
  /** The reading; absent when it was refused. */
  readonly reading?: Reading;
  /** Everything the reader has to say. */
  readonly problems: readonly Problem[];
}

/** Cells as they were typed, so that the reader speaks of what was typed. */
function quoted(cells: readonly string[]): string {
  return `${
    cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(",")
  }\n`;
}

/**
 * Reads cells as a line of `readings.csv`: same checks, same words.
 *
 * @param cells What each column holds.
 * @param piece The piece.
 * @param bench The bench.
 * @param order Running number of the reading.
 */
export async function readLine(
  cells: Readonly<Record<string, string>>,
  piece: Piece,
  bench: Bench,
  order = 0,
): Promise<ReadLine> {
  const names = Object.keys(cells);
  let reading: Reading | undefined;
  const { problems } = await scanReadings(
    quoted(names) + quoted(names.map((name) => cells[name])),
    { file: "readings.csv", piece, bench, firstOrder: order },
    (found) => reading = found,
  );
  return { problems, ...(reading === undefined ? {} : { reading }) };
}

/** A problem of one reading in one line: what is wrong and, unless
 * left out, what to do. */
export function problemLine(
  { message, expected, mend }: Problem,
  session: string,
  mended = true,
): string {
  const more = !mended ? [] : [
    ...(expected === undefined ? [] : [`expected ${expected}`]),
    ...(mend === undefined ? [] : [mend]),
  ];
  // The reader speaks of sessions; this one has a single reading.
  const words = message
    .replaceAll(`every reading of session ${session}`, "the reading")
    .replaceAll(`the mean of session ${session}`, "the reading")
    .replaceAll(`a reading of session ${session}`, "the reading")
    .replaceAll(`session ${session} reads like`, "the reading looks like")
    .replaceAll(`session ${session}`, "the reading")
    .replaceAll("the mean sag is", "the sag is")
    .replaceAll("the mean is", "it is");
  return more.length === 0 ? words : `${words} (${more.join("; ")})`;
}
