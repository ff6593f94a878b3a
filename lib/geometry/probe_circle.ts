/**
 * The circle that stands for three feet when the probe is not at its centre.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";

/** A place in a plane, in mm. */
export interface PlanePoint {
  /** First coordinate in mm. */
  readonly x: Millimetres;
  /** Second coordinate in mm. */
  readonly y: Millimetres;
}

/**
 * Finds the weights that make a point the balance of three others.
 *
 * @param corners Three points, not in a line.
 * @param point The point to express by them.
 * @returns Three weights with sum 1; all are above 0 inside the triangle.
 * @throws {RangeError} If the three points lie in a line.
 *
 * @example The centre of a triangle weighs its corners alike
 * ```ts
 * import { barycentricWeights } from "sagbook/geometry/probe_circle.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const corners = [
 *   { x: mm(0), y: mm(0) },
 *   { x: mm(4), y: mm(0) },
 *   { x: mm(0), y: mm(4) },
 * ] as const;
 * deepEqual(barycentricWeights(corners, { x: mm(1), y: mm(1) }), [0.5, 0.25, 0.25]);
 * ```
 */
export function barycentricWeights(
  corners: readonly [PlanePoint, PlanePoint, PlanePoint],
  point: PlanePoint,
): readonly [number, number, number] {
  const [p, q, r] = corners;
  const doubleArea = (q.x - p.x) * (r.y - p.y) - (r.x - p.x) * (q.y - p.y);
  const longest = Math.max(
    Math.hypot(q.x - p.x, q.y - p.y),
    Math.hypot(r.x - p.x, r.y - p.y),
    Math.hypot(r.x - q.x, r.y - q.y),
  );
  if (!(Math.abs(doubleArea) > 1e-12 * longest * longest)) {
    throw new RangeError(
      `Cannot weigh three feet as they must not stand in a line: current value is an area of ${
        Math.abs(doubleArea) / 2
      } mm²`,
    );
  }
  const second =
    ((point.x - p.x) * (r.y - p.y) - (r.x - p.x) * (point.y - p.y)) /
    doubleArea;
  const third =
    ((q.x - p.x) * (point.y - p.y) - (point.x - p.x) * (q.y - p.y)) /
    doubleArea;
  return [1 - second - third, second, third];
}

/**
 * Finds the foot circle's radius to put into the sag formulas for three feet
 * anywhere round a probe.
 *
 * The square of it is the barycentric mean of the feet's squared distances
 * from the probe. With the probe at the circumcentre that is the circumradius;
 * `d` away from it, r² − d². The radius of curvature it leads to is short by
 * d²/(2R).
 *
 * @param feet Where the ball centres stand, in mm.
 * @param probe Where the probe stands, inside the circle through the feet.
 * @returns The radius in mm.
 * @throws {RangeError} If the feet stand in a line, or the probe stands on or
 * outside the circle through them.
 *
 * @see Steiner's power of a point.
 *
 * @example A probe 3 mm from the centre of a 5 mm circle
 * ```ts
 * import { circleRadiusAtProbe } from "sagbook/geometry/probe_circle.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = [
 *   { x: mm(5), y: mm(0) },
 *   { x: mm(-3), y: mm(4) },
 *   { x: mm(-3), y: mm(-4) },
 * ] as const;
 * equal(circleRadiusAtProbe(feet, { x: mm(0), y: mm(0) }), 5);
 * equal(circleRadiusAtProbe(feet, { x: mm(0), y: mm(3) }), 4);
 * ```
 */
export function circleRadiusAtProbe(
  feet: readonly [PlanePoint, PlanePoint, PlanePoint],
  probe: PlanePoint,
): Millimetres {
  const weights = barycentricWeights(feet, probe);
  let square = 0;
  feet.forEach((foot, i) => {
    square += weights[i] *
      ((foot.x - probe.x) ** 2 + (foot.y - probe.y) ** 2);
  });
  if (!(square > 0)) {
    throw new RangeError(
      `Cannot find a foot circle as the probe must stand inside the circle through the feet: current value is a mean square of ${square} mm²`,
    );
  }
  return millimetres(Math.sqrt(square));
}
