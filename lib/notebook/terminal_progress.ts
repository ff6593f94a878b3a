/**
 * A run's progress on the terminal.
 *
 * @module
 */
import type { RunProgress } from "./run_result.ts";

/** Clears the rest of a terminal's line (ECMA-48, erase in line). */
const CLEAR_LINE = "\r\x1B[K";

/**
 * Makes a listener that tells how far a run is: on a terminal one line that
 * changes, else one line for each cell that has ended.
 *
 * @param write Takes text for the terminal.
 * @param isTerminal Whether a line can be written over.
 * @param columns Gives the letters that fit in a line of it, since a line that
 * breaks cannot be written over; 0, as where it is left out, sets no limit.
 * @returns A listener for `onProgress` of `runNotebook`.
 *
 * @example
 * ```ts
 * import { terminalProgress } from "sagbook/notebook/terminal_progress.ts";
 * import { equal } from "node:assert/strict";
 *
 * let text = "";
 * const listen = terminalProgress((more) => text += more, false);
 * listen({ cell: 2, of: 9, state: "running", seconds: 0 });
 * listen({ cell: 2, of: 9, state: "done", seconds: 1.23 });
 * equal(text, "cell 2 of 9: done in 1.2 s\n");
 * ```
 */
export function terminalProgress(
  write: (text: string) => void,
  isTerminal: boolean,
  columns: () => number = () => 0,
): (progress: RunProgress) => void {
  const fit = (text: string): string => {
    const room = columns();
    return room > 0 ? text.slice(0, Math.max(0, room - 1)) : text;
  };
  return ({ cell, of, state, seconds, words: told = "running …" }) => {
    const place = `cell ${cell} of ${of}`;
    if (state === "running") {
      if (isTerminal) write(CLEAR_LINE + fit(`${place}: ${told}`));
      return;
    }
    const words = state === "skipped"
      ? "left out"
      : `${state} ${state === "done" ? "in" : "after"} ${seconds.toFixed(1)} s`;
    const line = `${place}: ${words}`;
    if (!isTerminal) write(`${line}\n`);
    else if (state === "failed") write(`${CLEAR_LINE}${line}\n`);
    else write(CLEAR_LINE + (cell === of ? "" : fit(line)));
  };
}
