/**
 * The verdict on the sets of one session.
 *
 * @module
 */
import type { Feet } from "../geometry/feet.ts";
import type { RingShape } from "../geometry/ring.ts";
import type { Piece, SphericityTolerance } from "../records/piece.ts";
import { compareZones } from "./compare_zones.ts";
import type { DriftLeft } from "./drift.ts";
import { type Place, SAME_DISTANCE } from "./place.ts";
import type { Scope } from "./replicates.ts";
import { meanOfSets, radiusOfSag } from "./session_radius.ts";
import type { MeasuredSet } from "./set_table.ts";
import { whatDecides } from "./_what_decides.ts";
import {
  farthest,
  judge,
  type NoVerdictReason,
  type SphericityVerdict,
} from "./sphericity.ts";
import { type SagTolerance, sagTolerance } from "./tolerance.ts";
import type { EndsComparison } from "./two_ends.ts";
import type { ZoneDifference } from "./zone_difference.ts";

/** What a verdict needs besides the sets, lengths in mm. */
export interface VerdictGround {
  /** The places, in the order of the sets' cells. */
  readonly places: readonly Place[];
  /** The two ends compared, where both were read. */
  readonly ends: EndsComparison | undefined;
  /** The piece with its tolerance. */
  readonly piece: Piece;
  /** Feet of the ring. */
  readonly feet: Feet;
  /** The kind of ring. */
  readonly kind: RingShape["kind"];
  /** Display step, 0 when none is known. */
  readonly step: number;
  /** What the verdict is meant for. */
  readonly scope: Scope;
  /** Seed of the simulation behind the number of sets. */
  readonly seed: number;
  /** What is not known of the drift of the zero within a set. */
  readonly drift?: DriftLeft;
}

/** Differences between places and the verdict on them. */
export interface JudgedSets {
  /** Every pair of places that some set read together. */
  readonly differences: readonly ZoneDifference[];
  /** The verdict. */
  readonly sphericity: SphericityVerdict;
}

/**
 * Compares every pair of places, judges them against the piece's tolerance
 * and, where the verdict is open, finds what would decide it.
 *
 * A pair of zones that no set read together leaves "within" out of reach,
 * whatever the other pairs say. Ways for the feet to stand at one distance are
 * places of their own, each to be compared with every other distance, but not
 * with each other.
 *
 * @param sets The sets.
 * @param ground Places, piece, ring and choices.
 * @returns Plain data, lengths in mm.
 *
 * @example Nothing to compare
 * ```ts
 * import { judgeSets } from "sagbook/zones/judge_sets.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sets = [{ label: "", zeroing: "", cells: [{ sag: 0.715, readings: 1 }] }];
 * const ground = { places: [{}], scope: "any diameter", step: 0.001 } as
 *   unknown as Parameters<typeof judgeSets>[1];
 * equal(judgeSets(sets, ground).sphericity.reason, "one zone");
 * ```
 */
export function judgeSets(
  sets: readonly MeasuredSet[],
  ground: VerdictGround,
): JudgedSets {
  const { places, ends, piece, step, scope } = ground;
  const further = ends === undefined ? 0 : 1;
  const differences = compareZones(
    sets,
    places.length,
    step,
    scope,
    further,
    ground.drift,
  );
  const complete = everyZoneCompared(places, differences);
  const bounds = differences.map(({ interval90 }) =>
    interval90 ? farthest(interval90) : Infinity
  );
  if (ends) bounds.push(ends.upper ?? Infinity);
  const agreeWithin = Math.max(...bounds);
  const tested = differences.filter(({ interval90 }) => interval90);
  const scatter = Math.max(0, ...tested.map((one) => one.deviation ?? 0));
  const base = {
    scope,
    byEnds: false,
    // A difference scatters sqrt(2) times as much as a reading.
    displayLimited: tested.length > 0 && scatter < step * Math.SQRT1_2,
    ...(complete && tested.length > 0 && Number.isFinite(agreeWithin)
      ? { agreeWithin }
      : {}),
  };
  const none = (reason: NoVerdictReason): JudgedSets => ({
    differences,
    sphericity: { ...base, verdict: "none", reason },
  });
  if (places.length < 2) return none("one zone");
  if (differences.length === 0) return none("no common sets");
  if (tested.length === 0) return none("one set");
  if (!piece.sphericity) return none("no tolerance");
  const tolerance = toleranceFor(sets, piece.sphericity, ground);
  if (!tolerance) return none("tolerance needs an off-centre zone");
  const found = judge(differences, ends, tolerance.sag);
  const verdict = found.verdict === "within" && !complete
    ? "undecided"
    : found.verdict;
  const open = verdict !== "undecided" ? {} : {
    setsNeeded: found.byEnds
      ? { kind: "more ends" } as const
      : whatDecides(sets, differences, tolerance.sag, ground),
  };
  return {
    differences,
    sphericity: { ...base, ...found, verdict, tolerance, ...open },
  };
}

/**
 * Whether each place was compared with some place at every other distance;
 * two ways of standing at one distance need not have met in one set.
 */
function everyZoneCompared(
  places: readonly Place[],
  differences: readonly ZoneDifference[],
): boolean {
  const apart = (a: number, b: number): boolean =>
    Math.abs(places[a].distance - places[b].distance) > SAME_DISTANCE;
  const met = (place: number, other: number): boolean =>
    differences.some(({ first, second }) =>
      (first === place && !apart(second, other)) ||
      (second === place && !apart(first, other))
    );
  return places.every((_, place) =>
    places.every((_, other) => !apart(place, other) || met(place, other))
  );
}

/** The tolerance in sag; only one stated as radius needs the radius. */
function toleranceFor(
  sets: readonly MeasuredSet[],
  stated: SphericityTolerance,
  { piece, places, feet, kind }: VerdictGround,
): SagTolerance | undefined {
  const mean = meanOfSets(sets, 0);
  const radius = radiusOfSag(mean, feet, piece.form)?.radius;
  if (radius === undefined && stated.statedAs === "radius") return undefined;
  const outer = places.reduce((a, b) => b.distance > a.distance ? b : a);
  return sagTolerance(stated, {
    feet,
    halfDiameter: piece.diameter / 2 - piece.bevel,
    outermost: outer.distance,
    radius: radius ?? Infinity,
    // Of the two ways a bar may lie, the one that shows least where unknown.
    ...(kind === "bar" ? { response: outer.foot === "foot out" ? 6 : 2 } : {}),
  });
}
