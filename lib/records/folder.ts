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
  /**
   * Lines of readings found in the files; in a bench sheet every filled cell
   * under a zone counts, for each is a reading.
   */
  readonly read: number;
  /** Those that became readings. */
  readonly used: number;
  /** Those refused or marked as withdrawn, each with a problem of its own. */
  readonly reported: number;
}

/** What became of one file of readings. */
export interface FileAccount extends LineCount {
  /** The file as the user named it. */
  readonly file: string;
  /**
   * `tidy`: a line is a reading; `sheet`: a filled cell under a zone is;
   * `cable log`: what a gauge's data cable wrote; `none`: not to be read.
   */
  readonly layout: "tidy" | "sheet" | "cable log" | "none";
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
  /** What became of each file of readings. */
  readonly files: readonly FileAccount[];
  /** How many lines were read, used and reported, all files together. */
  readonly lines: LineCount;
  /** Everything the readers have to say. */
  readonly problems: readonly Problem[];
}
