/**
 * How far from the centre of the work a ring may stand.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import { contactCircleRadius } from "./contact_circle.ts";
import type { SurfaceForm } from "./feet.ts";
import type { RingShape } from "./ring.ts";

/** The largest cosine between a foot and the outward radius. */
function mostOutward(shape: RingShape, relativeDegrees?: number): number {
  // A full edge has a point in every direction; an unknown direction may be the worst.
  if (shape.kind === "edge" || relativeDegrees === undefined) return 1;
  const turns = shape.kind === "bar" ? [0, 180] : [0, 120, 240];
  return Math.max(
    ...turns.map((turn) => Math.cos((relativeDegrees + turn) * Math.PI / 180)),
  );
}

/**
 * Finds the largest offset at which every foot still stands on good surface.
 *
 * A foot whose direction makes the angle φ with the outward radius touches at
 * √(c² + r² + 2 c r cos φ) from the centre of the work; the outermost foot
 * must not pass `usableRadius`. One foot out (0°) gives `usable − r`. With the
 * direction unknown the smallest of all directions holds, which is that one.
 *
 * Laid out in the plane: on a sphere of radius R the true value is larger by
 * less than c r (c + r)/(2R²), 0.05 mm for 150 mm half diameter at 3000 mm.
 *
 * @param shape The ring or bar as made, lengths in mm.
 * @param form Which way the surface curves.
 * @param radius Radius of curvature in mm; a nominal one will do.
 * @param usableRadius Half the diameter less bevel and margin, in mm.
 * @param relativeDegrees Angle of foot 1 (or of the bar) from the outward
 * radius, as `relativeFootDegrees` finds it; leave it out when unknown.
 * @returns The reach in mm, or `undefined` when the feet do not even fit at
 * the centre.
 *
 * @example One foot out, two feet out, and unknown
 * ```ts
 * import { reach } from "sagbook/geometry/reach.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const ring = {
 *   kind: "balls",
 *   circleRadius: mm(60),
 *   ballRadius: mm(0),
 *   probeOffset: mm(0),
 * } as const;
 * equal(reach(ring, "concave", mm(3000), mm(148), 0), 88);
 * equal(reach(ring, "concave", mm(3000), mm(148), 180)?.toFixed(1), "108.6");
 * equal(reach(ring, "concave", mm(3000), mm(148)), 88);
 * ```
 */
export function reach(
  shape: RingShape,
  form: SurfaceForm,
  radius: Millimetres,
  usableRadius: Millimetres,
  relativeDegrees?: number,
): Millimetres | undefined {
  const r = contactCircleRadius(shape, form, radius);
  if (r > usableRadius) return undefined;
  // c² + 2 c r cos φ − (usable² − r²) = 0, solved without cancellation: the
  // outermost foot never points inwards.
  const along = r * mostOutward(shape, relativeDegrees);
  const room = (usableRadius - r) * (usableRadius + r);
  const root = Math.sqrt(along * along + room);
  return millimetres(room === 0 ? 0 : room / (root + along));
}
