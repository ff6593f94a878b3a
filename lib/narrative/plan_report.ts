/**
 * How sure the radius is, which ring for which question, and what to read.
 *
 * @module
 */
import { Random } from "../numerics/random.ts";
import type { PieceFolder } from "../records/folder.ts";
import { readFolderWorkLog } from "../records/read_folder_work_log.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { scatterModelOf } from "../repeatability/scatter_model_of.ts";
import { chooseRing } from "../uncertainty/choose_ring.ts";
import type { HalfWidthRule } from "../uncertainty/detection.ts";
import {
  type RadiusBudget,
  radiusBudget,
} from "../uncertainty/radius_budget.ts";
import {
  type RadiusDistribution,
  radiusMonteCarlo,
} from "../uncertainty/radius_monte_carlo.ts";
import { ringFit } from "../uncertainty/ring_fit.ts";
import type { RingChoice } from "../uncertainty/ring_question.ts";
import {
  type RingOnRecord,
  ringsOnRecord,
} from "../uncertainty/rings_on_record.ts";
import {
  type ThermalWarning,
  thermalWarnings,
} from "../uncertainty/thermal_check.ts";
import {
  conductingGlass,
  type HeatOfPiece,
  heatOfPiece,
} from "../uncertainty/thermal_piece.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { intervalsOf } from "../zones/zone_difference.ts";
import { suspicionSentences } from "./caution_sentences.ts";
import { type GaugeReport, gaugeReport } from "./gauge_report.ts";
import { holdPercent } from "./hold_percent.ts";
import { type LensReport, lensReport } from "./lens_report.ts";
import { lensSentences } from "./lens_words.ts";
import { type ComparedRadii, compareRadii } from "./plan_differences.ts";
import { planAnswer, planReasons } from "./plan_sentences.ts";
import { measurementOf } from "./radius_statement.ts";
import { ringSentences } from "./ring_sentences.ts";
import type { NamedFit } from "./ring_table.ts";
import { type SessionReport, sessionReport } from "./session_report.ts";
import type { WorkLogEntry } from "../records/work_log.ts";
import { heatSentences } from "./thermal_words.ts";
import { lastReadings } from "./part_of_readings.ts";
import { tellReading } from "./_tell_reading.ts";

/** What is known before the next session, as data and in words. */
export interface PlanReport {
  /** The folder. */
  readonly folder: PieceFolder;
  /** The last session. */
  readonly session: SessionReport;
  /** The gauge. */
  readonly gauge: GaugeReport;
  /** The budget of the radius of the last session, or of its curvature. */
  readonly budget?: RadiusBudget;
  /** The same by Monte Carlo. */
  readonly distribution?: RadiusDistribution;
  /** Radii compared between zones, dates and rings. */
  readonly differences: readonly ComparedRadii[];
  /** Which ring shows how much, for each question. */
  readonly choices: readonly RingChoice[];
  /** How each ring stands on flat and work, by ring. */
  readonly fits: readonly NamedFit[];
  /** What the bench's records say of each ring. */
  readonly records: readonly RingOnRecord[];
  /** What the log says about heat. */
  readonly thermal: readonly ThermalWarning[];
  /** What heat does to this piece; absent when its glass is not known. */
  readonly heat?: HeatOfPiece;
  /** What the radius means for a lens; absent for a piece that is none. */
  readonly lens?: LensReport;
  /** Radius in mm that rings and heat are judged for. */
  readonly radius?: Millimetres;
  /** Width in mm of the turned edge that was asked about. */
  readonly edgeWidth: Millimetres;
  /** Sets that the choice of ring is made for. */
  readonly sets: number;
  /** The answer. */
  readonly answer: readonly string[];
  /** Why. */
  readonly reasons: readonly string[];
  /** The rings: calibrations, twins, due dates. */
  readonly ringWords: readonly string[];
  /** Heat. */
  readonly heatWords: readonly string[];
  /** The lens; empty for a piece that is none. */
  readonly lensWords: readonly string[];
}

/** What the caller wants to know. */
export interface PlanReportOptions {
  /** Sets of the next session, for the choice of ring; 5 unless stated. */
  readonly sets?: number;
  /** Width of the turned edge to look for, in mm; 20 unless stated. */
  readonly edgeWidth?: Millimetres;
  /** Seed of everything drawn; 1 unless stated. */
  readonly seed?: number;
  /** Simulated studies behind a stated chance; 1000 unless stated. */
  readonly studies?: number;
  /** ISO date that due dates count from; today's, in UTC, unless stated. */
  readonly today?: string;
  /** ISO times at which warm work (grinding, washing) ended. */
  readonly workEndedAt?: readonly string[];
  /** Lines of the work log: sessions with work between them are kept apart. */
  readonly log?: readonly WorkLogEntry[];
}

/**
 * Draws up what is known before the next session: the budget of the radius,
 * the ring for each question, and the plan.
 *
 * @param folder A folder as read by `readPieceFolder`.
 * @param options Sets, edge width, seed.
 * @returns Data and sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function planReport(
  folder: PieceFolder,
  options: PlanReportOptions = {},
): PlanReport {
  const { piece, bench } = folder;
  const { sets = 5, edgeWidth = millimetres(20), seed = 1 } = options;
  const { today = new Date().toISOString().slice(0, 10) } = options;
  const session = sessionReport(folder);
  const gauge = gaugeReport(folder, options);
  const radius = session.radius?.radius ?? piece.target?.radius ??
    piece.startingRadius;
  const { session: main } = session;
  const measurement = main &&
    measurementOf(main, piece, bench, session.radius?.over ?? "centre");
  const distribution = measurement &&
    radiusMonteCarlo(measurement, { random: new Random(seed) });
  const budget = session.radius?.budget ??
    (measurement && radiusBudget(measurement));
  const model = gauge.main && scatterModelOf(gauge.main).model;
  const step = model?.step ?? Math.max(0, ...Object.values(bench.gauge.steps));
  const choices = radius === undefined ? [] : chooseRing(bench.rings, {
    work: {
      form: piece.form,
      radius,
      diameter: piece.diameter,
      margin: millimetres(piece.bevel + piece.margin),
    },
    // Without readings a gauge is taken to scatter by one display step.
    scatter: {
      repeat: model?.repeat ?? step,
      zeroing: model?.zeroing ?? step,
      diameter: model?.diameter ?? 0,
    },
    step: millimetres(step),
    sets,
    gauge: bench.gauge,
    edgeWidth,
    halfWidth: zonesRule(step),
    ...(bench.flat === undefined ? {} : { flat: bench.flat }),
  });
  const heat = radius === undefined
    ? undefined
    : heatOfPiece(piece, radius, bench.rings);
  const lens = lensReport(piece, budget?.estimate);
  const findings = {
    folder,
    session,
    gauge,
    choices,
    differences: main ? compareRadii(main, session.sessions, piece, bench) : [],
    fits: radius === undefined ? [] : bench.rings.map((ring) => ({
      ring: ring.id,
      fit: ringFit(ring, piece, radius, bench.flat),
    })),
    records: ringsOnRecord(bench, {
      today,
      ...(model && Math.hypot(model.repeat, model.zeroing) > 0
        ? {
          repeatability: {
            standardDeviation: Math.hypot(model.repeat, model.zeroing),
          },
        }
        : {}),
    }),
    thermal: radius === undefined
      ? []
      : heatInLog(folder, radius, options.workEndedAt),
    edgeWidth,
    sets,
    ...(heat === undefined ? {} : { heat }),
    ...(lens === undefined ? {} : { lens }),
    ...(radius === undefined ? {} : { radius }),
    ...(budget === undefined ? {} : { budget }),
    ...(distribution === undefined ? {} : { distribution }),
  };
  return {
    ...findings,
    answer: holdPercent([
      ...suspicionSentences(folder.problems),
      ...planAnswer(findings, piece.unit),
    ]),
    reasons: holdPercent(planReasons(findings, piece.unit)),
    ringWords: holdPercent(ringSentences(findings.records, radius, piece.unit)),
    heatWords: holdPercent(heatSentences(heat, piece.unit)),
    lensWords: holdPercent(lensSentences(lens, piece)),
  };
}

/** Half the interval that the session report puts round a difference of zones. */
function zonesRule(step: number): HalfWidthRule {
  return (variance, sets) => {
    const { interval95 } = intervalsOf(
      {
        mean: 0,
        standardError: Math.sqrt(variance / sets),
        dof: sets - 1,
        variance,
        replicates: sets,
      },
      step,
      1,
    );
    return interval95?.high ?? Infinity;
  };
}

/**
 * Reads a folder and draws up what is known before the next session. Of more
 * than 20,000 readings the last are studied, which the reasons say.
 *
 * @param path The folder, as the user names it.
 * @param options Sets, edge width, seed.
 * @returns Data and sentences.
 * @throws {RecordError} If the piece or the bench cannot be read.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function openPlan(
  path: string,
  options: PlanReportOptions = {},
): Promise<PlanReport> {
  const { folder, notes } = lastReadings(
    await readPieceFolder(path, tellReading()),
  );
  // A date without a time does not say when the work ended.
  const log = await readFolderWorkLog(path, folder.piece.unit);
  const workEndedAt = log.entries.flatMap(({ date }) =>
    date?.includes("T") ? [date] : []
  );
  const report = planReport(folder, {
    workEndedAt,
    log: log.entries,
    ...options,
  });
  return { ...report, reasons: [...notes, ...report.reasons] };
}

/** Heat in the log, for a glass whose properties are known. */
function heatInLog(
  { piece, readings }: PieceFolder,
  radius: Millimetres,
  workEndedAt: readonly string[] = [],
): readonly ThermalWarning[] {
  const glass = conductingGlass(piece.glass);
  const { form, thickness } = piece;
  if (glass === undefined || thickness === undefined) return [];
  const warnings = (support: "cold bench" | "insulating pad") =>
    thermalWarnings(readings, {
      piece: { radius, form, thickness, expansion: glass.expansion },
      glass,
      support,
      workEndedAt,
      allowed: millimetres(radius * ALLOWED),
    }).warnings;
  // What it lay on is not in the log: a cold bench is spoken of as an if.
  return [
    ...warnings("cold bench").filter(({ kind }) =>
      kind === "bench and air apart"
    ),
    ...warnings("insulating pad"),
  ];
}

/** Change of R that heat may make without a word: common practice, no source. */
const ALLOWED = 1e-4;
