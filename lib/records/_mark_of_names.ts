/**
 * A header whose cells are set apart by something that parts none.
 *
 * @module
 */
import { tidyColumn } from "./_column_names.ts";
import { parseZoneName } from "./_zone_name.ts";

/** So many lines are looked at. */
const MOST = 60;
/** A longer line is no header. */
const LONGEST = 500;

/** What people put between cells that parts none, and what it is called. */
const OTHER_MARKS: readonly [RegExp, string][] = [
  [/ {2,}/, "blanks stand"],
  [/\s+/, "blanks stand"],
  [/\s*:\s*/, "colons stand"],
  [/\s*\/\s*/, "slashes stand"],
  [/\s*[\uff1b\u061b\u037e\u204f]\s*/, "a semicolon of another script stands"],
  [/\s*[\uff0c\u060c\u3001\u201a]\s*/, "a comma of another script stands"],
];

/** What stands between the names of a line that is a header but for it. */
export function markOfNames(text: string): string | undefined {
  for (const line of text.split("\n", MOST)) {
    if (line.length >= LONGEST) continue;
    for (const [mark, words] of OTHER_MARKS) {
      const cells = line.trim().split(mark);
      const known = cells.filter((word) =>
        tidyColumn(word) !== undefined || parseZoneName(word) !== undefined
      ).length;
      if (known > 1 && (known === cells.length || known > 2)) {
        return words;
      }
    }
  }
  return undefined;
}
