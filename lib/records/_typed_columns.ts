/**
 * Columns of a typed table that nobody knows, or that stand twice.
 *
 * @module
 */
import { closestName } from "./closest_name.ts";
import { plainName } from "./_column_names.ts";
import type { Problem } from "./problem.ts";

/** So many unknown columns are named. */
const MOST_NAMED = 12;

/**
 * Says which headings are not used, and which column has two.
 *
 * @param at Index of each known column.
 * @param names The column that each known word means.
 */
export function columnProblems(
  file: string,
  line: number,
  headings: readonly string[],
  at: ReadonlyMap<string, number>,
  names: ReadonlyMap<string, string>,
): Problem[] {
  const used = new Set(at.values());
  const absent = [...new Set(names.values())].filter((name) => !at.has(name));
  const problems: Problem[] = [];
  const rest: string[] = [];
  headings.forEach((heading, index) => {
    const typed = heading.trim();
    if (typed === "" || used.has(index)) return;
    const known = names.get(plainName(typed));
    const meant = known === undefined
      ? closestName(plainName(typed), absent)
      : undefined;
    const place = { file, line, column: typed.slice(0, 40) };
    if (known !== undefined) {
      // Another word for a column may be a column of the user's own.
      const first = plainName(headings[at.get(known) ?? index]);
      if (plainName(typed) !== first) return;
      problems.push({
        ...place,
        severity: "refused",
        code: "repeated-column",
        message: `the header has two columns ${known}`,
        mend: "rename or take out the one that is not meant",
      });
    } else if (meant !== undefined) {
      problems.push({
        ...place,
        severity: "warning",
        code: "unknown-column",
        message: "this column is not used",
        mend: `did you mean ${meant}?`,
      });
    } else if (rest.length < MOST_NAMED) rest.push(place.column);
  });
  if (rest.length > 0) {
    problems.push({
      severity: "note",
      code: "unknown-column",
      file,
      line,
      message: `columns not used: ${rest.join(", ")}`,
    });
  }
  return problems;
}
