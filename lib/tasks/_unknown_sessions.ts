/**
 * Sessions that a work log names and no readings bear.
 *
 * @module
 */
import { forEachItem } from "../numerics/lazy_list.ts";
import { closestName } from "../records/closest_name.ts";
import type { PieceFolder } from "../records/folder.ts";
import type { Problem } from "../records/problem.ts";
import type { WorkLogEntry } from "../records/work_log.ts";

/** Lines of work that name a session which no readings bear. */
export function unknownSessions(
  { readings }: PieceFolder,
  entries: readonly WorkLogEntry[],
): Problem[] {
  const named = entries.filter(({ session }) => session !== undefined);
  if (named.length === 0 || readings.length === 0) return [];
  const known = new Set<string>();
  forEachItem(readings, ({ session }) => void known.add(session));
  return named.filter(({ session }) => !known.has(session!))
    .map(({ session, line }): Problem => {
      const likely = closestName(session!, known);
      return {
        severity: likely === undefined ? "note" : "warning",
        code: "unknown-session",
        file: "worklog.csv",
        line,
        column: "session",
        value: session!,
        message: "no readings bear this session's name",
        expected: "the name of a session, as the readings write it",
        mend: likely === undefined
          ? "nothing, if it was not read yet"
          : `did you mean ${likely}?`,
      };
    });
}
