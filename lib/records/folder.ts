/**
 * A user's folder, read whole.
 *
 * @module
 */
import type { Bench } from "./bench.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";

/** The conservation rule in numbers: `read = used + reported`. */
export interface LineCount {
  /** Lines (records) of readings found in the files. */
  readonly read: number;
  /** Those that became readings. */
  readonly used: number;
  /** Those refused, each with a problem of its own. */
  readonly reported: number;
}

/** What a folder holds once it has been read. */
export interface PieceFolder {
  /** The folder as the user named it. */
  readonly path: string;
  /** The piece. */
  readonly piece: Piece;
  /** The bench. */
  readonly bench: Bench;
  /** Every reading, in the order of the files. */
  readonly readings: readonly Reading[];
  /** How many lines were read, used and reported. */
  readonly lines: LineCount;
  /** Everything the readers have to say. */
  readonly problems: readonly Problem[];
}
