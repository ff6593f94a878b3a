/**
 * The circle on which a ring touches the work.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { SurfaceForm } from "./feet.ts";
import type { RingShape } from "./ring.ts";

/**
 * Finds how far from the gauge's axis the feet touch the work.
 *
 * A ball touches where the line from the centre of curvature through its
 * centre meets the surface: at `r·R/(R − b)` on concave work and at
 * `r·R/(R + b)` on convex work. A sharp edge touches where it stands.
 *
 * Exact on a sphere with the probe at the circle's centre.
 *
 * @param shape The ring or bar as made, lengths in mm.
 * @param form Which way the surface curves.
 * @param radius Radius of curvature in mm; a nominal one will do.
 * @returns Radius of the contact circle in mm (half the distance between the
 * contacts of a bar).
 * @throws {RangeError} If a ball would not fit into the concave surface.
 *
 * @example A 6.35 mm ball on a 60 mm circle in a 3000 mm dish
 * ```ts
 * import { contactCircleRadius } from "sagbook/geometry/contact_circle.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const ring = {
 *   kind: "balls",
 *   circleRadius: mm(60),
 *   ballRadius: mm(6.35),
 *   probeOffset: mm(0),
 * } as const;
 * equal(contactCircleRadius(ring, "concave", mm(3000)).toFixed(3), "60.127");
 * ```
 */
export function contactCircleRadius(
  shape: RingShape,
  form: SurfaceForm,
  radius: Millimetres,
): Millimetres {
  if (shape.kind === "edge") {
    return form === "concave" ? shape.outerRadius : shape.innerRadius;
  }
  const circle = shape.kind === "bar" ? shape.span / 2 : shape.circleRadius;
  const q = form === "concave"
    ? radius - shape.ballRadius
    : radius + shape.ballRadius;
  if (q <= 0) {
    throw new RangeError(
      `Cannot find where the feet touch as the radius of curvature must exceed the ball radius of ${shape.ballRadius} mm: current value is ${radius} mm`,
    );
  }
  return millimetres(circle * radius / q);
}
