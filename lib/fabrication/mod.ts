/**
 * Grinding: what to do next at the bench.
 *
 * @example A sphere that is still too long
 * ```ts
 * import { nextStep } from "sagbook/fabrication/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const step = nextStep({
 *   form: "concave", sphericity: "within", radiusLessTarget: 80,
 *   range: { low: 72, high: 88 }, tolerance: 10,
 * });
 * equal(step.kind, "shorten");
 * ```
 *
 * @module
 */
export type {
  ProgressRun,
  ProgressSession,
  WorkScatter,
} from "./progress_session.ts";
export {
  fitProgress,
  type ProgressFit,
  type ProgressOptions,
} from "./fit_progress.ts";
export { predictProgress, progressLimits } from "./predict_progress.ts";
export {
  type Forecast,
  type ForecastOptions,
  forecastTarget,
  riskOfPassing,
} from "./forecast_target.ts";
export { type RateChange, rateChange } from "./rate_change.ts";
export { type DepthToGo, depthToGo } from "./depth_to_go.ts";
export {
  type GrainSize,
  grainSize,
  type Microgrit,
  MICROGRITS,
} from "./microgrits.ts";
export {
  type PitAllowance,
  pitAllowance,
  type PitsState,
  pitsState,
  removalByThickness,
  removalByWork,
} from "./removal.ts";
export {
  type GradeAhead,
  type GradePlan,
  type GradesPlan,
  planGrades,
} from "./plan_grades.ts";
export {
  compareRate,
  type FittedStage,
  type LearnedRate,
  learnRates,
  type RateComparison,
} from "./shop_rates.ts";
export {
  type PlacedSession,
  type SessionMark,
  type Setting,
  type Stage,
  type TimelineNote,
  type WorkInterval,
  type WorkTimeline,
  workTimeline,
} from "./work_timeline.ts";
export {
  focalLengthMeasured,
  type FocalLengthMeasurement,
} from "./focal_length_measured.ts";
export {
  type GeometricFocalLength,
  geometricFocalLength,
} from "./geometric_focal_length.ts";
export {
  type FocalHabit,
  focalHabit,
  type HabitPiece,
  type KnownPiece,
} from "./focal_habit.ts";
export type { HabitLine, MeanRatio } from "./focal_habit_forms.ts";
export {
  type FocalLengthPrediction,
  landingProbability,
  predictFocalLength,
} from "./predict_focal_length.ts";
export {
  type GroundRadiusAim,
  groundRadiusFor,
  type GroundRadiusWish,
} from "./ground_radius_for.ts";
export {
  type CheckedPiece,
  type FinishedSuspicion,
  finishedSuspicions,
} from "./finished_suspicions.ts";
export {
  againstTarget,
  type RadiusRange,
  type TargetVerdict,
  type WantedRadius,
} from "./against_target.ts";
export {
  COMMON_STROKES,
  type NextStep,
  nextStep,
  type Position,
  type Stroke,
  type StrokeTable,
  type SurfaceState,
} from "./next_step.ts";
