/**
 * The readings of a session that are judged together.
 *
 * @module
 */
import type { Ring } from "./bench.ts";
import type { LengthUnit } from "./piece.ts";
import type { Problem } from "./problem.ts";

/** The readings of one session under one ring in one unit. */
export interface SessionGroup {
  /** The session. */
  readonly session: string;
  /** The ring. */
  readonly ring: Ring;
  /** The unit it was typed in. */
  readonly unit: LengthUnit;
  /** File of its first reading. */
  readonly file: string;
  /** Line of its first reading. */
  readonly line: number;
  /** Its first sag that is not 0, in mm. */
  first: number;
  /** Its readings. */
  count: number;
  /** Their sum, in mm. */
  sum: number;
  /** How many are negative. */
  negative: number;
  /** The first line that is. */
  negativeLine: number;
  /** How many are 0. */
  zero: number;
  /** The first line that is. */
  zeroLine: number;
  /** How many are about 25.4 times off the first. */
  outOfScale: number;
  /** The first line that is. */
  outOfScaleLine: number;
  /** How many are far from the first by another factor. */
  farOff: number;
  /** The first line that is. */
  farOffLine: number;
  /** Its sag, in mm. */
  farOffSag: number;
}

/** Size of a group's mean sag, in mm. */
export function meanSize(group: SessionGroup): number {
  return Math.abs(group.sum / group.count);
}

/** A warning about a group. */
export function suspicion(
  group: SessionGroup,
  code: string,
  line: number,
  message: string,
  mend: string,
  count?: number,
): Problem {
  return {
    severity: "warning",
    code,
    file: group.file,
    line,
    message,
    mend,
    ...(count === undefined ? {} : { count }),
  };
}
