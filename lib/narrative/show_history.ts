/**
 * A history as a cell shows it and as JSON.
 *
 * @module
 */
import type { Displayable } from "../display/bundle.ts";
import { RESULTS_VERSION } from "./results_version.ts";
import { VERSION } from "../version.ts";
import type { HistoryReport } from "./history_report.ts";
import { plainJson } from "./plain_json.ts";
import { answerBlock } from "./show.ts";

/**
 * Shows the answer of a history.
 *
 * @param report The report.
 * @returns A value a cell may return: text, HTML, and the results as JSON for
 * the program that runs the notebook.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showHistoryAnswer(report: HistoryReport): Displayable {
  return answerBlock(
    report.answer,
    report.folder.piece.invented,
    historyResults(report),
  );
}

/**
 * Gathers what a history found, lengths in mm.
 *
 * @param report The report.
 * @returns Plain JSON without null, NaN or infinite numbers.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function historyResults(
  report: HistoryReport,
): Readonly<Record<string, unknown>> {
  const { folder: { piece, lines }, timeline, radius, log } = report;
  return plainJson({
    program: "sagbook",
    version: VERSION,
    results_version: RESULTS_VERSION,
    units: { length: "mm", volume: "mm³", work: timeline.unit ?? "none" },
    invented: piece.invented,
    piece: {
      name: piece.name,
      form: piece.form,
      diameter: piece.diameter,
      target: piece.target,
    },
    answer: report.answer,
    lines,
    work_log_lines: log.lines,
    sessions: timeline.sessions.map(({ session, work }) => {
      const point = report.points.find((one) =>
        one.session.session === session
      );
      return {
        session,
        work,
        taken_at: point?.session.takenAt,
        verdict: point?.session.sphericity.verdict,
        radius: point?.centre?.radius,
        expanded: point?.centre?.expanded,
        sag: point?.sag,
      };
    }),
    radius: radius && {
      radius: radius.radius,
      expanded: radius.expanded,
      interval: radius.interval,
    },
    settings: report.stages.map(({ grade, position, work, fit, change }) => ({
      grade,
      position,
      work,
      rate: fit?.rate,
      sessions: fit?.sessions,
      dof: fit?.dof,
      scatter: fit?.scatter,
      change,
    })),
    depth: report.depth,
    forecast: report.forecast,
    plan: report.plan,
    pits: report.pits?.state,
    next: report.next,
    learned: report.learned,
    finished: report.finished && {
      focal_length: report.finished.focalLength,
      uncertainty: report.finished.focalLengthUncertainty,
    },
    notes: report.notes,
    cautions: report.cautions,
    unseen: report.unseen,
  });
}
