/**
 * What readings say, in a practitioner's words: sentences, tables, reports.
 *
 * @example A folder answered
 * ```ts
 * import { openPiece, reportResults } from "sagbook/narrative/mod.ts";
 * import { equal, ok } from "node:assert/strict";
 *
 * const report = await openPiece("data/metric-250");
 * equal(report.answer.length, 3);
 * ok(report.answer[0].startsWith("The radius of curvature"));
 * equal(reportResults(report).version, "0.1.0");
 * ```
 *
 * @example A whole history, and what its radius will become
 * ```ts
 * import { openFocal, openHistory } from "sagbook/narrative/mod.ts";
 * import { equal, ok } from "node:assert/strict";
 *
 * const history = await openHistory("data/history-300", { upTo: "E13" });
 * equal(history.forecast?.kind, "forecast");
 * const focal = await openFocal("data/history-300", "data/shop-twelve");
 * ok(Math.abs(focal.prediction!.value - 1499.4) < 0.1);
 * ```
 *
 * @module
 */
export {
  type BenchAnswer,
  benchAnswer,
  type BenchAnswerOptions,
  type BenchTarget,
} from "./bench_answer.ts";
export {
  benchAnswerLines,
  type BenchAnswerLinesOptions,
  benchTargetLine,
} from "./bench_answer_lines.ts";
export {
  benchCard,
  type BenchCardTable,
  benchCardTable,
} from "./bench_card.ts";
export { benchEcho } from "./bench_echo.ts";
export { ringNamed } from "./bench_ring_named.ts";
export {
  type BenchScatter,
  type GaugeScatter,
  gaugeScatter,
} from "./bench_scatter.ts";
export { benchSetLines, type BenchSets, benchSets } from "./bench_set_lines.ts";
export {
  type BenchShown,
  benchShown,
  benchShownLines,
} from "./bench_shown_lines.ts";
export {
  benchTable,
  type BenchTableOrder,
  MOST_ROWS,
  tableLines,
} from "./bench_table.ts";
export {
  type BenchMoment,
  type BenchWarning,
  benchWarnings,
} from "./bench_warnings.ts";
export {
  driftSentences,
  limitSentences,
  safetySentences,
  suspicionSentences,
  unseenSentences,
  zeroSentences,
} from "./caution_sentences.ts";
export { GLOSSARY, type GlossaryEntry, usesWord, wordsIn } from "./glossary.ts";
export {
  type EdgeReading,
  type EdgeShares,
  type HandoutFigures,
  handoutFigures,
  type HandoutRing,
} from "./handout_figures.ts";
export { handoutSheet, handoutSubject } from "./handout_sheet.ts";
export { HANDOUT_STYLE } from "./handout_style.ts";
export { heatCautions } from "./heat_cautions.ts";
export { holdPercent } from "./hold_percent.ts";
export {
  isPiece,
  measuredHow,
  type ShopPiece,
  shopPiece,
} from "./shop_piece.ts";
export { nextStepSentence, type ReadSession } from "./next_step_sentence.ts";
export { openPiece } from "./open_piece.ts";
export {
  budgetReasons,
  radiusReasons,
  radiusSentence,
} from "./radius_sentences.ts";
export {
  drawPlan,
  drawProfile,
  drawReadings,
  drawZones,
} from "./report_figures.ts";
export { type Json, reportResults } from "./report_results.ts";
export {
  differencesTable,
  problemsTable,
  sessionsTable,
  zonesTable,
} from "./report_tables.ts";
export { smallUnit, writeDifference, writeSmall } from "./sag_words.ts";
export { ringDisagreement } from "./ring_disagreement.ts";
export { mainOfTwo } from "./main_session.ts";
export { type SessionReport, sessionReport } from "./session_report.ts";
export { answerBlock, RESULTS_TYPE, sentences, showAnswer } from "./show.ts";
export { type AnsweredReport, show } from "./show_result.ts";
export * from "./target_words.ts";
export {
  type DoubtfulRadius,
  whatHelps,
  type WhatHelpsOptions,
} from "./what_helps.ts";
export { type ColumnLength, writeColumn } from "./write_column.ts";
export * from "./zone_words.ts";
export { rangeOf } from "./radius_range.ts";
export { sphericitySentence, writeTolerance } from "./sphericity_sentence.ts";
export * from "./gauge_figures.ts";
export { type FirstKnown, type GaugePlan, planFor } from "./gauge_plan.ts";
export { planSentence } from "./gauge_plan_sentence.ts";
export * from "./shared_doubt.ts";
export {
  type GaugeOptions,
  type GaugeReport,
  gaugeReport,
  openGaugeStudy,
} from "./gauge_report.ts";
export {
  gaugeAnswer,
  type GaugeFindings,
  gaugeReasons,
} from "./gauge_sentences.ts";
export { gaugeLimits } from "./gauge_limits.ts";
export * from "./gauge_oddities.ts";
export { nameSources } from "./scatter_words.ts";
export {
  componentsTable,
  planSheet,
  sheetCsv,
  sheetTable,
} from "./gauge_tables.ts";
export { gaugeResults, showGaugeAnswer } from "./show_gauge.ts";
export { plainJson } from "./plain_json.ts";
export { budgetTable } from "./budget_table.ts";
export {
  drawBudget,
  drawDensity,
  drawRingChoice,
  ringsTable,
  showPlanAnswer,
} from "./plan_figures.ts";
export {
  openPlan,
  type PlanReport,
  planReport,
  type PlanReportOptions,
} from "./plan_report.ts";
export {
  planAnswer,
  type PlanFindings,
  planReasons,
} from "./plan_sentences.ts";
export {
  averagesOut,
  someFigures,
  twoFigures,
  whyNone,
  writeDetectable,
} from "./plan_words.ts";
export {
  type ComparedRadii,
  compareRadii,
  differenceSentence,
} from "./plan_differences.ts";
export {
  showHeat,
  showLens,
  showLensSurfaces,
  showRings,
  showRingWords,
} from "./plan_sections.ts";
export {
  curvatureSentence,
  drawnSentence,
  writeChance,
} from "./plan_distribution.ts";
export { type LensReport, lensReport } from "./lens_report.ts";
export { lensSentences, lensTable } from "./lens_words.ts";
export { ringSentences } from "./ring_sentences.ts";
export {
  type KnownSurfaceCalibration,
  surfaceSentences,
} from "./ring_surface_sentences.ts";
export { type NamedFit, ringRecordsTable } from "./ring_table.ts";
export { heatSentences, heatTable, thermalSentence } from "./thermal_words.ts";
export {
  coverageFactorOf,
  measurementOf,
  type RadiusStatement,
  stateRadius,
  stateZoneRadius,
} from "./radius_statement.ts";
export * from "./write_radius.ts";
export {
  drawGrades,
  drawProgress,
  drawRates,
  drawZonesOverTime,
} from "./history_figures.ts";
export { byHandWords } from "./exercise_by_hand.ts";
export {
  exerciseKey,
  exerciseQuestion,
  type KeyEntry,
  type KeyPart,
  reportVerdict,
} from "./exercise_key.ts";
export {
  gaugeWords,
  hiddenName,
  hiddenWords,
  seenWords,
  verdictName,
  verdictShort,
} from "./exercise_words.ts";
export * from "./history_pits.ts";
export {
  type HistoryPoint,
  historyPoints,
  isSphere,
  progressRun,
} from "./history_points.ts";
export { pieceRecord } from "./history_record.ts";
export {
  type HistoryOptions,
  type HistoryReport,
  historyReport,
  openHistory,
} from "./history_report.ts";
export { forecastSentences } from "./history_forecast.ts";
export { historyAnswer, type HistoryFindings } from "./history_answer.ts";
export {
  historyCautions,
  historyNotes,
  workSafety,
} from "./history_sentences.ts";
export { type HistoryStage, historyStages } from "./history_stages.ts";
export { historyTable, ratesTable } from "./history_tables.ts";
export {
  settingName,
  writeMostWork,
  writeRate,
  writeWork,
} from "./history_words.ts";
export { historyResults, showHistoryAnswer } from "./show_history.ts";
export { chooseNext } from "./choose_next.ts";
export * from "./focal_report.ts";
export { focalNotes } from "./focal_notes.ts";
export { focalAnswer, type FocalFindings } from "./focal_sentences.ts";
export * from "./focal_show.ts";
export { writeWholeChance } from "./write_whole_chance.ts";
export { RESULTS_VERSION } from "./results_version.ts";
export { tableCsv, type TableCsvOptions } from "./table_csv.ts";
export { readingWords } from "./reading_words.ts";
export * from "./part_of_readings.ts";
