/**
 * Piece and bench from texts, as a folder's files are read.
 *
 * @module
 */
import type { Bench } from "./bench.ts";
import type { BenchFile } from "./bench_file.ts";
import type { Piece } from "./piece.ts";
import type { PieceFile } from "./piece_file.ts";
import type { Problem } from "./problem.ts";
import { benchOfBytes, pieceOfBytes } from "./_read_settings.ts";

/** What was read, and everything there is to say about it. */
export interface SettingsOfText {
  /** The piece; absent when it was refused. */
  readonly piece?: Piece;
  /** The bench; absent when it was refused. */
  readonly bench?: Bench;
  /** Everything the readers have to say. */
  readonly problems: readonly Problem[];
}

/**
 * Reads a piece and a bench that lie in no folder.
 *
 * The same reader as for `piece.json` and `bench.json`, with the same
 * defaults, checks and words, for callers that were told the sizes some other
 * way. A ring's spacings cannot be a file here.
 *
 * @param piece What `piece.json` would hold.
 * @param bench What `bench.json` would hold.
 * @param name What to call the place in problems.
 * @returns Piece and bench, and the problems.
 *
 * @example
 * ```ts
 * import { settingsOfText } from "sagbook/records/settings_of_text.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { piece, bench } = await settingsOfText(
 *   { name: "blank 7", form: "concave", diameter: "210 mm" },
 *   { gauge: {}, rings: [{ id: "A", radius: "60 mm", ball_radius: "3 mm" }] },
 *   "command line",
 * );
 * equal(piece?.diameter, 210);
 * equal(bench?.rings[0].id, "A");
 * ```
 */
export async function settingsOfText(
  piece: PieceFile,
  bench: BenchFile,
  name: string,
): Promise<SettingsOfText> {
  const bytes = (content: unknown) =>
    new TextEncoder().encode(JSON.stringify(content));
  const ofPiece = await pieceOfBytes(bytes(piece), name);
  const ofBench = await benchOfBytes(
    bytes(bench),
    name,
    () => Promise.resolve({ kind: "absent" }),
  );
  // Lines of a text that nobody wrote would help nobody.
  const problems = [...ofPiece.problems, ...ofBench.problems].map((
    { line: _, ...problem },
  ) => problem);
  return {
    ...(ofPiece.value === undefined ? {} : { piece: ofPiece.value }),
    ...(ofBench.value === undefined ? {} : { bench: ofBench.value }),
    problems,
  };
}
