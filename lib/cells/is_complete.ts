/**
 * Telling whether a text is a whole cell yet.
 *
 * @module
 */
import { parseCell } from "./parse_cell.ts";

/** Whether a console should run the text or let the user type on. */
export type Completeness =
  | { readonly status: "complete" }
  | { readonly status: "incomplete"; readonly indent: string }
  | { readonly status: "invalid" };

/**
 * Tells whether a text is complete, needs more lines, or is wrong as it is.
 *
 * Incomplete means that the first thing missing is missing at the very end.
 *
 * @param source What has been typed.
 * @returns The state; an incomplete one with the spaces to begin the next line.
 *
 * @example
 * ```ts
 * import { isComplete } from "sagbook/cells/is_complete.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(isComplete("1 + 1"), { status: "complete" });
 * deepEqual(isComplete("if (sag > 0) {"), { status: "incomplete", indent: "  " });
 * deepEqual(isComplete("const = 5"), { status: "invalid" });
 * ```
 */
export function isComplete(source: string): Completeness {
  const [problem] = parseCell(source).problems;
  if (!problem) return { status: "complete" };
  const rest = source.slice(problem.end);
  const atEnd = problem.start >= source.trimEnd().length ||
    (rest.trim() === "" && UNFINISHED.has(Number(problem.code)));
  if (!atEnd) return { status: "invalid" };
  return { status: "incomplete", indent: "  ".repeat(openBrackets(source)) };
}

/** Comment, template, string or pattern not closed. */
const UNFINISHED = new Set([1010, 1160, 1161]);

function openBrackets(source: string): number {
  let open = 0;
  for (const letter of source) {
    if ("{[(".includes(letter)) open++;
    else if ("}])".includes(letter)) open = Math.max(0, open - 1);
  }
  return open;
}
