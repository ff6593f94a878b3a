/**
 * How sure the radius is, which ring for which question, and what to read.
 *
 * @module
 */
import { Random } from "../numerics/random.ts";
import type { PieceFolder } from "../records/folder.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import type { RadiusBudget } from "../uncertainty/radius_budget.ts";
import { chooseRing } from "../uncertainty/choose_ring.ts";
import { materialNamed } from "../uncertainty/material.ts";
import type { RadiusMeasurement } from "../uncertainty/radius_measurement.ts";
import {
  type RadiusDistribution,
  radiusMonteCarlo,
} from "../uncertainty/radius_monte_carlo.ts";
import { type RingFit, ringFit } from "../uncertainty/ring_fit.ts";
import type { RingChoice } from "../uncertainty/ring_question.ts";
import {
  type ThermalWarning,
  thermalWarnings,
} from "../uncertainty/thermal_check.ts";
import type { ConductingMaterial } from "../uncertainty/thermal_settling.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { scatterModelOf } from "../repeatability/scatter_model_of.ts";
import { type GaugeReport, gaugeReport } from "./gauge_report.ts";
import { planAnswer, planReasons } from "./plan_sentences.ts";
import { measurementOf } from "./radius_statement.ts";
import { type SessionReport, sessionReport } from "./session_report.ts";

/** What is known before the next session, as data and in words. */
export interface PlanReport {
  /** The folder. */
  readonly folder: PieceFolder;
  /** The last session. */
  readonly session: SessionReport;
  /** The gauge. */
  readonly gauge: GaugeReport;
  /** The budget of the radius of the last session. */
  readonly budget?: RadiusBudget;
  /** The same by Monte Carlo. */
  readonly distribution?: RadiusDistribution;
  /** Which ring shows how much, for each question. */
  readonly choices: readonly RingChoice[];
  /** How each ring stands on flat and work, by ring. */
  readonly fits: readonly { readonly ring: string; readonly fit: RingFit }[];
  /** What the log says about heat. */
  readonly thermal: readonly ThermalWarning[];
  /** Width in mm of the turned edge that was asked about. */
  readonly edgeWidth: Millimetres;
  /** Sets that the choice of ring is made for. */
  readonly sets: number;
  /** The answer. */
  readonly answer: readonly string[];
  /** Why. */
  readonly reasons: readonly string[];
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
  const session = sessionReport(folder);
  const gauge = gaugeReport(folder, options);
  const radius = session.radius?.radius ?? piece.target?.radius ??
    piece.startingRadius;
  const statement = session.radius;
  const measurement: RadiusMeasurement | undefined =
    session.session && statement
      ? measurementOf(session.session, piece, bench, statement.over)
      : undefined;
  const distribution = measurement &&
    radiusMonteCarlo(measurement, { random: new Random(seed) });
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
    ...(bench.flat === undefined ? {} : { flat: bench.flat }),
  });
  const base = {
    folder,
    session,
    gauge,
    choices,
    fits: radius === undefined ? [] : bench.rings.map((ring) => ({
      ring: ring.id,
      fit: ringFit(ring, piece, radius, bench.flat),
    })),
    thermal: radius === undefined ? [] : heatOf(folder, radius),
    edgeWidth,
    sets,
    ...(statement === undefined ? {} : { budget: statement.budget }),
    ...(distribution === undefined ? {} : { distribution }),
  };
  const held = (list: readonly string[]): readonly string[] =>
    list.map((sentence) => sentence.replace(/(\d) %/g, "$1\u00a0%"));
  return {
    ...base,
    answer: held(planAnswer(base, piece.unit)),
    reasons: held(planReasons(base, piece.unit)),
  };
}

/**
 * Reads a folder and draws up what is known before the next session.
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
  return planReport(await readPieceFolder(path), options);
}

/** Heat in the log, for a glass whose properties are known. */
function heatOf(
  { piece, readings }: PieceFolder,
  radius: Millimetres,
): readonly ThermalWarning[] {
  const glass = piece.glass === undefined
    ? undefined
    : materialNamed(piece.glass);
  if (
    glass === undefined || piece.thickness === undefined ||
    !("conductivity" in glass) || glass.conductivity === undefined
  ) {
    return [];
  }
  return thermalWarnings(readings, {
    piece: {
      radius,
      form: piece.form,
      thickness: piece.thickness,
      expansion: glass.expansion,
    },
    glass: glass as ConductingMaterial,
    allowed: millimetres(radius * 1e-4),
  }).warnings;
}
