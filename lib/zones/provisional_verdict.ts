/**
 * A verdict that may be looked at after every set.
 *
 * @module
 */
import { studentT } from "./_critical.ts";
import { compareZones } from "./compare_zones.ts";
import type { DriftLeft } from "./drift.ts";
import type { Place } from "./place.ts";
import type { Scope } from "./replicates.ts";
import type { MeasuredSet } from "./set_table.ts";
import { farthest, judge } from "./sphericity.ts";
import { compareEnds, type EndsComparison } from "./two_ends.ts";
import type { ZoneDifference } from "./zone_difference.ts";

/** The sets after which the verdict is looked at. */
export interface Looks {
  /** The first, always 3. */
  readonly first: 3;
  /** The last, from 3 to 20: the planned number of sets. */
  readonly last: number;
}

/** What a provisional verdict needs besides the sets, lengths in mm. */
export interface ProvisionalGround {
  /** The places, in the order of the sets' cells. */
  readonly places: readonly Place[];
  /** Largest good difference of sag, above 0. */
  readonly tolerance: number;
  /** Display step, 0 when none is known. */
  readonly step: number;
  /** What the verdict is meant for; any diameter unless stated. */
  readonly scope?: Scope;
  /** What is not known of the drift of the zero within a set. */
  readonly drift?: DriftLeft;
}

/** A verdict on the way, as data. */
export interface ProvisionalVerdict {
  /**
   * `early` before the third set, `over` after the last planned one: the rule
   * then says nothing.
   */
  readonly verdict: "within" | "outside" | "undecided" | "early" | "over";
  /** Sets so far that hold two places or more. */
  readonly sets: number;
  /** The planned looks. */
  readonly looks: Looks;
  /** One-sided level of each test for "within" at each look. */
  readonly level: number;
  /** The difference that decided, or that stands in the way. */
  readonly deciding?: ZoneDifference;
  /** True when the two ends of a diameter decided, not two zones. */
  readonly byEnds: boolean;
  /** All places agree within this, by the levels of the rule, in mm. */
  readonly agreeWithin?: number;
}

/**
 * Levels at which "within" may be looked for after sets 3, 4, … up to the last
 * planned one, so that all looks together err in 5 %: by the last set, from 3.
 */
const LEVELS: readonly number[] = [
  ...[0.05, 0.0322, 0.0247, 0.0205, 0.0178, 0.016, 0.0146, 0.0135, 0.0126],
  ...[0.0119, 0.0113, 0.0108, 0.0103, 0.0099, 0.0096, 0.0093, 0.009, 0.0088],
];

/** Sets 3 to 8, unless a plan says otherwise. */
export const USUAL_LOOKS: Looks = { first: 3, last: 8 };

/**
 * Finds the level at which each look may test, so that a user who stops at the
 * first "within" is wrong at the limit in 5 % and no more.
 *
 * The same nominal level at every look, by Student's t with the degrees of
 * freedom of that look. Found from 2 × 10⁷ simulated sequences of normal
 * differences (their share of the smallest p-value, standard error below
 * 0.00004), rounded down; for three to eight sets it is 1.6 %.
 *
 * @param looks The looks.
 * @returns The one-sided level.
 * @throws {RangeError} If the last look is not a whole number from 3 to 20.
 *
 * @see Pocock (1977), Biometrika 64, 191-199 (a constant nominal level, and
 * its use with t); Jennison and Turnbull, Group Sequential Methods (2000),
 * chapter 4 (both from memory). Error by simulation:
 * `tests/studies/RESULTS.md`.
 *
 * @example
 * ```ts
 * import { nominalLevel } from "sagbook/zones/provisional_verdict.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(nominalLevel({ first: 3, last: 8 }), 0.016);
 * ```
 */
export function nominalLevel({ first, last }: Looks): number {
  const level = Number.isInteger(last) ? LEVELS[last - first] : undefined;
  if (level === undefined) {
    throw new RangeError(
      `Cannot plan looks as the last must be a whole number of sets from 3 to 20: current value is ${last}`,
    );
  }
  return level;
}

/**
 * Judges the sets so far by a rule that allows to stop at the first verdict.
 *
 * As {@link judge}, with tests at levels that leave room for all the planned
 * looks. `within`: every pair of places, and the ends of diameters where both
 * were read, passes its two one-sided tests at {@link nominalLevel}. `outside`:
 * the 5 % of the simultaneous intervals is shared by all looks (Bonferroni).
 * The verdict of a report, at 5 %, holds for a number of sets that was fixed
 * before the first was read.
 *
 * @param sets The sets so far, in order.
 * @param ground Places, tolerance, display step.
 * @param looks The planned looks; after sets 3 to 8 unless stated.
 * @returns The verdict as data.
 * @throws {RangeError} If the looks are not from 3 to at most 20 sets, or the
 * tolerance is not above 0.
 *
 * @see {@link nominalLevel}.
 *
 * @example Clear after the third set
 * ```ts
 * import { provisionalVerdict } from "sagbook/zones/provisional_verdict.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const rows = [[0.715, 0.714], [0.716, 0.715], [0.715, 0.714]];
 * const sets = rows.map((sags, k) => ({
 *   label: "", zeroing: `${k}`, diameterDegrees: 60 * k,
 *   cells: sags.map((sag) => ({ sag, readings: 1 })),
 * }));
 * const places = [{}, {}] as unknown as
 *   Parameters<typeof provisionalVerdict>[1]["places"];
 * const ground = { places, tolerance: 0.01, step: 0.001 };
 * deepEqual(
 *   [2, 3].map((n) => provisionalVerdict(sets.slice(0, n), ground).verdict),
 *   ["early", "within"],
 * );
 * ```
 */
export function provisionalVerdict(
  sets: readonly MeasuredSet[],
  ground: ProvisionalGround,
  looks: Looks = USUAL_LOOKS,
): ProvisionalVerdict {
  const { places, tolerance, step, scope = "any diameter", drift } = ground;
  if (!(tolerance > 0)) {
    throw new RangeError(
      `Cannot judge sets as the tolerance must be above 0 mm: current value is ${tolerance} mm`,
    );
  }
  const level = nominalLevel(looks);
  const count = sets.filter(({ cells }) => cells.filter(Boolean).length > 1)
    .length;
  const base = { sets: count, looks, level, byEnds: false };
  if (count < looks.first) return { ...base, verdict: "early" };
  if (count > looks.last) return { ...base, verdict: "over" };
  const size = places.length;
  const pairs = size * (size - 1) / 2;
  const times = looks.last - looks.first + 1;
  const both = compareEnds(sets, places, step, 1, scope) !== undefined;
  const statements = pairs + (both ? 1 : 0);
  const compared = (comparisons: number): readonly ZoneDifference[] => {
    const found = compareZones(sets, size, step, scope, 0, drift).length;
    const further = comparisons - found;
    return compareZones(sets, size, step, scope, further, drift);
  };
  // Shared by so many, 5 % leaves each two-sided interval twice the level.
  const strict = compared(0.05 / (2 * level));
  // Every statement is made again at every look.
  const shared = compared(statements * times);
  const differences = strict.map((one, k): ZoneDifference => ({
    ...one,
    ...(one.simultaneous95 === undefined ? {} : {
      interval90: one.simultaneous95,
      simultaneous95: shared[k].simultaneous95!,
    }),
  }));
  const ends = compareEnds(
    sets,
    places,
    step,
    statements * times,
    scope,
    drift,
  );
  const found = judge(differences, strictEnds(ends, level), tolerance);
  const missing = differences.length < pairs;
  const widest = Math.max(
    ...differences.map(({ interval90 }) =>
      interval90 === undefined ? Infinity : farthest(interval90)
    ),
    strictEnds(ends, level)?.upper ?? (ends === undefined ? 0 : Infinity),
  );
  return {
    ...base,
    ...found,
    verdict: found.verdict === "within" && missing
      ? "undecided"
      : found.verdict,
    ...(!missing && Number.isFinite(widest) ? { agreeWithin: widest } : {}),
  };
}

/**
 * The ends with an upper limit at the rule's level: its distance from the
 * amplitude grows as Student's t does, and what rounding adds to it by more
 * than it would need to.
 */
function strictEnds(
  ends: EndsComparison | undefined,
  level: number,
): EndsComparison | undefined {
  if (ends?.upper === undefined) return ends;
  const { amplitude, upper, dof } = ends;
  const longer = studentT(level, dof) / studentT(0.05, dof);
  return { ...ends, upper: amplitude + longer * (upper - amplitude) };
}
