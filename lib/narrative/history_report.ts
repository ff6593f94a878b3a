/**
 * The history of a piece, answered.
 *
 * @module
 */
import { type DepthToGo, depthToGo } from "../fabrication/depth_to_go.ts";
import {
  type Forecast,
  forecastTarget,
} from "../fabrication/forecast_target.ts";
import type { NextStep, StrokeTable } from "../fabrication/next_step.ts";
import { type GradesPlan, planGrades } from "../fabrication/plan_grades.ts";
import { progressLimits } from "../fabrication/predict_progress.ts";
import { type LearnedRate, learnRates } from "../fabrication/shop_rates.ts";
import {
  type WorkTimeline,
  workTimeline,
} from "../fabrication/work_timeline.ts";
import { surfaceSag } from "../geometry/surface_sag.ts";
import type { FinishedPieces } from "../records/finished_pieces.ts";
import type { PieceFolder } from "../records/folder.ts";
import { readFolderFinished } from "../records/read_folder_finished.ts";
import { readFolderWorkLog } from "../records/read_folder_work_log.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import type { WorkLog } from "../records/work_log.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { millimetres } from "../units/length.ts";
import { safetySentences, unseenSentences } from "./caution_sentences.ts";
import { chooseNext } from "./choose_next.ts";
import { historyAnswer } from "./history_answer.ts";
import { type HistoryPits, historyPits } from "./history_pits.ts";
import { type HistoryPoint, historyPoints } from "./history_points.ts";
import { lastPoint, lookBack } from "./_look_back.ts";
import {
  historyCautions,
  historyNotes,
  workSafety,
} from "./history_sentences.ts";
import { type HistoryStage, historyStages } from "./history_stages.ts";
import { type RadiusStatement, stateRadius } from "./radius_statement.ts";
import { habitsOf, strokesOf } from "./_work_habits.ts";
import { isPiece, type ShopPiece, shopPiece } from "./shop_piece.ts";
import { fewSessions } from "./part_of_readings.ts";
import { tellReading } from "./_tell_reading.ts";

/** What a piece's history says, as data and in words. */
export interface HistoryReport {
  /** The folder. */
  readonly folder: PieceFolder;
  /** The log of the work. */
  readonly log: WorkLog;
  /** Sessions in the order of the readings. */
  readonly points: readonly HistoryPoint[];
  /** Work and sessions in one order. */
  readonly timeline: WorkTimeline;
  /** Every setting with its rate, in the order last worked. */
  readonly stages: readonly HistoryStage[];
  /** The setting in use at the last session. */
  readonly current?: HistoryStage;
  /** The radius after the last session, where one belongs to it. */
  readonly radius?: RadiusStatement;
  /** Glass left between radius and target. */
  readonly depth?: DepthToGo;
  /** Work to the target, or why nothing is forecast. */
  readonly forecast?:
    | Forecast
    | { readonly kind: "not a sphere" }
    | { readonly kind: "no work" };
  /** What the grades to come should do. */
  readonly plan?: GradesPlan;
  /** Grades to come whose rate the earlier pieces do not show. */
  readonly unknownAhead: readonly string[];
  /** Pits and removal in the grade now in use. */
  readonly pits?: HistoryPits;
  /** What to do next. */
  readonly next?: NextStep;
  /** What the piece became, where a list of finished pieces knows it. */
  readonly finished?: ShopPiece;
  /** Rates of this piece, for the next one. */
  readonly learned: readonly LearnedRate[];
  /** Accepted risk of passing the target. */
  readonly risk: number;
  /** The answer. */
  readonly answer: readonly string[];
  /** What is odd about log and readings. */
  readonly notes: readonly string[];
  /** What the numbers rest on and leave out. */
  readonly cautions: readonly string[];
  /** What the last session could not have seen. */
  readonly unseen: readonly string[];
  /** The usual cautions of the work. */
  readonly safety: readonly string[];
}

/** What the caller knows besides the folder. */
export interface HistoryOptions {
  /** Rates of earlier pieces, from their `learned`. */
  readonly expectations?: readonly LearnedRate[];
  /** Look back to this session: what came later is left out. */
  readonly upTo?: string;
  /** Accepted risk of passing the target; 0.05 unless stated. */
  readonly risk?: number;
  /** Grain size factor of the user's own for the depth of pits; the bench's
   * unless told. */
  readonly pitFactor?: number;
  /**
   * The shop's own rate of glass taken off everywhere, in mm for one wet or
   * minute, used where the log has no thicknesses; the bench's unless told.
   */
  readonly removalRate?: Estimate;
  /** A list of finished pieces, which may name this one. */
  readonly finished?: FinishedPieces;
  /** Table of strokes; the bench's, or those in common use, unless told. */
  readonly strokes?: StrokeTable;
}

/**
 * Works out what a piece's history says.
 *
 * @param folder The folder.
 * @param log Its work log.
 * @param options Expectations, the evening to look back to, accepted risk.
 * @returns Data and sentences; without readings the answer says so.
 * @throws {RangeError} If `upTo` names no session.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function historyReport(
  folder: PieceFolder,
  log: WorkLog,
  options: HistoryOptions = {},
): HistoryReport {
  const { piece, bench } = folder;
  const { expectations = [], upTo, risk = 0.05 } = options;
  const { strokes = strokesOf(bench) } = options;
  const all = historyPoints(folder);
  const whole = workTimeline(log.entries, all.map(({ session }) => session));
  const { points, timeline } = upTo === undefined
    ? { points: all, timeline: whole }
    : lookBack(all, whole, upTo);
  const byName = new Map(points.map((one) => [one.session.session, one]));
  const known = expectations.filter(({ halfDiameter }) =>
    halfDiameter === piece.diameter / 2
  );
  const stages = historyStages(timeline, byName, known);
  const last = lastPoint(points, timeline);
  const used = timeline.intervals.findLast(({ entries }) => entries.length > 0)
    ?.setting;
  const current = used &&
    stages.find(({ grade, position }) =>
      grade === used.grade && position === used.position
    );
  const radius = last && stateRadius(last.session, piece, bench);
  const target = piece.target?.radius;
  const half = millimetres(piece.diameter / 2);
  const from = points[0]?.sag?.value;
  const depth = target === undefined || radius === undefined
    ? undefined
    : depthToGo(piece.form, radius.radius, target, half);
  const wanted = target === undefined
    ? undefined
    : sure(surfaceSag(target, half));
  const forecast = wanted === undefined || last === undefined
    ? undefined
    : forecastOf(last, current, wanted, risk, from);
  const { ahead, unknown } = stagesAhead(known, current);
  const now = current?.fit?.level ?? last?.sag;
  const plan = wanted === undefined || now === undefined || ahead.length === 0
    ? undefined
    : planGrades(now, wanted, ahead);
  const found = {
    folder,
    log,
    points,
    timeline,
    stages,
    ...(current === undefined ? {} : { current }),
    ...(radius === undefined ? {} : { radius }),
    ...(depth === undefined ? {} : { depth }),
    ...(forecast === undefined ? {} : { forecast }),
    ...(plan === undefined ? {} : { plan }),
    ...finishedIn(options.finished, piece.name),
    unknownAhead: unknown,
    pits: historyPits(timeline, piece.unit, {
      ...habitsOf(bench, timeline.unit),
      ...options,
    }),
    ...(last === undefined
      ? {}
      : { next: chooseNext(last.session, piece, radius, strokes) }),
    learned: learnRates(
      timeline.unit === undefined
        ? []
        : stages.flatMap((stage) =>
          stage.fit === undefined ? [] : [{
            ...stage,
            fit: stage.fit,
            unit: timeline.unit!,
            halfDiameter: piece.diameter / 2,
          }]
        ),
    ),
    risk,
  };
  return {
    ...found,
    answer: historyAnswer(found, last),
    notes: historyNotes(found),
    cautions: historyCautions(found),
    unseen: last === undefined
      ? []
      : unseenSentences(last.session.unseen, piece.unit),
    safety: [...safetySentences(piece), ...workSafety(timeline.entries)],
  };
}

/**
 * Reads a folder with its work log and works out its history.
 *
 * @param path The folder, as the user names it.
 * @param options As {@link historyReport}; `earlier` are folders of pieces
 * whose rates are expected of this one. A `finished.csv` in the folder itself is
 * read unless another list is given.
 * @returns Data and sentences.
 * @throws {RecordError} If a piece or a bench cannot be read.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function openHistory(
  path: string,
  options: HistoryOptions & { readonly earlier?: readonly string[] } = {},
): Promise<HistoryReport> {
  const { earlier = [], ...rest } = options;
  const read = async (folder: string) => {
    const read = await readPieceFolder(folder, tellReading());
    const { folder: piece, notes } = fewSessions(read);
    const log = await readFolderWorkLog(folder, piece.piece.unit);
    return { piece, log, notes };
  };
  const before = [];
  for (const folder of earlier) {
    const { piece, log } = await read(folder);
    before.push(...historyReport(piece, log).learned);
  }
  const expectations = rest.expectations ?? before;
  const { piece, log, notes } = await read(path);
  const finished = rest.finished ??
    await readFolderFinished(path, piece.piece.unit);
  const report = historyReport(piece, log, { ...rest, expectations, finished });
  return { ...report, notes: [...notes, ...report.notes] };
}

/** What became of the piece, if a list names it. */
function finishedIn(
  list: FinishedPieces | undefined,
  name: string,
): Pick<HistoryReport, "finished"> {
  const line = list?.pieces.find((one) => isPiece(one, name));
  const finished = line && shopPiece(line);
  return finished === undefined ? {} : { finished };
}

const sure = (value: number): Estimate => ({
  value,
  own: 0,
  dof: Infinity,
  common: {},
});

function forecastOf(
  { session, sag }: HistoryPoint,
  current: HistoryStage | undefined,
  target: Estimate,
  risk: number,
  from: number | undefined,
): HistoryReport["forecast"] {
  const began = from ?? target.value;
  const ahead = Math.sign(target.value - began) || 1;
  const beyond = sag !== undefined && ahead * (sag.value - target.value) > 0;
  if (session.sphericity.verdict === "outside" && !beyond) {
    return { kind: "not a sphere" };
  }
  if (current?.fit === undefined) {
    return beyond
      ? {
        kind: "passed",
        by: { ...sag, value: ahead * (sag.value - target.value) },
        probability: 1,
      }
      : { kind: "no work" };
  }
  return forecastTarget(current.fit, target, { risk, from: began });
}

/** What later grades do, as far as the shop's earlier pieces show it. */
function stagesAhead(
  known: readonly LearnedRate[],
  current: HistoryStage | undefined,
): {
  ahead: { grade: string; work: number; rate: Estimate }[];
  unknown: string[];
} {
  const at = current === undefined
    ? -1
    : known.findIndex(({ grade, position }) =>
      grade === current.grade && position === current.position
    );
  const ahead: { grade: string; work: number; rate: Estimate }[] = [];
  const unknown: string[] = [];
  for (const { grade, work, rate } of at < 0 ? [] : known.slice(at + 1)) {
    if (grade === undefined) continue;
    const { low, high } = progressLimits(rate);
    if (low > 0 || high < 0) ahead.push({ grade, work, rate });
    else unknown.push(grade);
  }
  return { ahead, unknown };
}
