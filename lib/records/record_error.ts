/**
 * The error for a folder that cannot be used, with every reason at once.
 *
 * @module
 */
import { describeProblems } from "./describe_problem.ts";
import type { Problem } from "./problem.ts";

/**
 * Thrown when a user's files cannot be used at all.
 *
 * It carries every problem that was found, so that one run shows them all. Its
 * message is plain text of under 10 kB.
 *
 * @example
 * ```ts
 * import { RecordError } from "sagbook/records/record_error.ts";
 * import { equal } from "node:assert/strict";
 *
 * const error = new RecordError("Cannot use my-mirror", [{
 *   severity: "refused",
 *   code: "no-file",
 *   file: "piece.json",
 *   message: "the file is missing",
 * }]);
 * equal(
 *   error.message,
 *   "Cannot use my-mirror\nrefused: piece.json: the file is missing",
 * );
 * ```
 */
export class RecordError extends Error {
  /** The class of the error. */
  override readonly name = "RecordError";
  /** Everything the readers have to say, refusals and the rest. */
  readonly problems: readonly Problem[];

  /**
   * Gathers the problems.
   *
   * @param summary What could not be done, in one line.
   * @param problems Why, at least one of them refused.
   */
  constructor(summary: string, problems: readonly Problem[]) {
    super(`${summary}\n${describeProblems(problems)}`);
    this.problems = problems;
  }
}
