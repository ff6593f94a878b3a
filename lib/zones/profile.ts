/**
 * The shape of the surface that the zones suggest.
 *
 * @module
 */
import { conicFromQuartic, peakToValley } from "../geometry/asphericity.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { contrasts, dot, lessBestSphere, response } from "./_even_terms.ts";
import { roundingLeft } from "./rounding_left.ts";
import type { DriftLeft } from "./drift.ts";
import { type Place, SAME_DISTANCE } from "./place.ts";
import { type Direction, replicatedMean, type Scope } from "./replicates.ts";
import { filterItems, itemMaker } from "../numerics/lazy_list.ts";
import type { MeasuredSet } from "./set_table.ts";
import type { Interval } from "../statistics/interval.ts";
import { contrastOf, intervalsOf } from "./zone_difference.ts";

/** A value that is a weighted sum of zone means, with its interval. */
export interface FittedValue {
  /** The value. */
  readonly value: number;
  /** Two-sided 95 % interval, undefined without a degree of freedom. */
  readonly interval95?: Interval;
}

/** One point of the profile. */
export interface ProfilePoint {
  /** Distance from the centre of the work, in mm. */
  readonly distance: number;
  /** Height above the best sphere, in mm; positive is glass standing high at
   * the rim of concave work. */
  readonly departure: FittedValue;
}

/** The departure from a sphere that fits the zones. */
export interface SurfaceProfile {
  /** How many sets went in. */
  readonly sets: number;
  /** Even powers in the fit, 4 upward. */
  readonly powers: readonly number[];
  /** Coefficient of (ρ/a)ᵖ for each power, in mm at the rim. */
  readonly coefficients: readonly FittedValue[];
  /** Conic constant that fits the zones best, with a₄ρ⁴ alone. */
  readonly conic: FittedValue;
  /** Peak to valley of that conic against its best sphere, in mm. */
  readonly peakToValley: FittedValue;
  /** The fitted departure from the best sphere over the clear diameter. */
  readonly points: readonly ProfilePoint[];
  /** Half the clear diameter, in mm. */
  readonly halfDiameter: number;
}

/** What a profile needs besides the sets. */
export interface ProfileGround {
  /** Radius of the circle the feet touch on, in mm. */
  readonly contactCircle: number;
  /** Half the clear diameter, in mm. */
  readonly halfDiameter: number;
  /** Radius of curvature at the centre, in mm. */
  readonly radius: Millimetres;
  /** Display step in mm, 0 when none is known. */
  readonly step: number;
  /** Whether the answer is for any diameter or for those read. */
  readonly scope: Scope;
  /** What is not known of the drift of the zero within a set. */
  readonly drift?: DriftLeft;
}

/** More terms than this no ring can tell apart. */
const MOST_TERMS = 3;
/** How many points draw the profile. */
const POINTS = 41;

/** How many distances from the centre the places tell apart. */
function distinctDistances(places: readonly Place[]): number {
  const sorted = places.map(({ distance }) => distance).sort((a, b) => a - b);
  let [count, last] = [0, -Infinity];
  for (const distance of sorted) {
    if (distance - last > SAME_DISTANCE) {
      count++;
      last = distance;
    }
  }
  return count;
}

/** The sags of whole sets, set by set, and the diameter of each. */
function columnsOf(whole: readonly MeasuredSet[], places: number) {
  const at = itemMaker(whole);
  const sags = new Float64Array(whole.length * places);
  const known = new Map<number | undefined, Direction>();
  const directions = Array.from({ length: whole.length }, (_, set) => {
    const { cells, diameterDegrees } = at(set);
    cells.forEach((cell, place) => sags[set * places + place] = cell!.sag);
    const direction = known.get(diameterDegrees) ?? { diameterDegrees };
    known.set(diameterDegrees, direction);
    return direction;
  });
  return { sags, directions };
}

/**
 * Fits the even terms a₄, a₆, … that the zones can carry.
 *
 * Every set that read all the places gives its own least-squares fit of the
 * exact three-foot mean of each term at the feet's direction; the scatter of
 * these fits over sets gives the intervals. There is one term fewer than
 * distinct distances and three at most; with feet of unknown direction only
 * a₄, the one term that does not depend on it. The conic constant is that of
 * a fit with a₄ alone and holds to first order (about 1e-3 of itself).
 *
 * A narrow fault is no even polynomial of few terms: the profile then shows
 * the polynomial that reads the same at these places, not the fault.
 *
 * @param sets The sets of the session.
 * @param places The places.
 * @param ground Ring, work, display step and scope.
 * @returns Undefined when no set read two distances from the centre.
 *
 * @example A conic of constant -1 in one noise-free set
 * ```ts
 * import { fitProfile } from "sagbook/zones/profile.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const ground = {
 *   contactCircle: 60, halfDiameter: 150, radius: mm(3000), step: 0,
 *   scope: "any diameter",
 * } as const;
 * const places = [0, 70].map((distance) => ({
 *   id: "", label: "", distance: mm(distance), foot: "foot out" as const,
 *   threefold: 1,
 * }));
 * const lost = (70 * 60) ** 2 / (2 * 3000 ** 3);
 * const cells = [0.6, 0.6 - lost].map((sag) => ({ sag, readings: 1 }));
 * const sets = [{ label: "", zeroing: "", cells }];
 * const profile = fitProfile(sets, places, ground);
 * equal(profile?.conic.value.toFixed(6), "-1.000000");
 * ```
 */
export function fitProfile(
  sets: readonly MeasuredSet[],
  places: readonly Place[],
  ground: ProfileGround,
): SurfaceProfile | undefined {
  const { contactCircle, halfDiameter, radius, step, scope, drift } = ground;
  const whole = filterItems(sets, ({ cells }) => cells.every((cell) => cell));
  const distances = distinctDistances(places);
  if (whole.length === 0 || distances < 2) return undefined;
  const unknown = places.some(({ foot }) => foot === "unknown");
  const terms = unknown ? 1 : Math.min(distances - 1, MOST_TERMS);
  const left = roundingLeft(whole, places.length, step);
  const progress = places.map((_, place) =>
    whole.reduce((sum, { cells }) => sum + (cells[place]!.progress ?? 0), 0) /
    whole.length
  );
  const powers = Array.from({ length: terms }, (_, k) => 4 + 2 * k);
  const columns = powers.map((power) =>
    places.map((place) => response(place, power, contactCircle, halfDiameter))
  );
  const { sags, directions } = columnsOf(whole, places.length);
  const fitted = (weights: readonly number[]): FittedValue => {
    const values = directions.map((_, set) =>
      dot(weights, sags, set * weights.length)
    );
    const replicated = replicatedMean(values, directions, scope);
    const contrast = contrastOf(weights, left, progress, drift);
    const { interval95 } = intervalsOf(replicated, step, 1, contrast);
    const { mean: value } = replicated;
    return interval95 === undefined ? { value } : { value, interval95 };
  };
  const weights = contrasts(columns);
  const [quartic] = contrasts(columns.slice(0, 1));
  const toConic = conicFromQuartic(halfDiameter ** -4, radius);
  const toHeight = peakToValley(
    halfDiameter ** -4,
    millimetres(halfDiameter),
  );
  const points = Array.from({ length: POINTS }, (_, k): ProfilePoint => {
    const u = k / (POINTS - 1);
    const mix = places.map((_, place) =>
      powers.reduce(
        (sum, power, term) =>
          sum + lessBestSphere(power, u) * weights[term][place],
        0,
      )
    );
    return { distance: u * halfDiameter, departure: fitted(mix) };
  });
  return {
    sets: whole.length,
    powers,
    coefficients: weights.map(fitted),
    conic: fitted(quartic.map((weight) => weight * toConic)),
    peakToValley: fitted(quartic.map((weight) => weight * toHeight)),
    points,
    halfDiameter,
  };
}
