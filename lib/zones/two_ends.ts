/**
 * The two ends of a diameter, compared before they are merged.
 *
 * @module
 */
import { fQuantile } from "../statistics/f_distribution.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { roundingHalfWidth } from "./display_floor.ts";
import type { Place } from "./place.ts";
import type { MeasuredSet } from "./set_table.ts";

/** How the readings at the two ends of diameters differ. */
export interface EndsComparison {
  /** How many pairs of ends went in. */
  readonly pairs: number;
  /** Degrees of freedom left for their scatter. */
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

interface End {
  readonly difference: number;
  readonly distance: number;
  readonly direction: number;
}

/**
 * Compares the sags at the two ends of the diameters of a session.
 *
 * Wear like coma, `C ρ³ cos θ`, changes the sag at offset c by `2 C c r² cos θ`
 * and so with opposite signs at the two ends: their difference is
 * `c (A cos θ + B sin θ)`, fitted by least squares through every pair of ends
 * read in one set. Averaging the ends first would hide it.
 *
 * @param sets The sets of the session.
 * @param places The places, in the order of the sets' cells.
 * @param step Display step in mm.
 * @param comparisons How many statements share the 5 %, this one included.
 * @returns Undefined when no set read both ends of a place in one way of
 * standing. Without a degree of freedom there is an amplitude but no limits.
 *
 * @see Draper and Smith, Applied Regression Analysis, on joint confidence
 * regions (from memory).
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
): EndsComparison | undefined {
  const ends: End[] = [];
  for (const { cells, diameterDegrees } of sets) {
    cells.forEach((cell, place) => {
      if (cell?.plus === undefined || cell.minus === undefined) return;
      ends.push({
        difference: cell.plus - cell.minus,
        distance: places[place].distance,
        direction: (diameterDegrees ?? 0) * Math.PI / 180,
      });
    });
  }
  if (ends.length === 0) return undefined;
  const outermost = Math.max(...ends.map((end) => end.distance));
  const fit = fitDirection(ends);
  const { parameters, covariance, a, b } = fit;
  const size = Math.hypot(a, b);
  const dof = ends.length - parameters;
  const amplitude = size * outermost;
  const known = sets.some((set) => set.diameterDegrees !== undefined);
  const toward = ((Math.atan2(b, a) * 180 / Math.PI) + 360) % 360;
  const base = {
    pairs: ends.length,
    dof,
    amplitude,
    ...(known && size > 0 ? { towardDegrees: toward } : {}),
    allDirections: parameters === 2,
  };
  if (dof < 1) return base;
  let residual = 0;
  for (const { difference, distance, direction } of ends) {
    const fitted = distance *
      (a * Math.cos(direction) + b * Math.sin(direction));
    residual += (difference - fitted) ** 2;
  }
  const variance = residual / dof;
  const [ca, cb] = size > 0
    ? [a / size, b / size]
    : [Math.SQRT1_2, Math.SQRT1_2];
  const along = ca * ca * covariance[0] + 2 * ca * cb * covariance[1] +
    cb * cb * covariance[2];
  const standardError = outermost * Math.sqrt(Math.max(0, along) * variance);
  const region = Math.sqrt(
    parameters * fQuantile(0.05 / comparisons, parameters, dof, "upper"),
  );
  const half = (factor: number, tail: number): number =>
    Math.hypot(factor * standardError, roundingHalfWidth(tail) * step);
  return {
    ...base,
    upper: amplitude + half(studentTQuantile(0.05, dof, "upper"), 0.1),
    lower: Math.max(0, amplitude - half(region, 0.05 / comparisons)),
  };
}

/** Least squares for `distance (a cos + b sin)`, or along one line only. */
function fitDirection(ends: readonly End[]): {
  parameters: 1 | 2;
  a: number;
  b: number;
  covariance: readonly [number, number, number];
} {
  let [xx, xy, yy, xe, ye] = [0, 0, 0, 0, 0];
  for (const { difference, distance, direction } of ends) {
    const x = distance * Math.cos(direction);
    const y = distance * Math.sin(direction);
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xe += x * difference;
    ye += y * difference;
  }
  const determinant = xx * yy - xy * xy;
  if (determinant > 1e-9 * (xx + yy) ** 2) {
    return {
      parameters: 2,
      a: (yy * xe - xy * ye) / determinant,
      b: (xx * ye - xy * xe) / determinant,
      covariance: [yy / determinant, -xy / determinant, xx / determinant],
    };
  }
  const { direction } = ends[0];
  const [cos, sin] = [Math.cos(direction), Math.sin(direction)];
  const total = xx + yy;
  const slope = (xe * cos + ye * sin) / total;
  return {
    parameters: 1,
    a: slope * cos,
    b: slope * sin,
    covariance: [cos * cos / total, cos * sin / total, sin * sin / total],
  };
}
