/**
 * A problem in plain words for a terminal or a page.
 *
 * @module
 */
import { groupProblems, type ProblemGroup } from "./group_problems.ts";
import { printable } from "./printable.ts";
import type { Problem } from "./problem.ts";

const LEAD = { refused: "refused", warning: "warning", note: "note" } as const;

/** Longest piece of the user's text that is quoted. */
const LONGEST_QUOTE = 60;

/** Most characters a list of problems may take. */
const LONGEST_LIST = 9_000;

/** Most lines of one cause that are named. */
const MOST_LINES = 12;

/** Text on one line, without control codes. */
function safe(text: string): string {
  return printable(text).replaceAll("\n", "⏎");
}

/** The user's text made safe to print: one line, no control codes, not long. */
function quoted(text: string): string {
  return safe(
    text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text,
  );
}

/** The lines that a problem stands in besides its first. */
function otherLines({ first, others }: ProblemGroup): string {
  const at = others.filter(({ line }) => line !== undefined);
  if (at.length === 0) return "";
  const areOne = at.every(({ value }) => value === first.value);
  const named = at.slice(0, MOST_LINES).map(({ line, value }) =>
    areOne || value === undefined || value === ""
      ? `${line}`
      : `${line} (“${quoted(value)}”)`
  );
  const left = at.length - named.length;
  return `\n  the same in line${at.length === 1 ? "" : "s"} ${
    named.join(", ")
  }${left > 0 ? ` and ${left} more` : ""}`;
}

/**
 * Puts a problem into words: where it is, what is wrong, and the mend.
 *
 * One to three lines of plain text. What the user typed is cut at 60
 * characters, and control codes in it are shown as escapes, so that a hostile
 * file cannot write to the terminal.
 *
 * @param problem What a reader has to say.
 * @returns Plain text without a final line end.
 *
 * @example
 * ```ts
 * import { describeProblem } from "sagbook/records/describe_problem.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(
 *   describeProblem({
 *     severity: "refused",
 *     code: "not-a-number",
 *     file: "readings.csv",
 *     line: 4,
 *     column: "reading",
 *     value: "n/a",
 *     message: "this is not a number",
 *     expected: "a length such as 0.715 or 0.715 mm",
 *     mend: "type the reading, or take the line out",
 *   }),
 *   "refused: readings.csv, line 4, column reading: this is not a number: “n/a”\n" +
 *     "  expected: a length such as 0.715 or 0.715 mm\n" +
 *     "  mend: type the reading, or take the line out",
 * );
 * ```
 */
export function describeProblem(problem: Problem): string {
  const place = [
    quoted(problem.file),
    ...(problem.line === undefined ? [] : [`line ${problem.line}`]),
    ...(problem.column === undefined
      ? []
      : [`column ${quoted(problem.column)}`]),
  ].join(", ");
  const value = problem.value === undefined || problem.value === ""
    ? ""
    : `: “${quoted(problem.value)}”`;
  const text = [
    `${LEAD[problem.severity]}: ${place}: ${safe(problem.message)}${value}`,
  ];
  if (problem.expected !== undefined) {
    text.push(`  expected: ${safe(problem.expected)}`);
  }
  if (problem.mend !== undefined) text.push(`  mend: ${safe(problem.mend)}`);
  return text.join("\n");
}

/**
 * Puts many problems into words, in under 10 kB whatever their number.
 *
 * What is refused comes first, then warnings, then notes; what several lines
 * have in common is said once, with those lines. When the list is cut, the last lines count what is left of each kind.
 *
 * @param problems What the readers have to say.
 * @returns Plain text without a final line end; empty for no problems.
 *
 * @example
 * ```ts
 * import { describeProblems } from "sagbook/records/describe_problem.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(describeProblems([]), "");
 * ```
 */
export function describeProblems(problems: readonly Problem[]): string {
  const rank = { refused: 0, warning: 1, note: 2 } as const;
  const ordered = groupProblems(
    [...problems].sort((a, b) => rank[a.severity] - rank[b.severity]),
  );
  const shown: string[] = [];
  let length = 0;
  let next = 0;
  for (; next < ordered.length; next++) {
    const text = `${describeProblem(ordered[next].first)}${
      otherLines(ordered[next])
    }`.slice(0, LONGEST_LIST / 3);
    const bytes = new TextEncoder().encode(text).length + 1;
    if (length + bytes > LONGEST_LIST) break;
    shown.push(text);
    length += bytes;
  }
  if (next < ordered.length) {
    const left = new Map<string, number>();
    const rest = ordered.slice(next).flatMap((group) => [
      group.first,
      ...group.others,
    ]);
    for (const problem of rest) {
      const kind = `${problem.severity}: ${problem.code}`;
      left.set(kind, (left.get(kind) ?? 0) + (problem.count ?? 1));
    }
    const kinds = [...left].slice(0, 12).map(([kind, count]) =>
      `${count} × ${kind}`
    );
    shown.push(`and besides: ${kinds.join(", ")}`);
  }
  return shown.join("\n");
}
