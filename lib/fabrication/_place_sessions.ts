/**
 * Lines of work in order, and sessions in their places among them.
 *
 * @module
 */
import type { WorkLogEntry } from "../records/work_log.ts";
import type { SessionMark, TimelineNote } from "./work_timeline.ts";

const day = (date: string): string => date.slice(0, 10);

/** The lines in order of date, where all are dated; else as they stand. */
export function orderedEntries(
  entries: readonly WorkLogEntry[],
  notes: TimelineNote[],
): readonly WorkLogEntry[] {
  let latest = "";
  const late: number[] = [];
  for (const { date, line } of entries) {
    if (date === undefined) continue;
    if (date < latest) late.push(line);
    else latest = date;
  }
  if (late.length === 0) return entries;
  notes.push({ kind: "dates out of order", lines: late });
  return entries.every(({ date }) => date !== undefined)
    ? [...entries].sort((a, b) => a.date! < b.date! ? -1 : +(a.date! > b.date!))
    : entries;
}

/** A session with the work since the one before. */
export interface SessionEvent {
  readonly session: string;
  readonly entries: readonly WorkLogEntry[];
}

/** Puts each session after its work. */
export function placedSessions(
  entries: readonly WorkLogEntry[],
  sessions: readonly SessionMark[],
  notes: TimelineNote[],
): {
  events: readonly SessionEvent[];
  before: readonly WorkLogEntry[];
  after: readonly WorkLogEntry[];
} {
  const found = sessions.map((mark, order) =>
    placeOf(mark, order, entries, notes)
  );
  const places = sessions.flatMap((mark, order) => {
    const at = found[order] ?? betweenNeighbours(found, order, entries.length);
    if (at === undefined) {
      notes.push({
        kind: "session without work",
        session: mark.session,
        placed: "nowhere",
      });
    }
    return at === undefined ? [] : [{ mark, order, at }];
  }).sort((a, b) => a.at - b.at || a.order - b.order);
  const known = new Set(sessions.map(({ session }) => session));
  for (const { session, line } of entries) {
    if (session !== undefined && !known.has(session)) {
      notes.push({ kind: "work without a session", session, line });
    }
  }
  let from = 0;
  const events = places.map(({ mark: { session }, at }) => {
    const since = entries.slice(from, at);
    from = Math.max(from, at);
    return { session, entries: since };
  });
  return {
    events,
    before: events.length === 0 ? entries : events[0].entries,
    after: events.length === 0 ? [] : entries.slice(from),
  };
}

/** How many lines of work come before a session; undefined if unknown. */
function placeOf(
  { session, takenAt }: SessionMark,
  order: number,
  entries: readonly WorkLogEntry[],
  notes: TimelineNote[],
): number | undefined {
  const named = entries.findLastIndex((entry) => entry.session === session);
  if (named >= 0) {
    const { date, line } = entries[named];
    if (
      takenAt !== undefined && date !== undefined && day(takenAt) < day(date)
    ) {
      notes.push({ kind: "session before its work", session, line });
    }
    return named + 1;
  }
  // A look before any work began needs no line of the log.
  if (entries.length === 0) return 0;
  const dated = takenAt !== undefined &&
    entries.every(({ date }) => date !== undefined);
  if (!dated) return order === 0 ? 0 : undefined;
  const place = entries.filter(({ date }) => day(date!) <= day(takenAt)).length;
  if (place > 0 || order > 0) {
    notes.push({
      kind: "session without work",
      session,
      placed: place === 0 ? "at the start" : "by date",
    });
  }
  return place;
}

/**
 * The place of a session without name and date, where no work lies between the
 * sessions read before and after it.
 */
function betweenNeighbours(
  places: readonly (number | undefined)[],
  order: number,
  end: number,
): number | undefined {
  const before = places.slice(0, order).findLast((one) => one !== undefined);
  const after = places.slice(order + 1).find((one) => one !== undefined) ?? end;
  return before === after ? before : undefined;
}
