/**
 * A report as one JSON value with units and version.
 *
 * @module
 */
import { RESULTS_VERSION } from "./results_version.ts";
import { VERSION } from "../version.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import type { Interval } from "../statistics/interval.ts";
import { plainJson } from "./plain_json.ts";
import { coverageFactorOf, type RadiusStatement } from "./radius_statement.ts";
import type { SessionReport } from "./session_report.ts";

/** So many zeroings are listed with their drift. */
const MOST_DRIFTS = 200;

/** A JSON object. */
export type Json = Readonly<Record<string, unknown>>;

/**
 * Gathers what a report found.
 *
 * Lengths are numbers in the unit that `units` names for their kind; whatever
 * could not be worked out is left out, so no value is null, NaN or infinite.
 *
 * @param report The report.
 * @returns Plain JSON.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function reportResults(report: SessionReport): Json {
  const { folder, session, sessions, radius } = report;
  const { piece, lines, problems } = folder;
  return {
    program: "sagbook",
    version: VERSION,
    results_version: RESULTS_VERSION,
    units: { length: "mm", angle: "degree" },
    invented: piece.invented,
    piece: plainJson({
      name: piece.name,
      form: piece.form,
      diameter: piece.diameter,
      target: piece.target,
      sphericity: piece.sphericity,
    }),
    answer: report.answer,
    ...(radius === undefined ? {} : { radius: ofRadius(radius) }),
    ...(report.next === undefined ? {} : { next: plainJson(report.next) }),
    ...(session === undefined ? {} : { session: ofSession(session) }),
    sessions: sessions.map(ofSession),
    ...(report.sessionsLeftOut === undefined
      ? {}
      : { sessions_left_out: report.sessionsLeftOut }),
    cautions: report.cautions,
    unseen: report.unseen,
    lines: plainJson(lines),
    problems: problems.map((problem) => plainJson(problem)),
  };
}

function ofSession(session: SessionAnalysis): Json {
  const { zones, differences, sphericity, profile, ring } = session;
  const label = (place: number): string => zones[place].place.label;
  return plainJson({
    session: session.session,
    ring: ring.id,
    grade: session.grade,
    taken_at: session.takenAt,
    display_step: session.step,
    sets: session.sets.length,
    zones: zones.map(({ place, mean, radius }) => ({
      zone: place.label,
      distance: place.distance,
      feet: place.foot,
      readings: mean.readings,
      zeroings: mean.zeroings,
      people: mean.people,
      mean_sag: mean.sag,
      standard_deviation: mean.deviation,
      interval95: mean.interval95,
      radius: radius?.radius,
      radius_interval95: radius?.interval95,
    })),
    // Outer less inner, as on the pages: from the inner to the outer zone.
    differences: differences.map((one) => ({
      from: label(one.first),
      to: label(one.second),
      sets: one.sets,
      mean: 0 - one.mean,
      dof: one.dof,
      interval90: turned(one.interval90),
      interval95: turned(one.interval95),
      simultaneous95: turned(one.simultaneous95),
    })),
    sphericity: {
      verdict: sphericity.verdict,
      reason: sphericity.reason,
      scope: sphericity.scope,
      tolerance_sag: sphericity.tolerance?.sag,
      agree_within: sphericity.agreeWithin,
      limited_by_display: sphericity.displayLimited,
      sets_needed: sphericity.setsNeeded,
    },
    conic: ofFit(profile?.conic),
    peak_to_valley: ofFit(profile?.peakToValley),
    drifts: session.drifts.slice(0, MOST_DRIFTS),
    drifts_left_out: session.drifts.length > MOST_DRIFTS
      ? session.drifts.length - MOST_DRIFTS
      : undefined,
    outliers: session.outliers.map(({ set, place, from }) => ({
      set: session.sets[set].label,
      zone: label(place),
      from,
    })),
  });
}

/** The same interval of the difference taken the other way. */
function turned(interval: Interval | undefined): Interval | undefined {
  return interval && { low: 0 - interval.high, high: 0 - interval.low };
}

function ofRadius(
  { budget, other: _, ...statement }: RadiusStatement,
): Json {
  const { lines, dof, standardUncertainty, notCounted, assumed } = budget;
  return plainJson({
    ...statement,
    standard_uncertainty: standardUncertainty,
    coverage_factor: coverageFactorOf({ budget, ...statement }),
    dof,
    budget: lines.map((line) => ({
      source: line.source,
      standard_uncertainty: line.standardUncertainty,
      unit: line.unit,
      sensitivity: line.sensitivity,
      contribution: line.contribution,
      share: line.share,
      dof: line.dof,
    })),
    not_counted: notCounted,
    assumed,
  });
}

function ofFit(
  fit: { value: number; interval95?: Interval } | undefined,
): Json | undefined {
  return fit && { value: fit.value, interval95: fit.interval95 };
}
