/**
 * Distributions, intervals, tables of variance, mixed models, lines and control
 * charts over plain numbers, and estimates that remember what they share.
 *
 * @example The interval of a mean from a few readings
 * ```ts
 * import { studentTQuantile } from "sagbook/statistics/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(studentTQuantile(0.025, 4, "upper").toFixed(3), "2.776");
 * ```
 *
 * @module
 */
export type { Estimate } from "./estimate.ts";
export {
  normalProbability,
  normalQuantile,
  type Tail,
} from "./normal_distribution.ts";
export {
  studentTProbability,
  studentTQuantile,
} from "./student_t_distribution.ts";
export {
  chiSquareProbability,
  chiSquareQuantile,
} from "./chi_square_distribution.ts";
export { fProbability, fQuantile } from "./f_distribution.ts";
export {
  normalRangeProbability,
  studentizedRangeProbability,
  studentizedRangeQuantile,
} from "./studentized_range.ts";
export { medianOf } from "./median.ts";
export { lagOneAutocorrelation, summarise, type Summary } from "./summary.ts";
export { RunningMoments } from "./running_moments.ts";
export {
  type MeanInterval,
  pairedInterval,
  studentInterval,
} from "./student_interval.ts";
export {
  type EquivalenceBounds,
  type EquivalenceResult,
  equivalenceTest,
  pairedEquivalence,
  twoSampleEquivalence,
} from "./equivalence_test.ts";
export {
  grubbsCritical,
  type GrubbsResult,
  grubbsTest,
} from "./grubbs_test.ts";
export {
  addEstimates,
  combineEstimates,
  scaleEstimate,
  subtractEstimates,
} from "./estimate_arithmetic.ts";
export {
  effectiveDof,
  type ExpandedUncertainty,
  expandUncertainty,
  standardUncertainty,
} from "./estimate_uncertainty.ts";
export {
  interceptColumn,
  levelColumns,
  treatmentColumns,
} from "./design_columns.ts";
export type {
  FitStatus,
  FixedColumn,
  FixedEffect,
  LikelihoodKind,
  MixedModel,
  MixedModelCurvature,
  MixedModelFit,
  RandomFactor,
  RandomShifts,
  VarianceComponent,
} from "./mixed_model.ts";
export type { Interval } from "./interval.ts";
export { fitMixedModel } from "./fit_mixed_model.ts";
export { type FixedContrast, fixedContrast } from "./fixed_contrast.ts";
export { profileCoefficients } from "./profile_coefficients.ts";
export {
  profileDeviations,
  type ProfileInterval,
  type ProfileThreshold,
} from "./profile_intervals.ts";
export type {
  AnovaSource,
  AnovaTable,
  MeanSquareTerm,
  MomentComponent,
} from "./anova_table.ts";
export {
  type GroupSummary,
  type OneWayAnova,
  oneWayAnova,
  oneWayAnovaOfSummaries,
} from "./one_way_anova.ts";
export { type NestedAnova, nestedAnova } from "./nested_anova.ts";
export { type CrossedAnova, crossedAnova } from "./crossed_anova.ts";
export {
  type SatterthwaiteInterval,
  satterthwaiteInterval,
  varianceInterval,
} from "./variance_interval.ts";
export {
  gaugeTerms,
  type GaugeVariances,
  gaugeVariances,
} from "./gauge_study.ts";
export {
  type RangeFactors,
  type RangeStudy,
  rangeStudy,
} from "./range_study.ts";
export {
  deviationMean,
  rangeDeviation,
  rangeMean,
  rangeMeanOfOne,
} from "./range_constants.ts";
export {
  type ControlChart,
  type ControlChartConstants,
  controlChartConstants,
  type ControlChartPair,
  groupsChart,
  individualsChart,
} from "./control_chart.ts";
export { findRuns, type RunsRule, type RunsSignal } from "./runs_rules.ts";
export {
  type InversePrediction,
  invertLine,
  type LinePrediction,
  predictLine,
  type StraightLine,
} from "./straight_line.ts";
export { fitLine, type FittedLine, type LineOptions } from "./fit_line.ts";
export { type DemingLine, fitDemingLine } from "./deming_line.ts";
export { fitYorkLine, type PointErrors, type YorkLine } from "./york_line.ts";
export {
  generalisedLeastSquares,
  type LeastSquaresCoefficient,
  type LeastSquaresFit,
} from "./generalised_least_squares.ts";
export { roundingHalfWidth, survivingRounding } from "./rounding_floor.ts";
