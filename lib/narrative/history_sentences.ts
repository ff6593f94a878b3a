/**
 * What is odd about a history, and what its numbers rest on.
 *
 * @module
 */
import { progressLimits } from "../fabrication/predict_progress.ts";
import type { WorkLogEntry } from "../records/work_log.ts";
import type { TimelineNote } from "../fabrication/work_timeline.ts";
import type { HistoryFindings } from "./history_answer.ts";
import { isSphere } from "./history_points.ts";
import { settingName, writeRate } from "./history_words.ts";

/**
 * Says what is odd about log and readings.
 *
 * @param found What was found.
 * @returns One sentence for each oddity.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function historyNotes(found: HistoryFindings): readonly string[] {
  const { timeline, log, folder: { piece } } = found;
  const began = timeline.before.length > 0 && timeline.sessions.length > 0
    ? [
      "Work before the first readings is shown and counts for no rate, since nothing was read before it.",
    ]
    : [];
  const none = log.entries.length === 0
    ? [
      "There is no work log (worklog.csv), so nothing can be said about rates; one line for each stretch of work will do.",
    ]
    : [];
  const without = piece.target === undefined
    ? ["No target is given in piece.json, so nothing is forecast."]
    : [];
  const unread = log.lines.reported > 0
    ? [
      `${log.lines.reported} of ${log.lines.read} lines of the work log were refused: ${
        log.problems.filter(({ severity }) => severity === "refused").slice(
          0,
          2,
        )
          .map(({ line, message }) =>
            line === undefined ? message : `line ${line}, ${message}`
          ).join("; ")
      }.`,
    ]
    : [];
  return [
    ...none,
    ...without,
    ...unread,
    ...began,
    ...wrongWay(found),
    ...notSpheres(found),
    ...zeroedOnce(found),
    ...timeline.notes.map(noteSentence),
  ];
}

/** Sessions zeroed once, whose scatter the others lent. */
function zeroedOnce({ points }: HistoryFindings): readonly string[] {
  const names = points.filter(({ borrowed }) => borrowed)
    .map(({ session }) => session.session);
  return names.length === 0 ? [] : [
    `${names.length === 1 ? "Session" : "Sessions"} ${names.join(", ")} ${
      names.length === 1 ? "was" : "were"
    } zeroed once; how the zero scatters was taken from the other sessions.`,
  ];
}

function notSpheres({ points, timeline }: HistoryFindings): readonly string[] {
  const names = points.filter((point) => !isSphere(point))
    .map(({ session }) => session.session);
  if (names.length === 0 || timeline.stages.length === 0) return [];
  const [sessions, count] = names.length === 1
    ? ["session", "it counts"]
    : ["sessions", "they count"];
  return [
    `In ${sessions} ${
      names.join(", ")
    } the surface was not a sphere within the tolerance; ${count} for no rate.`,
  ];
}

function noteSentence(note: TimelineNote): string {
  switch (note.kind) {
    case "dates out of order":
      return `Work log, ${
        lines(note.lines)
      }: dated before the line above; the work was taken in order of date where every line has one, else as it stands. Check the dates.`;
    case "session before its work":
      return `Session ${note.session} is dated before the work that line ${note.line} of the log puts before it; the log was followed. Check the dates.`;
    case "session without work":
      return note.placed === "nowhere"
        ? `Session ${note.session} is named by no line of the work log and could not be placed; it counts for no rate. Name it in the line of the work before it.`
        : note.placed === "at the start"
        ? `Session ${note.session} is named by no line of the work log and stands before all work by its date.`
        : `Session ${note.session} is named by no line of the work log; it was placed by its date.`;
    case "work without a session":
      return `Line ${note.line} of the work log names session ${note.session}, which has no readings; its work counts toward the next session.`;
    case "no amount":
      return `Line ${note.line} of the work log gives no wets or minutes in the unit of the others; the run ends there.`;
    case "mixed settings":
      return `Between sessions ${note.before} and ${note.after} grade or position changed; that stretch counts for no rate. Read before each change.`;
  }
}

function lines(list: readonly number[]): string {
  return `${list.length === 1 ? "line" : "lines"} ${list.join(", ")}`;
}

/** Settings that surely moved the radius away from its target. */
function wrongWay(
  { stages, current, folder: { piece }, timeline, points }: HistoryFindings,
): readonly string[] {
  const target = piece.target?.radius;
  const start = points[0]?.centre?.radius;
  if (
    target === undefined || start === undefined || timeline.unit === undefined
  ) {
    return [];
  }
  const ahead = start > target ? 1 : -1;
  return stages.flatMap((stage) => {
    const { fit } = stage;
    if (fit === undefined || stage === current) return [];
    const { low, high } = progressLimits(fit.rate);
    if (ahead > 0 ? high >= 0 : low <= 0) return [];
    return [
      `${settingName(stage)} went the wrong way: ${
        writeRate(fit.rate, piece.unit)
      } of sag for one ${timeline.unit!.slice(0, -1)}, up to session ${
        stage.runs.at(-1)?.at(-1)?.session
      }.`,
    ];
  });
}

/**
 * Says what the rates and the forecast rest on.
 *
 * @param found What was found.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function historyCautions(found: HistoryFindings): readonly string[] {
  const { forecast, stages, points } = found;
  const rings = new Set(points.map(({ session }) => session.ring.id));
  return [
    "Radius and rates are those of the innermost zone; a line is fitted to the sag of the whole surface against the work, for each grade and position alone.",
    ...(forecast?.kind === "forecast"
      ? [
        "The forecast holds for work like that behind it: same grade, position, stroke and pressure. It reckons with the readings' scatter, with work that is uneven and adds up, and with what ring and gauge share, which no number of sessions averages out.",
      ]
      : []),
    ...(stages.some(({ fit }) => fit !== undefined && fit.dof < 2)
      ? [
        "A rate from fewer than four sessions says little about how the work scatters.",
      ]
      : []),
    ...(rings.size > 1
      ? [
        `Sessions were read with ${rings.size} rings; each brings its own error, which does not cancel between them.`,
      ]
      : []),
    "The gauge cannot see glass that goes off everywhere alike, and no sag says that pits are gone.",
  ];
}

/**
 * The usual cautions of grinding and polishing, for the work in a log.
 *
 * Common practice, no source; local rules and licensed practice come first.
 *
 * @param entries Lines of work.
 * @returns Sentences.
 *
 * @example
 * ```ts
 * import { workSafety } from "sagbook/narrative/history_sentences.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(workSafety([]).length, 1);
 * equal(workSafety([{ line: 2, grade: "polishing" }]).length, 3);
 * ```
 */
export function workSafety(
  entries: readonly WorkLogEntry[],
): readonly string[] {
  const grades = new Set(entries.map(({ grade }) => grade));
  const polished = entries.some(({ grade = "", note = "" }) =>
    /polish|pitch|rouge|cerium/i.test(`${grade} ${note}`)
  );
  return [
    ...(grades.size > 1
      ? [
        "Wash everything down between grades, yourself included: one coarse grain scratches all that follows.",
      ]
      : []),
    ...(polished
      ? [
        "Hot pitch burns and its fumes catch fire: melt it gently, away from flames, with eyes and hands covered.",
        "Set no steel feet on a polished face unless its owner agrees.",
      ]
      : []),
    "Keep the bevel and wear eye protection when edges are ground; where local rules or licensed practice say more, they come first.",
  ];
}
