/**
 * What three feet and a probe read of a departure from a sphere.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";

/**
 * A departure from a sphere in mm over the work's own axes, counted in the
 * direction in which the sag of the surface grows: up at the rim of concave
 * work, down at the rim of convex work.
 */
export type Departure = (x: number, y: number) => number;

/** Where a gauge stands, and how it is turned. */
export interface GaugePlace {
  /** Radius of the circle the feet touch on, in mm. */
  readonly circleRadius: Millimetres;
  /** Signed distance of the axis from the centre along the diameter, in mm. */
  readonly offset: Millimetres;
  /** Direction of the diameter in the work's axes, in degrees. */
  readonly diameterDegrees: number;
  /** Direction of foot 1 in the work's axes, in degrees. */
  readonly footDegrees: number;
}

const RADIANS = Math.PI / 180;

/**
 * Finds the change of a reading that a departure from the sphere makes.
 *
 * To first order a gauge with three feet at equal spacings and its probe at
 * their centre reads `m = mean of δ under the feet − δ at the probe`: the mean
 * curvature under it. Exact for what it says; exact contact differs by about
 * 1e-3 of the amplitude away from the centre, because the gauge is tilted.
 *
 * @param departure δ(x, y), in mm.
 * @param place Foot circle in mm, offset in mm and directions in degrees.
 * @returns The change of sag in mm.
 *
 * @example Astigmatism is invisible
 * ```ts
 * import { threeFootMean } from "sagbook/geometry/three_foot_mean.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { ok } from "node:assert/strict";
 *
 * const place = {
 *   circleRadius: mm(60),
 *   offset: mm(70),
 *   diameterDegrees: 25,
 *   footDegrees: 40,
 * };
 * ok(Math.abs(threeFootMean((x, y) => 1e-6 * (x * x - y * y), place)) < 1e-16);
 * ```
 */
export function threeFootMean(
  departure: Departure,
  place: GaugePlace,
): Millimetres {
  const along = place.diameterDegrees * RADIANS;
  const x = place.offset * Math.cos(along);
  const y = place.offset * Math.sin(along);
  let sum = 0;
  for (const turn of [0, 120, 240]) {
    const angle = (place.footDegrees + turn) * RADIANS;
    sum += departure(
      x + place.circleRadius * Math.cos(angle),
      y + place.circleRadius * Math.sin(angle),
    );
  }
  return millimetres(sum / 3 - departure(x, y));
}

/**
 * Finds the change of a reading per unit of an even term a_p ρᵖ.
 *
 * The three-foot mean of ρᵖ less ρᵖ at the probe. The second power gives r² at
 * every place; the fourth r⁴ + 4c² r², whatever the direction; from the sixth
 * on the direction of the feet matters.
 *
 * @param power Even power p, 2 or more.
 * @param circleRadius Radius r of the circle the feet touch on, in mm.
 * @param offset Offset c of the gauge's axis in mm, of either sign.
 * @param relativeDegrees Angle of foot 1 from the outward radius, in degrees.
 * @returns The response in mmᵖ: mm of sag per (1/mm^(p−1)) of the coefficient.
 * @throws {RangeError} If the power is not an even whole number, 2 or more.
 *
 * @example
 * ```ts
 * import { evenTermResponse } from "sagbook/geometry/three_foot_mean.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(Math.round(evenTermResponse(4, mm(2), mm(3), 17)), 2 ** 4 + 4 * 9 * 4);
 * ```
 */
export function evenTermResponse(
  power: number,
  circleRadius: Millimetres,
  offset: Millimetres,
  relativeDegrees: number,
): number {
  if (!(Number.isInteger(power) && power >= 2 && power % 2 === 0)) {
    throw new RangeError(
      `Cannot find the response to a term as its power must be even and at least 2: current value is ${power}`,
    );
  }
  const half = power / 2;
  const centre = offset * offset;
  let sum = 0;
  for (const turn of [0, 120, 240]) {
    const cosine = Math.cos((relativeDegrees + turn) * RADIANS);
    // u^h − c^h = (u − c)(u^(h−1) + … + c^(h−1)) keeps its digits at large c.
    const step = circleRadius *
      (circleRadius + 2 * Math.abs(offset) * cosine);
    let powers = 0;
    for (let k = 0; k < half; k++) {
      powers += (centre + step) ** (half - 1 - k) * centre ** k;
    }
    sum += step * powers;
  }
  return sum / 3;
}
