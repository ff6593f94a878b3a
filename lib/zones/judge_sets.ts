/**
 * The verdict on the sets of one session.
 *
 * @module
 */
import type { Feet } from "../geometry/feet.ts";
import type { Piece } from "../records/piece.ts";
import { compareZones } from "./compare_zones.ts";
import type { Place } from "./place.ts";
import type { Scope } from "./replicates.ts";
import { meanOfSets, radiusOfSag } from "./session_radius.ts";
import type { MeasuredSet } from "./set_table.ts";
import { type SetsNeeded, setsNeeded } from "./sets_needed.ts";
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
  /** Display step, 0 when none is known. */
  readonly step: number;
  /** What the verdict is meant for. */
  readonly scope: Scope;
  /** Seed of the simulation behind the number of sets. */
  readonly seed: number;
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
 * A pair of places that no set read together leaves "within" out of reach,
 * whatever the other pairs say.
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
  const { places, ends, step, scope, seed } = ground;
  const further = ends === undefined ? 0 : 1;
  const differences = compareZones(sets, places.length, step, scope, further);
  const bounds = differences.flatMap(({ interval90 }) =>
    interval90 ? [farthest(interval90)] : []
  );
  if (ends?.upper !== undefined) bounds.push(ends.upper);
  const tested = bounds.length > 0 &&
    differences.every(({ interval90 }) => interval90);
  const scatter = Math.max(0, ...differences.map((one) => one.deviation ?? 0));
  const base = {
    scope,
    byEnds: false,
    // A difference scatters sqrt(2) times as much as a reading.
    displayLimited: tested && step > 0 && scatter < step * Math.SQRT1_2,
    ...(tested ? { agreeWithin: Math.max(...bounds) } : {}),
  };
  const tolerance = toleranceFor(sets, ground);
  const reason = reasonForNone(places.length, differences, ground, tolerance);
  if (reason !== undefined || tolerance === undefined) {
    return {
      differences,
      sphericity: {
        ...base,
        verdict: "none",
        ...(reason === undefined ? {} : { reason }),
      },
    };
  }
  const found = judge(differences, ends, tolerance.sag);
  const pairs = places.length * (places.length - 1) / 2;
  const missing = found.verdict === "within" && differences.length < pairs;
  const verdict = missing ? "undecided" : found.verdict;
  const open = verdict !== "undecided" ? {} : {
    setsNeeded: found.byEnds
      ? { kind: "more ends" } as const
      : whatDecides(sets, differences, step, tolerance, seed),
  };
  return {
    differences,
    sphericity: { ...base, ...found, verdict, tolerance, ...open },
  };
}

function reasonForNone(
  places: number,
  differences: readonly ZoneDifference[],
  { piece }: VerdictGround,
  tolerance: SagTolerance | undefined,
): NoVerdictReason | undefined {
  if (places < 2) return "one zone";
  if (differences.length === 0) return "no common sets";
  if (differences.every(({ interval90 }) => !interval90)) return "one set";
  if (!piece.sphericity) return "no tolerance";
  return tolerance === undefined
    ? "tolerance needs an off-centre zone"
    : undefined;
}

function toleranceFor(
  sets: readonly MeasuredSet[],
  { piece, places, feet }: VerdictGround,
): SagTolerance | undefined {
  if (!piece?.sphericity) return undefined;
  const mean = meanOfSets(sets, 0);
  const radius = radiusOfSag(mean, feet, piece.form)?.radius;
  if (radius === undefined) return undefined;
  return sagTolerance(piece.sphericity, {
    feet,
    halfDiameter: piece.diameter / 2 - piece.bevel,
    outermost: Math.max(...places.map(({ distance }) => distance)),
    radius,
  });
}

/** Means and covariance over the sets that read every place. */
function whatDecides(
  sets: readonly MeasuredSet[],
  differences: readonly ZoneDifference[],
  step: number,
  tolerance: SagTolerance,
  seed: number,
): SetsNeeded {
  const rows = sets.map(({ cells }) => cells.map((cell) => cell?.sag))
    .filter((row): row is number[] => row.every((sag) => sag !== undefined));
  const n = rows.length;
  if (n < 2) return { kind: "unknown" };
  const means = rows[0].map((_, k) =>
    rows.reduce((sum, row) => sum + row[k], 0) / n
  );
  const covariance = means.map((_, i) =>
    means.map((_, j) => {
      const products = rows.reduce(
        (sum, row) => sum + (row[i] - means[i]) * (row[j] - means[j]),
        0,
      );
      const found = products / (n - 1);
      // The simulation rounds again, so what rounding added is taken off.
      return i === j ? Math.max(0, found - step * step / 12) : found;
    })
  );
  const widest = differences.reduce((a, b) =>
    Math.abs(b.mean) > Math.abs(a.mean) ? b : a
  );
  const { interval95 } = widest;
  const halfWidth = interval95 ? (interval95.high - interval95.low) / 2 : 0;
  const model = { means, covariance, step, tolerance: tolerance.sag };
  return setsNeeded(model, { halfWidth, dof: n - 1 }, seed);
}
