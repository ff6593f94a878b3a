/**
 * The settings of a piece's history with their rates.
 *
 * @module
 */
import { fitProgress, type ProgressFit } from "../fabrication/fit_progress.ts";
import type { ProgressRun } from "../fabrication/progress_session.ts";
import { type RateChange, rateChange } from "../fabrication/rate_change.ts";
import {
  compareRate,
  type LearnedRate,
  type RateComparison,
} from "../fabrication/shop_rates.ts";
import type { Setting, WorkTimeline } from "../fabrication/work_timeline.ts";
import { type HistoryPoint, progressRun } from "./history_points.ts";

/** One setting and what it did. */
export interface HistoryStage extends Setting {
  /** Its runs. */
  readonly runs: readonly ProgressRun[];
  /** The line; absent where no work lies between two sessions with a sag. */
  readonly fit?: ProgressFit;
  /** Whether the rate changed on the way. */
  readonly change?: RateChange;
  /** What the shop expects of it, where it knows. */
  readonly expected?: LearnedRate;
  /** How the rate compares with that. */
  readonly comparison?: RateComparison;
  /** Work with the setting, in the timeline's unit. */
  readonly work: number;
}

/**
 * Fits every setting of a history.
 *
 * @param timeline Work and sessions in order.
 * @param points The points by session.
 * @param expectations Rates learned from earlier pieces of this diameter.
 * @returns One stage for each setting, in the order last worked.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function historyStages(
  timeline: WorkTimeline,
  points: ReadonlyMap<string, HistoryPoint>,
  expectations: readonly LearnedRate[],
): readonly HistoryStage[] {
  return timeline.stages.map(({ grade, position, runs }) => {
    const worked = runs.map((run) => progressRun(run, points))
      .filter((run) => run.length > 1);
    const work = runs.reduce(
      (sum, run) => sum + run[run.length - 1].work - run[0].work,
      0,
    );
    const stage: HistoryStage = {
      ...(grade === undefined ? {} : { grade }),
      ...(position === undefined ? {} : { position }),
      runs: worked,
      work,
    };
    const moved = worked.some((run) => run[run.length - 1].work > run[0].work);
    if (!moved) return stage;
    const fit = fitProgress(worked);
    const expected = expectations.find((one) =>
      one.grade === grade && one.position === position &&
      one.unit === timeline.unit
    );
    return {
      ...stage,
      fit,
      change: rateChange(worked),
      ...(expected === undefined
        ? {}
        : { expected, comparison: compareRate(fit.rate, expected.rate) }),
    };
  });
}
