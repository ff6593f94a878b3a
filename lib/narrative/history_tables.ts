/**
 * The tables of a history.
 *
 * @module
 */
import { ringName } from "../records/ring_name.ts";
import type { Displayable } from "../display/bundle.ts";
import { table } from "../display/table.ts";
import type { WorkLogEntry } from "../records/work_log.ts";
import type { HistoryReport } from "./history_report.ts";
import { settingName, writeRate, writeWork } from "./history_words.ts";
import { sentences } from "./show.ts";
import { verdictWords } from "./_verdict_words.ts";
import { writeRadius } from "./write_radius.ts";

/**
 * Tabulates everything in order: work, readings, changes of mind.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function historyTable(report: HistoryReport): Displayable {
  const { timeline, points, folder: { piece } } = report;
  const byName = new Map(points.map((one) => [one.session.session, one]));
  const rows: Record<string, string>[] = [];
  let before: WorkLogEntry | undefined;
  const work = (entries: readonly WorkLogEntry[]): void => {
    for (const entry of entries) {
      rows.push({
        date: entry.date ?? "",
        what: settingName(entry),
        work: [
          entry.wets === undefined ? "" : writeWork(entry.wets, "wets"),
          entry.minutes === undefined
            ? ""
            : writeWork(entry.minutes, "minutes"),
        ].filter((part) => part !== "").join(", "),
        radius: "",
        "a sphere?": "",
        remark: [
          changeOfMind(before, entry),
          entry.pits === undefined ? "" : `pits: ${entry.pits}`,
          entry.note ?? "",
        ]
          .filter((part) => part !== "").join("; "),
      });
      before = entry;
    }
  };
  const session = (name: string): void => {
    const point = byName.get(name);
    if (point === undefined) return;
    const { session: { takenAt, ring }, centre } = point;
    rows.push({
      date: takenAt?.slice(0, 10) ?? "",
      what: `session ${name}`,
      work: "",
      radius: centre === undefined ? "none" : writeRadius(centre, piece.unit),
      "a sphere?": verdictWords(point.session, piece.unit),
      remark: ringName(ring.id),
    });
  };
  work(timeline.before);
  timeline.sessions.forEach(({ session: name }, i) => {
    if (i > 0) work(timeline.intervals[i - 1].entries);
    session(name);
  });
  work(timeline.after);
  return table(rows, {
    columns: ["date", "what", "work", "radius", "a sphere?", "remark"],
    caption: "Work and readings in order; radius at the centre, ± is 95 %.",
  });
}

/** What changed from one line of work to the next. */
function changeOfMind(
  before: WorkLogEntry | undefined,
  { grade, position }: WorkLogEntry,
): string {
  if (before === undefined) return "";
  if (grade === before.grade && position !== before.position) {
    return "position turned round";
  }
  return "";
}

/**
 * Tabulates what was learned: the rate of each setting, for the next piece.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function ratesTable(report: HistoryReport): Displayable {
  const { stages, folder: { piece }, timeline } = report;
  const { unit } = piece;
  const amount = timeline.unit ?? "wets";
  const rows = stages.flatMap((stage) => {
    const { fit, expected, comparison, change, work } = stage;
    if (fit === undefined) return [];
    return [{
      setting: settingName(stage),
      work: writeWork(work, amount),
      sessions: fit.sessions,
      "sag for one": writeRate(fit.rate, unit),
      expected: expected === undefined ? "—" : writeRate(expected.rate, unit),
      "compared": comparison?.verdict ?? "—",
      "steady?": change?.kind === "changed"
        ? `changed at ${change.at}`
        : change?.kind === "steady"
        ? "no change shows"
        : "too few sessions to tell",
    }];
  });
  if (rows.length === 0) {
    return sentences([
      "No rate was found: that takes two sessions of one setting with work between them.",
    ]);
  }
  return table(rows, {
    columns: [
      "setting",
      "work",
      "sessions",
      "sag for one",
      "expected",
      "compared",
      "steady?",
    ],
    caption: `Change of sag of the whole surface for one ${
      amount.slice(0, -1)
    }, ± is 95 %; for pieces of this diameter.`,
  });
}
