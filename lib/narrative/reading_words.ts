/**
 * How far the reading of a long file is, in words.
 *
 * @module
 */
import type { ReadingProgress } from "../records/read_piece_folder.ts";

/**
 * Says how far the reading of a long file is.
 *
 * @param progress As told by `readPieceFolder`.
 * @returns A few words.
 *
 * @example
 * ```ts
 * import { readingWords } from "sagbook/narrative/reading_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(
 *   readingWords({ file: "readings.csv", part: 0.424, readings: 420_000 }),
 *   "readings.csv 42 %, 420,000 readings",
 * );
 * ```
 */
export function readingWords(
  { file, part, readings }: ReadingProgress,
): string {
  const counted = `${readings.toLocaleString("en")} readings`;
  return part < 1
    ? `${file} ${Math.floor(100 * part)} %, ${counted}`
    : `${counted} read, now worked out`;
}
