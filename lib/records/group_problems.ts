/**
 * Problems of one cause, put together.
 *
 * @module
 */
import type { Problem } from "./problem.ts";

/** Problems that differ in nothing but their line and the user's text. */
export interface ProblemGroup {
  /** The first of them. */
  readonly first: Problem;
  /** The others in the order of their lines, each line once. */
  readonly others: readonly Problem[];
}

/** True for a problem that stands for more, or for no line. */
function isOwn({ line, count }: Problem): boolean {
  return line === undefined || count !== undefined;
}

/**
 * Puts problems of one cause together: the same severity, kind, file, column,
 * words and mend.
 *
 * @param problems What the readers have to say.
 * @returns Groups in the order of their first problems.
 *
 * @example
 * ```ts
 * import { groupProblems } from "sagbook/records/group_problems.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const at = (line: number) => ({
 *   severity: "refused",
 *   code: "no-reading",
 *   file: "readings.csv",
 *   line,
 *   message: "the reading is blank",
 * } as const);
 * const [group] = groupProblems([at(4), at(7), at(7), at(9)]);
 * deepEqual(group.others.map(({ line }) => line), [7, 9]);
 * ```
 */
export function groupProblems(
  problems: readonly Problem[],
): readonly ProblemGroup[] {
  const groups = new Map<
    string,
    { first: Problem; others: Problem[]; seen: Set<string> }
  >();
  for (const problem of problems) {
    const { severity, code, file, column, message, expected, mend } = problem;
    const place = `${problem.line ?? ""} ${problem.value ?? ""}`;
    const key = JSON.stringify(
      [severity, code, file, column, message, expected, mend],
    );
    const group = groups.get(key);
    if (group === undefined) {
      groups.set(key, {
        first: problem,
        others: [],
        seen: new Set([place]),
      });
    } else if (isOwn(problem) || !group.seen.has(place)) {
      group.seen.add(place);
      group.others.push(problem);
    }
  }
  return [...groups.values()].map(({ first, others }) => ({ first, others }));
}
