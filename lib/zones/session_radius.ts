/**
 * The radius of a session, from the sags of all its sets.
 *
 * @module
 */
import { groupPlaces } from "../numerics/group_places.ts";
import { forEachItem } from "../numerics/lazy_list.ts";
import type { Feet, SurfaceForm } from "../geometry/feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { radiusSensitivities } from "../geometry/sensitivities.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import {
  roundingHalfWidth,
  survivingRounding,
} from "../statistics/rounding_floor.ts";
import type { MeasuredSet } from "./set_table.ts";
import type { Interval } from "../statistics/interval.ts";

/** A mean sag over sets, and what repeating it showed. */
export interface MeanSag {
  /** Mean over zeroings of each zeroing's mean, in mm. */
  readonly sag: number;
  /** Number of readings. */
  readonly readings: number;
  /** Number of zeroings, which are the independent looks. */
  readonly zeroings: number;
  /** Standard deviation between zeroings, in mm, for two or more. */
  readonly deviation?: number;
  /** Standard error of the mean, in mm, for two or more. */
  readonly standardError?: number;
  /** Its degrees of freedom: looks less one. */
  readonly dof: number;
  /** Student interval of the mean at 95 %, rounding included, in mm. */
  readonly interval95?: Interval;
  /** Share of the rounding error that averaging has not removed, 0 to 1. */
  readonly rounding: number;
  /** How many people read, where each of them counts as one look. */
  readonly people?: number;
}

/** A radius with the interval that repeating alone supports. */
export interface RadiusOfSag {
  /** Radius of curvature in mm. */
  readonly radius: Millimetres;
  /** The 95 % interval of repeating alone (ring and gauge apart), in mm. */
  readonly interval95?: Interval;
  /** Change of radius for 1 mm of sag. */
  readonly perSag: number;
}

/**
 * Averages sags over zeroings.
 *
 * Readings of one zeroing share its zero, so only zeroings count as
 * independent looks at the radius. The interval joins Student's t with what
 * two roundings (reading and zero) may hide, as far as the scatter between
 * zeroings has not been shown to average it out.
 *
 * What one person reads too much goes into all of that person's zeroings, and
 * their number does not make it smaller. Given `personOf`, the mean is that of
 * the people's means, and its error comes from how these differ: with two
 * people, on one degree of freedom, a wide interval.
 *
 * @param sags Sag of each reading in mm.
 * @param zeroings The zeroing of each, in the same order.
 * @param step Display step in mm, at least 0.
 * @param personOf Who read each zeroing, where people count as the looks; of
 * no effect unless all zeroings have a name and there are two.
 * @returns The mean and its scatter.
 *
 * @see Satterthwaite (1946), Biometrics Bulletin 2, 110-114: in a balanced
 * nested design the mean square between people is what the mean's error needs.
 *
 * @example
 * ```ts
 * import { meanSag } from "sagbook/zones/session_radius.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { sag, dof } = meanSag([0.715, 0.716, 0.715], ["1", "2", "3"], 0);
 * equal(sag.toFixed(6), "0.715333");
 * equal(dof, 2);
 * ```
 */
export function meanSag(
  sags: readonly number[],
  zeroings: readonly string[],
  step: number,
  personOf?: ReadonlyMap<string, string>,
): MeanSag {
  const { keys, groupOf } = groupPlaces(
    sags.length,
    (index) => zeroings[index],
  );
  const means = new Array<number>(keys.length).fill(0);
  const counts = new Uint32Array(keys.length);
  groupOf.forEach((group, index) => {
    means[group] += sags[index];
    counts[group]++;
  });
  means.forEach((sum, group) => means[group] = sum / counts[group]);
  const n = means.length;
  const base = { readings: sags.length, zeroings: n };
  const alone = looksOf(means);
  if (alone.standardError === undefined) {
    return { ...base, sag: alone.mean, dof: 0, rounding: 1 };
  }
  const deviation = alone.standardError * Math.sqrt(n);
  const rounding = step === 0 ? 0 : survivingRounding(
    (deviation / step) ** 2,
    alone.dof,
    chiSquareQuantile(0.05, alone.dof, "upper"),
  );
  const people = personOf && looksOf(meansOfPeople(keys, means, personOf));
  const apart = people?.standardError !== undefined;
  const { mean: sag, standardError = 0, dof } = apart ? people : alone;
  const half = Math.hypot(
    studentTQuantile(0.025, dof, "upper") * standardError,
    roundingHalfWidth(0.05) * step * rounding,
  );
  return {
    ...base,
    sag,
    dof,
    deviation,
    standardError,
    interval95: { low: sag - half, high: sag + half },
    rounding,
    ...(apart ? { people: dof + 1 } : {}),
  };
}

/** Mean of independent looks; without a standard error where there is one. */
function looksOf(
  looks: readonly number[],
): { mean: number; standardError?: number; dof: number } {
  const n = looks.length;
  const mean = looks.reduce((sum, look) => sum + look, 0) / n;
  if (n < 2) return { mean, dof: 0 };
  const squares = looks.reduce((sum, look) => sum + (look - mean) ** 2, 0);
  const dof = n - 1;
  return { mean, standardError: Math.sqrt(squares / dof / n), dof };
}

/** The mean of each person's zeroings; none unless all have a name. */
function meansOfPeople(
  zeroings: readonly string[],
  means: readonly number[],
  personOf: ReadonlyMap<string, string>,
): readonly number[] {
  const people = new Map<string, { sum: number; count: number }>();
  for (let index = 0; index < means.length; index++) {
    const person = personOf.get(zeroings[index]);
    if (person === undefined) return [];
    const known = people.get(person) ?? { sum: 0, count: 0 };
    known.sum += means[index];
    known.count++;
    people.set(person, known);
  }
  return [...people.values()].map(({ sum, count }) => sum / count);
}

/**
 * Averages whole sets: each place of a set counts equally, each zeroing once.
 *
 * @param sets The sets.
 * @param step Display step in mm, at least 0.
 * @param personOf Who read each zeroing, where people count as the looks.
 * @returns The mean that is the sag of the surface if it is a sphere.
 *
 * @example
 * ```ts
 * import { meanOfSets } from "sagbook/zones/session_radius.ts";
 * import { equal } from "node:assert/strict";
 *
 * const cells = [0.71, 0.72].map((sag) => ({ sag, readings: 1 }));
 * equal(meanOfSets([{ label: "", zeroing: "1", cells }], 0).sag, 0.715);
 * ```
 */
export function meanOfSets(
  sets: readonly MeasuredSet[],
  step: number,
  personOf?: ReadonlyMap<string, string>,
): MeanSag {
  const sags: number[] = [];
  const zeroings: string[] = [];
  forEachItem(sets, ({ cells, zeroing }) => {
    for (const cell of cells) {
      if (!cell) continue;
      sags.push(cell.sag);
      zeroings.push(zeroing);
    }
  });
  return meanSag(sags, zeroings, step, personOf);
}

/**
 * Turns a mean sag and its interval into a radius.
 *
 * Averages are taken in sag and turned round once: averaging radii is biased
 * by about R (σ/s)² and hides the display step.
 *
 * @param mean The mean sag.
 * @param feet Feet of the ring, in mm.
 * @param form Which way the surface curves.
 * @returns Undefined when no radius belongs to the mean (not above 0, or above
 * the foot circle's radius); without an interval when its lower end reaches 0.
 *
 * @example
 * ```ts
 * import { meanSag, radiusOfSag } from "sagbook/zones/session_radius.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const mean = meanSag([0.715, 0.716, 0.715], ["1", "2", "3"], 0.001);
 * const feet = { circleRadius: mm(60), ballRadius: mm(3) };
 * equal(radiusOfSag(mean, feet, "concave")?.radius.toFixed(3), "2519.667");
 * ```
 */
export function radiusOfSag(
  mean: MeanSag,
  feet: Feet,
  form: SurfaceForm,
): RadiusOfSag | undefined {
  const { sag, interval95 } = mean;
  const limit = feet.circleRadius;
  if (!(sag > 0 && sag <= limit)) return undefined;
  const at = (value: number): Millimetres =>
    radiusFromSag(millimetres(value), feet, form);
  const radius = at(sag);
  const perSag = radiusSensitivities(millimetres(sag), feet, form).sag;
  const open = interval95 === undefined || interval95.low <= 0 ||
    interval95.high > limit;
  return {
    radius,
    perSag,
    ...(open
      ? {}
      : { interval95: { low: at(interval95.high), high: at(interval95.low) } }),
  };
}
