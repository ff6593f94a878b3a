/**
 * Zone means, the verdict on sphericity and the surface profile of a session.
 *
 * @example A deep centre, read three times at three places
 * ```ts
 * import { compareZones, judge } from "sagbook/zones/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const rows = [[0.730, 0.715, 0.702], [0.731, 0.716, 0.703], [0.729, 0.715, 0.702]];
 * const sets = rows.map((sags, k) => ({
 *   label: `${k}`,
 *   zeroing: `${k}`,
 *   diameterDegrees: 60 * k,
 *   cells: sags.map((sag) => ({ sag, readings: 1 })),
 * }));
 * const differences = compareZones(sets, 3, 0.001, "any diameter");
 * equal(judge(differences, undefined, 0.003).verdict, "outside");
 * ```
 *
 * @module
 */
export {
  analyseSession,
  type MeanWithRadius,
  type SessionAnalysis,
  type SessionOptions,
  type ZoneSummary,
} from "./analyse_session.ts";
export { chanceToDecide, type SetModel } from "./chance_to_decide.ts";
export { compareZones } from "./compare_zones.ts";
export {
  roundingHalfWidth,
  roundingLeft,
  survivingRounding,
} from "./display_floor.ts";
export {
  correctDrift,
  type DriftCorrected,
  type DriftLeft,
  type ZeroDrift,
} from "./drift.ts";
export {
  type JudgedSets,
  judgeSets,
  type VerdictGround,
} from "./judge_sets.ts";
export { flagOutliers, type OutlierFlag } from "./outliers.ts";
export { type FootClass, footClass, type Place, placesOf } from "./place.ts";
export {
  fitProfile,
  type FittedValue,
  type ProfileGround,
  type ProfilePoint,
  type SurfaceProfile,
} from "./profile.ts";
export {
  type ReplicatedMean,
  replicatedMean,
  type Scope,
} from "./replicates.ts";
export {
  meanOfSets,
  type MeanSag,
  meanSag,
  type RadiusOfSag,
  radiusOfSag,
} from "./session_radius.ts";
export { type Cell, type MeasuredSet, setTable } from "./set_table.ts";
export { type SetsNeeded, setsNeeded } from "./sets_needed.ts";
export {
  farthest,
  judge,
  nearest,
  type NoVerdictReason,
  type SphericityVerdict,
} from "./sphericity.ts";
export { splitSessions } from "./split_sessions.ts";
export {
  type SagTolerance,
  sagTolerance,
  type ToleranceGround,
} from "./tolerance.ts";
export { compareEnds, type EndsComparison } from "./two_ends.ts";
export { outermostTouched, type Unseen, unseenBy } from "./unseen.ts";
export {
  type Contrast,
  contrastOf,
  intervalsOf,
  type ZoneDifference,
} from "./zone_difference.ts";
