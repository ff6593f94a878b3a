/**
 * Work and readings put in one order.
 *
 * @module
 */
import type { WorkLogEntry, WorkPosition } from "../records/work_log.ts";
import { orderedEntries, placedSessions } from "./_place_sessions.ts";

/** A session of readings, as far as its place in time goes. */
export interface SessionMark {
  /** Its name. */
  readonly session: string;
  /** When it was taken, ISO, where recorded. */
  readonly takenAt?: string;
}

/** What is odd about a log, as data. */
export type TimelineNote =
  /** Lines are dated out of order; they were taken in order of their dates. */
  | { readonly kind: "dates out of order"; readonly lines: readonly number[] }
  /** Readings were taken before the work that the log puts before them. */
  | {
    readonly kind: "session before its work";
    readonly session: string;
    readonly line: number;
  }
  /** The log does not name a session; it was placed by its date, or not. */
  | {
    readonly kind: "session without work";
    readonly session: string;
    readonly placed: "by date" | "at the start" | "nowhere";
  }
  /** The log names a session that has no readings. */
  | {
    readonly kind: "work without a session";
    readonly session: string;
    readonly line: number;
  }
  /** A line says neither wets nor minutes, or not in the unit of the others. */
  | { readonly kind: "no amount"; readonly line: number }
  /** Grade or position changed between two sessions. */
  | {
    readonly kind: "mixed settings";
    readonly before: string;
    readonly after: string;
  };

/** Grade and position of a stretch of work. */
export interface Setting {
  /** The grade, where written down. */
  readonly grade?: string;
  /** Which of the two lay on top, where written down. */
  readonly position?: WorkPosition;
}

/** A session and the work done before it, all settings together. */
export interface PlacedSession {
  /** The session. */
  readonly session: string;
  /** Work before it, in the timeline's unit. */
  readonly work: number;
}

/** Work between two sessions. */
export interface WorkInterval {
  /** The session before. */
  readonly before: PlacedSession;
  /** The session after. */
  readonly after: PlacedSession;
  /** The lines of work between. */
  readonly entries: readonly WorkLogEntry[];
  /** Their one setting; absent where they have several, or no amount. */
  readonly setting?: Setting;
}

/** All runs of one setting. */
export interface Stage extends Setting {
  /** Runs in order; each begins with the session before its work. */
  readonly runs: readonly (readonly PlacedSession[])[];
}

/** Work and sessions in one order. */
export interface WorkTimeline {
  /** What work is counted in; absent where no line has an amount. */
  readonly unit?: "wets" | "minutes";
  /** Lines of work in order. */
  readonly entries: readonly WorkLogEntry[];
  /** Sessions in order with the work before them. */
  readonly sessions: readonly PlacedSession[];
  /** Work from session to session. */
  readonly intervals: readonly WorkInterval[];
  /** Runs by setting, in the order in which each was last worked. */
  readonly stages: readonly Stage[];
  /** Lines of work before the first session. */
  readonly before: readonly WorkLogEntry[];
  /** Lines of work since the last session. */
  readonly after: readonly WorkLogEntry[];
  /** What is odd about it. */
  readonly notes: readonly TimelineNote[];
}

/**
 * Puts work and sessions in one order.
 *
 * A session stands after the last line that names it; one that no line names
 * stands where its date puts it. Lines dated out of order are taken in order of
 * date when all are dated. Nothing is guessed in silence: each such step is a
 * note. Work is counted in wets unless most lines have minutes alone; a line
 * without that amount ends a run.
 *
 * @param entries Lines of the work log, in the order of the file.
 * @param sessions Sessions, in the order of the readings.
 * @returns The timeline.
 *
 * @example
 * ```ts
 * import { workTimeline } from "sagbook/fabrication/work_timeline.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const { stages } = workTimeline([
 *   { line: 2, grade: "80", wets: 10, session: "S2" },
 *   { line: 3, grade: "80", wets: 12, session: "S3" },
 * ], [{ session: "S1" }, { session: "S2" }, { session: "S3" }]);
 * deepEqual(stages[0].runs[0].map(({ work }) => work), [0, 10, 22]);
 * ```
 */
export function workTimeline(
  entries: readonly WorkLogEntry[],
  sessions: readonly SessionMark[],
): WorkTimeline {
  const notes: TimelineNote[] = [];
  const ordered = orderedEntries(entries, notes);
  const { events, before, after } = placedSessions(ordered, sessions, notes);
  const unit = unitOf(ordered);
  const placed: PlacedSession[] = [];
  const intervals: WorkInterval[] = [];
  let work = 0;
  for (const { session, entries: since } of events) {
    for (const entry of since) {
      const amount = unit === undefined ? undefined : entry[unit];
      if (amount === undefined) {
        notes.push({ kind: "no amount", line: entry.line });
      } else work += amount;
    }
    const now = { session, work };
    const last = placed[placed.length - 1];
    if (last !== undefined) {
      const setting = oneSetting(since, unit);
      if (setting === "mixed") {
        notes.push({
          kind: "mixed settings",
          before: last.session,
          after: session,
        });
      }
      intervals.push({
        before: last,
        after: now,
        entries: since,
        ...(typeof setting === "object" ? { setting } : {}),
      });
    }
    placed.push(now);
  }
  return {
    ...(unit === undefined ? {} : { unit }),
    entries: ordered,
    sessions: placed,
    intervals,
    stages: stagesOf(intervals),
    before,
    after,
    notes,
  };
}

function unitOf(
  entries: readonly WorkLogEntry[],
): "wets" | "minutes" | undefined {
  const with_ = (unit: "wets" | "minutes") =>
    entries.filter((entry) => entry[unit] !== undefined).length;
  const [wets, minutes] = [with_("wets"), with_("minutes")];
  if (wets === 0 && minutes === 0) return undefined;
  return 2 * wets >= minutes ? "wets" : "minutes";
}

function oneSetting(
  entries: readonly WorkLogEntry[],
  unit: "wets" | "minutes" | undefined,
): Setting | "mixed" | "none" | "unknown" {
  if (entries.length === 0) return "none";
  if (unit === undefined || entries.some((one) => one[unit] === undefined)) {
    return "unknown";
  }
  const [{ grade, position }] = entries;
  const same = entries.every((one) =>
    one.grade === grade && one.position === position
  );
  if (!same) return "mixed";
  return {
    ...(grade === undefined ? {} : { grade }),
    ...(position === undefined ? {} : { position }),
  };
}

function stagesOf(intervals: readonly WorkInterval[]): readonly Stage[] {
  const stages = new Map<
    string,
    { setting: Setting; runs: PlacedSession[][] }
  >();
  let open: { key: string; run: PlacedSession[] } | undefined;
  for (const { before, after, setting, entries } of intervals) {
    if (setting === undefined) {
      // A second look without work between belongs to the run before it.
      if (entries.length === 0 && open !== undefined) open.run.push(after);
      else open = undefined;
      continue;
    }
    const key = JSON.stringify([setting.grade, setting.position]);
    if (open?.key === key) open.run.push(after);
    else {
      open = { key, run: [before, after] };
      const stage = stages.get(key) ?? { setting, runs: [] };
      stage.runs.push(open.run);
      // Last worked comes last.
      stages.delete(key);
      stages.set(key, stage);
    }
  }
  return [...stages.values()].map(({ setting, runs }) => ({
    ...setting,
    runs,
  }));
}
