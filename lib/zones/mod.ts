/**
 * Zone means, the verdict on sphericity and the surface profile of a session.
 *
 * @example A deep centre: three sets at three places, from readings to verdict
 * ```ts
 * import { analyseSession, splitSessions } from "sagbook/zones/mod.ts";
 * import { scanReadings } from "sagbook/records/scan_readings.ts";
 * import type { Reading } from "sagbook/records/reading.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual, equal, ok } from "node:assert/strict";
 *
 * const piece = {
 *   name: "invented disc", form: "concave", diameter: mm(300), bevel: mm(1.5),
 *   margin: mm(0.5), unit: "mm", invented: true,
 *   sphericity: { statedAs: "sag", amount: mm(0.003) },
 * } as const;
 * const bench = {
 *   gauge: {
 *     id: "gauge", shows: { kind: "sag" }, countsUpOn: "declared surface",
 *     unit: "mm", steps: { mm: mm(0.001) }, scaleUncertainty: 0,
 *   },
 *   rings: [{
 *     id: "ring 120",
 *     shape: {
 *       kind: "balls", circleRadius: mm(60), ballRadius: mm(6), probeOffset: mm(0),
 *     },
 *     radiusUncertainty: mm(0.02), radiusUncertaintyAssumed: false,
 *     ballRadiusUncertainty: mm(0.001), expansion: 11.5e-6,
 *     foot: { kind: "foot out" },
 *   }],
 * } as const;
 * const sheet = `zeroing,diameter,centre,50%,edge
 * 1,0,0.614,0.602,0.588
 * 2,60,0.615,0.603,0.589
 * 3,120,0.613,0.602,0.588
 * `;
 *
 * const readings: Reading[] = [];
 * await scanReadings(sheet, { file: "S1.csv", piece, bench }, (reading) =>
 *   readings.push(reading));
 * const [session] = splitSessions(readings);
 * const found = analyseSession(session, piece, bench);
 * ok(found);
 * deepEqual(found.zones.map(({ place }) => place.label), ["centre", "50%", "edge"]);
 * equal(found.sphericity.verdict, "outside");
 * const [, centreLessEdge] = found.differences;
 * equal(centreLessEdge.mean.toFixed(4), "0.0257");
 * equal(found.unseen[0].kind, "astigmatism");
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
export {
  type CentreAgainstEdge,
  centreAgainstEdge,
} from "./centre_against_edge.ts";
export {
  chanceOfVerdict,
  trueDepartures,
  type VerdictChances,
  type VerdictPlan,
} from "./chance_of_verdict.ts";
export { chanceToDecide, type SetModel } from "./chance_to_decide.ts";
export { compareZones } from "./compare_zones.ts";
export {
  correctDrift,
  type DriftCorrected,
  type DriftLeft,
  type RecordedZero,
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
  type Looks,
  nominalLevel,
  type ProvisionalGround,
  type ProvisionalVerdict,
  provisionalVerdict,
  USUAL_LOOKS,
} from "./provisional_verdict.ts";
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
  type ShapeGround,
  type SurfaceShape,
  surfaceShape,
} from "./surface_shape.ts";
export {
  farthest,
  judge,
  nearest,
  type NoVerdictReason,
  type SphericityVerdict,
} from "./sphericity.ts";
export { splitSessions } from "./split_sessions.ts";
export { type SteadyTrend, steadyTrend } from "./steady_trend.ts";
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
export { roundingLeft } from "./rounding_left.ts";
