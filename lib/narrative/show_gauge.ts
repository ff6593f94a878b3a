/**
 * A study of the gauge, as a cell shows it and as JSON.
 *
 * @module
 */
import type { Displayable } from "../display/bundle.ts";
import { RESULTS_VERSION } from "./results_version.ts";
import { VERSION } from "../version.ts";
import type { GaugeReport } from "./gauge_report.ts";
import { plainJson } from "./plain_json.ts";
import { sheetCsv } from "./gauge_tables.ts";
import { answerBlock } from "./show.ts";

/**
 * Shows the answer of a study of the gauge.
 *
 * @param report The report.
 * @param results The results as JSON, for the program that runs the notebook.
 * @returns A value a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showGaugeAnswer(
  report: GaugeReport,
  results: Readonly<Record<string, unknown>>,
): Displayable {
  return answerBlock(report.answer, report.folder.piece.invented, results);
}

/**
 * Gathers what a study of the gauge found, lengths in mm.
 *
 * @param report The report.
 * @returns Plain JSON without null, NaN or infinite numbers.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function gaugeResults(
  report: GaugeReport,
): Readonly<Record<string, unknown>> {
  const { folder: { piece, lines }, answer, surfaces, capability, plans } =
    report;
  return plainJson({
    program: "sagbook",
    version: VERSION,
    results_version: RESULTS_VERSION,
    units: { length: "mm", variance: "mm²", time: "min", angle: "degree" },
    invented: piece.invented,
    piece: { name: piece.name, form: piece.form, diameter: piece.diameter },
    answer,
    lines,
    surfaces: surfaces.map(({ design, ...found }) => ({
      ...found,
      estimable: design.estimable,
      confounded: design.confounded,
    })),
    capability,
    plans: plans.map(({ about, answer }) => ({ about, ...answer })),
    sheet_csv: sheetCsv(report),
    reasons: report.reasons,
    limits: report.limits,
  });
}
