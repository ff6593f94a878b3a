/**
 * The plainest ring there is.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { RingShape } from "./ring.ts";

/**
 * Describes three balls on a circle with the probe at its centre.
 *
 * @param circleRadius Radius of the circle through the ball centres, in mm.
 * @param ballRadius Radius of the balls, in mm.
 * @returns The ring's shape.
 *
 * @example
 * ```ts
 * import { ballRing } from "sagbook/geometry/ball_ring.ts";
 * import { millimetres } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(ballRing(millimetres(60), millimetres(3)).probeOffset, 0);
 * ```
 */
export function ballRing(
  circleRadius: Millimetres,
  ballRadius: Millimetres,
): Extract<RingShape, { kind: "balls" }> {
  return {
    kind: "balls",
    circleRadius,
    ballRadius,
    probeOffset: millimetres(0),
  };
}
