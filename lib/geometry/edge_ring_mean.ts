/**
 * What a sharp-edged ring reads of a departure from a sphere.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { SurfaceForm } from "./feet.ts";
import type { Departure, GaugePlace } from "./three_foot_mean.ts";

/** Directions looked at round the edge. */
const DIRECTIONS = 720;

type Triple = readonly [number, number, number];

const COSINES = Float64Array.from(
  { length: DIRECTIONS },
  (_, i) => Math.cos(2 * Math.PI * i / DIRECTIONS),
);
const SINES = Float64Array.from(
  { length: DIRECTIONS },
  (_, i) => Math.sin(2 * Math.PI * i / DIRECTIONS),
);

/** The plane through three heights on the unit circle, and its balance. */
function planeThrough(triple: Triple, heights: Float64Array) {
  const [i, j, k] = triple;
  const [ux, uy] = [COSINES[j] - COSINES[i], SINES[j] - SINES[i]];
  const [vx, vy] = [COSINES[k] - COSINES[i], SINES[k] - SINES[i]];
  const area = ux * vy - vx * uy;
  const second = (-COSINES[i] * vy + vx * SINES[i]) / area;
  const third = (-ux * SINES[i] + COSINES[i] * uy) / area;
  const [up, vp] = [heights[j] - heights[i], heights[k] - heights[i]];
  const alongX = (up * vy - vp * uy) / area;
  const alongY = (ux * vp - vx * up) / area;
  return {
    alongX,
    alongY,
    centre: heights[i] - alongX * COSINES[i] - alongY * SINES[i],
    leastWeight: Math.min(1 - second - third, second, third),
  };
}

/** Height at the centre of the lowest plane that lies on the heights. */
function restingHeight(heights: Float64Array): number {
  let triple: Triple = [0, DIRECTIONS / 3, 2 * DIRECTIONS / 3];
  let plane = planeThrough(triple, heights);
  for (let turn = 0; turn < 200; turn++) {
    let [worst, excess] = [-1, 1e-15];
    for (let i = 0; i < DIRECTIONS; i++) {
      const over = heights[i] - plane.centre - plane.alongX * COSINES[i] -
        plane.alongY * SINES[i];
      if (over > excess) [worst, excess] = [i, over];
    }
    if (worst < 0) break;
    const [i, j, k] = triple;
    let next: { triple: Triple; plane: typeof plane } | undefined;
    for (
      const candidate of [[worst, j, k], [i, worst, k], [i, j, worst]] as const
    ) {
      if (new Set(candidate).size < 3) continue;
      const found = planeThrough(candidate, heights);
      if (
        found.leastWeight >= -1e-12 &&
        (next === undefined || found.centre > next.plane.centre)
      ) next = { triple: candidate, plane: found };
    }
    if (next === undefined || next.plane.centre <= plane.centre) break;
    ({ triple, plane } = next);
  }
  return plane.centre;
}

/**
 * Finds the change of a reading that a departure makes under a sharp edge.
 *
 * The ring comes to rest on the two or three points of its edge that stand
 * highest towards it, so unlike three feet it does see astigmatism:
 * `δ = A ρ² cos 2θ` reads as |A| r² more on concave work and |A| r² less on
 * convex. To first order in δ, the edge looked at every half degree (2e-5 of
 * the amplitude of a threefold fault).
 *
 * @param departure δ(x, y) in mm, in the direction in which the sag grows.
 * @param place Radius of the touching edge in mm, offset in mm and direction
 * of the diameter in degrees; the direction of foot 1 does not matter.
 * @param form Which way the surface curves: which side the ring stands on.
 * @returns The change of sag in mm.
 *
 * @example
 * ```ts
 * import { edgeRingMean } from "sagbook/geometry/edge_ring_mean.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const place = {
 *   circleRadius: mm(50),
 *   offset: mm(0),
 *   diameterDegrees: 0,
 *   footDegrees: 0,
 * };
 * const bent = (x: number, y: number) => 1e-6 * (x * x - y * y);
 * equal(edgeRingMean(bent, place, "concave").toFixed(6), "0.002500");
 * ```
 */
export function edgeRingMean(
  departure: Departure,
  place: GaugePlace,
  form: SurfaceForm,
): Millimetres {
  const along = place.diameterDegrees * Math.PI / 180;
  const x = place.offset * Math.cos(along);
  const y = place.offset * Math.sin(along);
  const side = form === "concave" ? 1 : -1;
  const heights = Float64Array.from(
    { length: DIRECTIONS },
    (_, i) =>
      side * departure(
        x + place.circleRadius * COSINES[i],
        y + place.circleRadius * SINES[i],
      ),
  );
  return millimetres(side * restingHeight(heights) - departure(x, y));
}
