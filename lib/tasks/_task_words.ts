/**
 * What every task says and how it ends.
 *
 * @module
 */
import { relative } from "node:path";
import { closestName } from "../records/closest_name.ts";
import { describeProblems } from "../records/describe_problem.ts";
import { RecordError } from "../records/record_error.ts";

/** Exit codes of the tasks. */
export const EXIT = { ok: 0, failed: 1, usage: 2, stopped: 130 } as const;

/**
 * Turns anything thrown into plain words; a stack is shown to nobody.
 *
 * @param error What was thrown.
 * @returns Text for the terminal.
 */
export function plainWords(error: unknown): string {
  if (error instanceof RecordError) return describeProblems(error.problems);
  return error instanceof Error ? error.message : String(error);
}

/** A path as one would type it: from here if it lies below, else whole. */
export function displayPath(path: string): string {
  const from = relative(Deno.cwd(), path);
  if (from === "") return ".";
  return from.startsWith("..") && from.length > path.length ? path : from;
}

/**
 * A path as a shell takes it in one piece, for a command that is to be copied.
 *
 * @param path As the user named it.
 * @returns It, in quotes where a shell would read it as more than a name.
 */
export function shellWord(path: string): string {
  if (/^[\p{L}\p{N}\p{M}_./\\:@%+,~-]+$/u.test(path) && !/^~/.test(path)) {
    return path;
  }
  return Deno.build.os === "windows"
    ? `"${path}"`
    : `'${path.replaceAll("'", "'\\''")}'`;
}

/** What to say of a word that is none of those known. */
export function unknownWord(
  what: string,
  typed: string,
  known: readonly string[],
): string {
  const meant = closestName(typed, known);
  const guess = meant === undefined ? "." : `: did you mean ${meant}?`;
  return `There is no ${what} ${typed}${guess} Known: ${known.join(", ")}.`;
}

/**
 * What to say of a wrong call: what is wrong, how the task is called, and where
 * the rest stands; the whole help would push the first line off the terminal.
 *
 * @param wrong What is wrong with the call.
 * @param usage The task's help, whose first paragraph is how it is called.
 * @returns Text for the terminal.
 */
export function wrongCall(wrong: string, usage: string): string {
  const [synopsis] = usage.split("\n\n", 1);
  const task = synopsis.split(" ", 3).join(" ");
  return `${wrong}\n\n${synopsis}\n\n${task} --help says how.`;
}
