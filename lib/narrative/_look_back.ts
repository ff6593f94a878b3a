/**
 * A history as it stood on an earlier evening.
 *
 * @module
 */
import {
  type WorkTimeline,
  workTimeline,
} from "../fabrication/work_timeline.ts";
import type { HistoryPoint } from "./history_points.ts";

/** The session worked on last; one that has no place counts as read last. */
export function lastPoint(
  points: readonly HistoryPoint[],
  timeline: WorkTimeline,
): HistoryPoint | undefined {
  const newest = points.at(-1);
  const name = timeline.sessions.at(-1)?.session;
  const placed = timeline.sessions.some(({ session }) =>
    session === newest?.session.session
  );
  return placed
    ? points.find(({ session }) => session.session === name)
    : newest;
}

/** What came after a session left out. */
export function lookBack(
  points: readonly HistoryPoint[],
  timeline: WorkTimeline,
  upTo: string,
): { points: readonly HistoryPoint[]; timeline: WorkTimeline } {
  const end = timeline.sessions.findIndex(({ session }) => session === upTo);
  if (end < 0) {
    throw new RangeError(
      `Cannot look back to a session as it must be one of the history: current value is ${upTo}`,
    );
  }
  const kept = new Set(
    timeline.sessions.slice(0, end + 1).map(({ session }) => session),
  );
  const entries = [
    ...timeline.before,
    ...timeline.intervals.slice(0, end).flatMap(({ entries }) => entries),
  ];
  const left = points.filter(({ session }) => kept.has(session.session));
  return {
    points: left,
    timeline: workTimeline(entries, left.map(({ session }) => session)),
  };
}
