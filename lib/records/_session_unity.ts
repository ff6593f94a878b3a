/**
 * Sessions that hold more than one state of the surface, or stand in another
 * order than their dates.
 *
 * @module
 */
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";

/** Readings further apart than this were not taken on one occasion, in days. */
const LONGEST = 2;
const DAY = 86_400_000;
/** So many sessions are remembered. */
const MOST = 10_000;

interface Seen {
  readonly file: string;
  readonly line: number;
  grade: string | undefined;
  other: { grade: string; file: string; line: number } | undefined;
  typed: string | undefined;
  from: number;
  to: number;
  late: { file: string; line: number } | undefined;
}

/** Watches the grade and the date of each session. */
export class SessionUnity {
  readonly #sessions = new Map<string, Seen>();
  #last: { session: string; seen: Seen } | undefined;

  /** Looks at one reading. */
  see({ session, grade, takenAt, file, line }: Reading): void {
    let seen = this.#last?.session === session
      ? this.#last.seen
      : this.#sessions.get(session);
    if (seen === undefined) {
      if (this.#sessions.size >= MOST) return;
      seen = {
        file,
        line,
        grade,
        other: undefined,
        typed: undefined,
        from: Infinity,
        to: -Infinity,
        late: undefined,
      };
      this.#sessions.set(session, seen);
    }
    this.#last = { session, seen };
    if (grade !== undefined) {
      seen.grade ??= grade;
      if (grade !== seen.grade) seen.other ??= { grade, file, line };
    }
    const day = takenAt?.slice(0, 10);
    if (day === undefined || day === seen.typed) return;
    seen.typed = day;
    const time = Date.parse(day);
    if (Number.isNaN(time)) return;
    seen.from = Math.min(seen.from, time);
    seen.to = Math.max(seen.to, time);
    if (seen.to - seen.from > LONGEST * DAY) seen.late ??= { file, line };
  }

  /** Sessions none of whose readings has a date. */
  undated(): readonly string[] {
    return [...this.#sessions].filter(([, { from }]) => from === Infinity)
      .map(([session]) => session);
  }

  /** Takes dates that sessions without one have from elsewhere. */
  date(dates: ReadonlyMap<string, string>): void {
    for (const [session, seen] of this.#sessions) {
      const time = Date.parse(dates.get(session)?.slice(0, 10) ?? "");
      if (seen.from === Infinity && Number.isFinite(time)) {
        [seen.from, seen.to] = [time, time];
      }
    }
  }

  /**
   * A last session without a date, in another file than one that has a date:
   * files stand in no order of time, and the answer may be about an old one.
   */
  #lastUndated(): Problem[] {
    const all = [...this.#sessions];
    const last = all.at(-1);
    if (last === undefined || last[1].from < Infinity) return [];
    let latest: [string, Seen] | undefined;
    for (const one of all) {
      const { from, file } = one[1];
      if (from === Infinity || file === last[1].file) continue;
      if (latest === undefined || from >= latest[1].from) latest = one;
    }
    return latest === undefined ? [] : [{
      severity: "warning",
      code: "last-session-undated",
      file: last[1].file,
      line: last[1].line,
      message: `session ${
        last[0]
      } has no date and was taken for the last, after session ${latest[0]} of ${
        new Date(latest[1].from).toISOString().slice(0, 10)
      } in another file: if it is older, the answer is about a surface that is no longer there`,
      mend:
        "date its readings in a column taken_at, or name the session in a dated line of worklog.csv",
    }];
  }

  /** Sessions dated before one that stands above them. */
  #outOfOrder(): Problem[] {
    const all = [...this.#sessions];
    const undated = this.undated().at(0);
    let latest: [string, Seen] | undefined;
    for (const [session, seen] of all) {
      if (seen.from === Infinity) continue;
      if (latest === undefined || seen.from >= latest[1].from) {
        latest = [session, seen];
        continue;
      }
      const on = (time: number) => new Date(time).toISOString().slice(0, 10);
      return [{
        severity: "note",
        code: "sessions-out-of-order",
        file: seen.file,
        line: seen.line,
        message: `session ${session} is dated ${
          on(seen.from)
        }, before session ${latest[0]} of ${
          on(latest[1].from)
        } that stands above it; sessions were taken ${
          undated === undefined
            ? "in the order of their dates"
            : `as they stand in the files, since session ${undated} has no date`
        }, and the answer is about the last`,
        mend: "look at the dates, if that is not the order of the work",
      }];
    }
    return [];
  }

  /** Sessions on two grades, or over days, or out of order. */
  problems(): Problem[] {
    const order = this.#outOfOrder();
    return this.#lastUndated().concat(
      order,
      [...this.#sessions].flatMap(([session, seen]): Problem[] => {
        const { grade, other, late, from, to } = seen;
        const mend =
          "give the readings after the work in between a session of their own";
        const said: Problem[] = [];
        if (other !== undefined) {
          said.push({
            severity: "warning",
            code: "grades-mixed",
            file: other.file,
            line: other.line,
            column: "grade",
            value: other.grade,
            message:
              `session ${session} holds readings after grade ${grade} and after grade ${other.grade}: those are two surfaces, and one radius is worked out from both`,
            mend,
          });
        }
        if (late !== undefined) {
          said.push({
            severity: "warning",
            code: "long-session",
            file: late.file,
            line: late.line,
            message: `session ${session} goes on for ${
              Math.round((to - from) / DAY)
            } days: if the surface was worked on in between, one radius is worked out from two surfaces`,
            mend,
          });
        }
        return said;
      }),
    );
  }
}
