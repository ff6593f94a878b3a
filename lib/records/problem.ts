/**
 * What the readers say about a user's file: always where, what, and the mend.
 *
 * @module
 */

/**
 * How much a problem costs.
 *
 * `refused`: the line or file is not used. `warning`: used as it stands, but
 * suspicious. `note`: used, with something the reader did that the user may
 * want to know.
 */
export type Severity = "refused" | "warning" | "note";

/** One thing a reader has to say about one place in a user's file. */
export interface Problem {
  /** How much it costs. */
  readonly severity: Severity;
  /** A short stable name of the kind, such as `ambiguous-number`. */
  readonly code: string;
  /** The file as the user named it. */
  readonly file: string;
  /** The line in the file, counted from 1, where there is one. */
  readonly line?: number;
  /** The column's name as typed, where there is one. */
  readonly column?: string;
  /** The user's text, quoted as typed. */
  readonly value?: string;
  /** What is wrong, in one plain sentence without the place. */
  readonly message: string;
  /** What was expected there. */
  readonly expected?: string;
  /** What the user can do about it. */
  readonly mend?: string;
  /** How many lines this stands for, 1 unless stated. */
  readonly count?: number;
}
