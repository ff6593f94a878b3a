/**
 * The two ends of a diameter, compared before they are merged.
 *
 * @module
 */
import { chiSquareUpper5, fUpper, studentT } from "./_critical.ts";
import { type Direction, fitDirection } from "./_fit_direction.ts";
import {
  roundingHalfWidth,
  survivingRounding,
} from "../statistics/rounding_floor.ts";
import type { DriftLeft } from "./drift.ts";
import { type Place, SAME_DISTANCE } from "./place.ts";
import type { Scope } from "./replicates.ts";
import type { MeasuredSet } from "./set_table.ts";

/** How the readings at the two ends of diameters differ. */
export interface EndsComparison {
  /** How many pairs of ends went in. */
  readonly pairs: number;
  /** Degrees of freedom left for the scatter between diameters. */
  readonly dof: number;
  /**
   * Largest difference of sag between the two ends of a diameter at the
   * outermost place, over all directions, in mm, at least 0.
   */
  readonly amplitude: number;
  /** Direction of the end with the larger sag, in degrees, where known. */
  readonly towardDegrees?: number;
  /** The amplitude is below this with 95 % confidence, in mm. */
  readonly upper?: number;
  /** The amplitude is above this with simultaneous 95 % confidence, in mm. */
  readonly lower?: number;
  /** False when the ends of one diameter only were read. */
  readonly allDirections: boolean;
}

/** What one set says of the difference of its ends. */
interface EndsOfSet {
  /** Sum over its places of distance times difference of sag, in mm². */
  readonly product: number;
  /** Sum over its places of the distance squared, in mm². */
  readonly weight: number;
  /** The same as `product` for how much later the plus end was read. */
  readonly lag: number;
  /** Direction of the diameter in degrees; undefined where not written down. */
  readonly degrees: number | undefined;
}

/**
 * Compares the sags at the two ends of the diameters of a session.
 *
 * Wear like coma, `C ρ³ cos θ`, changes the sag at offset c by `2 C c r² cos θ`
 * and so with opposite signs at the two ends: their difference is
 * `c (A cos θ + B sin θ)`. Averaging the ends first would hide it. Each set
 * gives one slope over its places (least squares through the centre); A and B
 * are fitted through these slopes, and their scatter about the fit gives the
 * limits, so that whatever the places of a set share is not counted as seen
 * twice. For any diameter, sets on one diameter count once.
 *
 * `lower` is Scheffé's bound: it holds in every direction at once. `upper`
 * adds the standard error of the worst direction; since scatter only makes a
 * fitted amplitude longer, it covers somewhat more than 95 %.
 *
 * Trefoil is mistaken for coma on one diameter when the gauge turns with it;
 * over three diameters and more it shows as scatter instead. A ring left as it
 * is cannot mistake it, but stands with one foot out at one end and two at the
 * other: these are two places, whose ends are compared all the same, and an
 * edge fault that only one foot out sees is found between the places first.
 *
 * @param sets The sets of the session.
 * @param places The places, in the order of the sets' cells.
 * @param step Display step in mm.
 * @param comparisons How many statements share the 5 %, this one included.
 * @param scope Whether the answer is meant for any diameter or for those read.
 * @param drift What is not known of the drift of the zero within a set.
 * @returns Undefined when no set read both ends at one distance. Without a degree of freedom there is an amplitude but no limits.
 *
 * @see Scheffé (1953), Biometrika 40, 87-104 (from memory).
 *
 * @example Both ends alike on two diameters, at two places
 * ```ts
 * import { compareEnds } from "sagbook/zones/two_ends.ts";
 * import { equal } from "node:assert/strict";
 *
 * const cell = { sag: 0.714, readings: 2, plus: 0.714, minus: 0.714 };
 * const sets = [0, 90].map((diameterDegrees) => ({
 *   label: "", zeroing: "", diameterDegrees, cells: [cell, cell],
 * }));
 * const places = [{ distance: 30 }, { distance: 60 }] as unknown as
 *   Parameters<typeof compareEnds>[1];
 * equal(compareEnds(sets, places, 0, 4)?.amplitude, 0);
 * ```
 */
export function compareEnds(
  sets: readonly MeasuredSet[],
  places: readonly Place[],
  step: number,
  comparisons: number,
  scope: Scope = "any diameter",
  drift?: DriftLeft,
): EndsComparison | undefined {
  let pairs = 0;
  let outermost = 0;
  const all = sets.flatMap(({ cells, diameterDegrees }): EndsOfSet[] => {
    let [product, weight, lag] = [0, 0, 0];
    for (const { distance, difference, later } of endsOf(cells, places)) {
      pairs++;
      outermost = Math.max(outermost, distance);
      product += distance * difference;
      weight += distance * distance;
      lag += distance * later;
    }
    return weight > 0
      ? [{ product, weight, lag, degrees: diameterDegrees }]
      : [];
  });
  if (all.length === 0) return undefined;
  const looks = directionsOf(all, scope);
  const fit = fitDirection(looks);
  const { parameters, a, b, residual } = fit;
  const size = Math.hypot(a, b);
  const dof = looks.length - parameters;
  const amplitude = size * outermost;
  const known = all.some(({ degrees }) => degrees !== undefined);
  const toward = ((Math.atan2(b, a) * 180 / Math.PI) + 360) % 360;
  const base = {
    pairs,
    dof,
    amplitude,
    ...(known && size > 0 ? { towardDegrees: toward } : {}),
    allDirections: parameters === 2,
  };
  if (dof < 1) return base;
  const variance = residual / dof;
  const error = (along: number): number =>
    outermost * Math.sqrt(Math.max(0, along) * variance);
  // Weighted by distance squared, the variance is that of one difference.
  const rounding = step === 0
    ? 0
    : survivingRounding(variance / (step * step), dof, chiSquareUpper5(dof));
  // What a unit of drift does to the fitted amplitude.
  const lag = fitDirection(looks.map((look) => ({ ...look, slope: look.lag })));
  const moved = drift === undefined ? 0 : outermost * Math.hypot(lag.a, lag.b);
  const half = (scatter: number, tail: number): number => {
    const hidden = roundingHalfWidth(tail) * step;
    return drift === undefined || moved === 0
      ? Math.hypot(scatter, hidden * rounding)
      : Math.hypot(
        scatter,
        hidden * rounding,
        moved * studentT(tail / 2, drift.dof) * drift.standardError,
        moved * hidden * drift.rounding,
      );
  };
  const tail = 0.05 / comparisons;
  const region = Math.sqrt(parameters * fUpper(tail, parameters, dof));
  const [worst, along] = [error(fit.worst), error(fit.along)];
  return {
    ...base,
    upper: amplitude + half(studentT(0.05, dof) * worst, 0.1),
    lower: Math.max(0, amplitude - half(region * along, tail)),
  };
}

/** The two ends at one distance of one set. */
interface Ends {
  readonly distance: number;
  readonly difference: number;
  /** How much later the plus end was read, in parts of the set. */
  readonly later: number;
}

/** The pairs of ends of one set, at one place or at two of one distance. */
function endsOf(
  cells: MeasuredSet["cells"],
  places: readonly Place[],
): readonly Ends[] {
  const found: Ends[] = [];
  cells.forEach((cell, place) => {
    if (cell?.plus === undefined) return;
    const { distance } = places[place];
    if (cell.minus !== undefined) {
      const { plus, minus, lag = 0 } = cell;
      found.push({ distance, difference: plus - minus, later: lag });
      return;
    }
    const other = cells.find((one, at) =>
      one?.minus !== undefined && one.plus === undefined &&
      Math.abs(places[at].distance - distance) <= SAME_DISTANCE
    );
    if (other === undefined) return;
    found.push({
      distance,
      difference: cell.plus - other.minus!,
      later: (cell.progress ?? 0) - (other.progress ?? 0),
    });
  });
  return found;
}

/** One slope for each diameter, or for each set where that is the unit. */
function directionsOf(
  all: readonly EndsOfSet[],
  scope: Scope,
): readonly Direction[] {
  const groups = new Map<string, EndsOfSet[]>();
  all.forEach((one, index) => {
    const key = one.degrees === undefined ? `set ${index}` : `${one.degrees}`;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  });
  const merged = scope === "any diameter" && groups.size > 1
    ? [...groups.values()]
    : all.map((one) => [one]);
  return merged.map((group): Direction => {
    const sum = (key: "product" | "weight" | "lag"): number =>
      group.reduce((total, one) => total + one[key], 0);
    const weight = sum("weight");
    return {
      slope: sum("product") / weight,
      lag: sum("lag") / weight,
      weight: weight / group.length,
      radians: (group[0].degrees ?? 0) * Math.PI / 180,
    };
  });
}
