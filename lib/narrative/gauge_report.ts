/**
 * How good the gauge is: a folder's scatter, answered.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { sagForRadiusChange } from "../geometry/sensitivities.ts";
import type { PieceFolder } from "../records/folder.ts";
import { readFolderWorkLog } from "../records/read_folder_work_log.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { lastReadings } from "./part_of_readings.ts";
import { tellReading } from "./_tell_reading.ts";
import {
  correctByOperator,
  type CorrectedReadings,
} from "../repeatability/correct_by_operator.ts";
import { estimateComponents } from "../repeatability/estimate_components.ts";
import {
  type GaugeCapability,
  judgeCapability,
} from "../repeatability/judge_capability.ts";
import type { SurfaceComponents } from "../repeatability/surface_components.ts";
import { chartZero, type ZeroHistory } from "../repeatability/zero_chart.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { WorkLogEntry } from "../records/work_log.ts";
import type { Reading } from "../records/reading.ts";
import type { Millimetres } from "../units/length.ts";
import { correctDrift } from "../zones/drift.ts";
import { type GaugePlan, planFor } from "./gauge_plan.ts";
import { suspicionSentences } from "./caution_sentences.ts";
import { gaugeLimits } from "./gauge_limits.ts";
import {
  creepSentences,
  type GaugeOutliers,
  gaugeOutliers,
  outlierSentences,
  trendSentences,
} from "./gauge_oddities.ts";
import { gaugeAnswer, gaugeReasons } from "./gauge_sentences.ts";
import { holdPercent } from "./hold_percent.ts";
import { onOneSurface, unloggedWork } from "./one_surface.ts";

/** What a study of the gauge says, as data and in words. */
export interface GaugeReport {
  /** The folder, its readings those that were studied: of one surface. */
  readonly folder: PieceFolder;
  /** The components, one entry for each ring and grade of surface. */
  readonly surfaces: readonly SurfaceComponents[];
  /** The one the answer is about: that with most readings. */
  readonly main?: SurfaceComponents;
  /** Sags with drift taken out operator by operator, in order of readings. */
  readonly corrected: CorrectedReadings;
  /** What the gauge can decide. */
  readonly capability?: GaugeCapability;
  /** Readings that stand apart, and the answer without them. */
  readonly outliers?: GaugeOutliers;
  /** History of the zero. */
  readonly zero: ZeroHistory;
  /** What would decide the piece's own questions. */
  readonly plans: readonly GaugePlan[];
  /** The change of sag by one stretch of work, in mm, where it was given. */
  readonly change?: Millimetres;
  /** The answer: three sentences or four. */
  readonly answer: readonly string[];
  /** Why. */
  readonly reasons: readonly string[];
  /** What could not be told apart, and what would tell it. */
  readonly limits: readonly string[];
}

/** What the caller knows besides the folder. */
export interface GaugeOptions {
  /** Change of the sag by one stretch of work, in mm. */
  readonly change?: Millimetres;
  /** Seed of the plans' simulation; 1 unless stated. */
  readonly seed?: number;
  /** Simulated studies behind a stated chance; 1000 unless stated. */
  readonly studies?: number;
  /** Lines of the work log: sessions with work between them are kept apart. */
  readonly log?: readonly WorkLogEntry[];
}

/**
 * Works out how good the gauge is from a folder's readings.
 *
 * Drift is taken out operator by operator where looks at the flat show it, the
 * components of scatter are fitted as far as the design tells them apart, and
 * stand against the piece's tolerance and one stretch of work.
 *
 * @param given A folder as read by `readPieceFolder`.
 * @param options Change of one stretch of work, log of the work, seed.
 * @returns Data and sentences; without readings the answer says so.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function gaugeReport(
  given: PieceFolder,
  options: GaugeOptions = {},
): GaugeReport {
  const { change, log } = options;
  const { folder, notes, known } = onOneSurface(given, log);
  const { piece, bench, readings } = folder;
  const corrected = correctByOperator(readings, correctDrift);
  const zero = chartZero(given.readings);
  const surfaces = readings.some(({ on }) => on === "work")
    ? estimateComponents(readings, {
      sag: corrected.sag,
      drifts: corrected.drifts,
      piece,
      bench,
    })
    : [];
  const base = { folder, surfaces, corrected, zero };
  const doubts = suspicionSentences(folder.problems);
  const main = mainSurface(surfaces, folder);
  if (!main) {
    return {
      ...base,
      plans: [],
      answer: [
        ...doubts,
        "There is nothing to answer yet: no reading of the work was found.",
      ],
      reasons: [],
      limits: [],
    };
  }
  const tolerance = sagToleranceOf(folder, main);
  const capability = judgeCapability(main, {
    ...(tolerance === undefined ? {} : { sagTolerance: tolerance }),
    ...(change === undefined ? {} : { change }),
  });
  const plans = planFor(folder, main, options);
  const outliers = gaugeOutliers(folder, corrected.sag, main);
  const told = {
    ...base,
    main,
    outliers,
    capability,
    plans,
    ...(change === undefined ? {} : { change }),
  };
  const { unit } = piece;
  return {
    ...told,
    answer: holdPercent([
      ...doubts,
      ...gaugeAnswer(told, unit),
      ...(known ? [] : unloggedWork(main)),
      ...outlierSentences(outliers, main, readings, unit),
    ]),
    reasons: holdPercent([...notes, ...gaugeReasons(told, unit)]),
    limits: holdPercent([
      ...zeroingTrend(main, readings, unit),
      ...creepSentences(
        readings.flatMap((reading, k) =>
          reading.on === "work" && reading.ring === main.ring &&
            reading.grade === main.grade
            ? [{ reading, sag: corrected.sag[k] }]
            : []
        ),
        main.display.step ?? 0,
        unit,
      ),
      ...gaugeLimits(main, unit),
    ]),
  };
}

/**
 * The surface with most readings; of equals that of the grade last read, under
 * the largest ring, which is surest of the radius.
 */
function mainSurface(
  surfaces: readonly SurfaceComponents[],
  { readings, bench, piece: { form } }: PieceFolder,
): SurfaceComponents | undefined {
  const last = (wanted: string | undefined) =>
    readings.findLastIndex(({ on, grade }) =>
      on === "work" && grade === wanted
    );
  const size = (wanted: string) => {
    const ring = bench.rings.find(({ id }) => id === wanted);
    return ring === undefined
      ? 0
      : effectiveFeet(ring.shape, form).circleRadius;
  };
  return [...surfaces].sort((a, b) =>
    b.design.readings - a.design.readings ||
    last(b.grade) - last(a.grade) || size(b.ring) - size(a.ring)
  )[0];
}

/** A steady change over the zeroings of a study made in one session. */
function zeroingTrend(
  { zeroings, display, ring, grade }: SurfaceComponents,
  readings: readonly Reading[],
  unit: LengthUnit,
): readonly string[] {
  const own = readings.find((one) => one.ring === ring && one.grade === grade);
  const single = readings.every((one) =>
    one.ring !== ring || one.grade !== grade || one.session === own?.session
  );
  if (!single) return [];
  const means = zeroings.map(({ departures }) =>
    departures.reduce((sum, one) => sum + one, 0) / departures.length
  );
  return trendSentences(means, display.step ?? 0, unit);
}

/**
 * Reads a folder and works out how good its gauge is. Of more than 20,000
 * readings the last are studied, which the reasons say.
 *
 * @param path The folder, as the user names it.
 * @param options Change of one stretch of work, seed.
 * @returns Data and sentences.
 * @throws {RecordError} If the piece or the bench cannot be read.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function openGaugeStudy(
  path: string,
  options: GaugeOptions = {},
): Promise<GaugeReport> {
  const { folder, notes } = lastReadings(
    await readPieceFolder(path, tellReading()),
  );
  const { entries } = await readFolderWorkLog(path, folder.piece.unit);
  const report = gaugeReport(folder, { log: entries, ...options });
  return { ...report, reasons: [...notes, ...report.reasons] };
}

/** The tolerance of the radius as sag, either way, on the ring of the study. */
function sagToleranceOf(
  { piece, bench }: PieceFolder,
  { ring }: SurfaceComponents,
): number | undefined {
  const { target, form } = piece;
  const shape = bench.rings.find(({ id }) => id === ring)?.shape;
  if (target?.tolerance === undefined || !shape) return undefined;
  return sagForRadiusChange(
    target.tolerance,
    target.radius,
    effectiveFeet(shape, form),
    form,
  );
}
