/**
 * The feet that the sag formulas need, from a ring as made.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Feet, SurfaceForm } from "./feet.ts";
import type { RingShape } from "./ring.ts";

function folded(circle: Millimetres, probeOffset: Millimetres): Millimetres {
  if (Math.abs(probeOffset) >= circle) {
    throw new RangeError(
      `Cannot use a ring as its probe must stand inside the foot circle radius of ${circle} mm: current value is ${probeOffset} mm`,
    );
  }
  return millimetres(
    Math.sqrt((circle - probeOffset) * (circle + probeOffset)),
  );
}

/**
 * Finds the foot circle and ball size to put into the sag formulas.
 *
 * Balls: the circle through their centres. When the probe stands `d` from the
 * circle's centre, r² gives way to the barycentric mean of the feet's squared
 * distances from the probe, which is r² − d² whatever the spacings and the
 * direction of d. Sharp-edged ring: a concave surface touches the outer edge,
 * a convex one the inner edge, and there is no ball. Bar: half its span.
 *
 * With the probe off centre the radius found is short by d²/(2R), 0.2 µm for
 * d = 1 mm at 3000 mm, when the probe's tip is a ball like the feet's; a
 * pointed tip shows d² b/(2R²) more sag. Everything else is exact on a sphere.
 *
 * @param shape The ring or bar as made, lengths in mm.
 * @param form Which way the surface curves; it matters for a sharp edge only.
 * @returns Circle and ball radius in mm.
 * @throws {RangeError} If the probe stands on or outside the foot circle.
 *
 * @see Steiner's power of a point: Σ wᵢ |Fᵢ − P|² = r² − d² when Σ wᵢ Fᵢ = P
 * and Σ wᵢ = 1.
 *
 * @example A sharp-edged ring on concave and on convex work
 * ```ts
 * import { effectiveFeet } from "sagbook/geometry/effective_feet.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const ring = { kind: "edge", innerRadius: mm(24), outerRadius: mm(25) } as const;
 * equal(effectiveFeet(ring, "concave").circleRadius, 25);
 * equal(effectiveFeet(ring, "convex").circleRadius, 24);
 * ```
 */
export function effectiveFeet(shape: RingShape, form: SurfaceForm): Feet {
  switch (shape.kind) {
    case "balls":
      return {
        circleRadius: folded(shape.circleRadius, shape.probeOffset),
        ballRadius: shape.ballRadius,
      };
    case "edge":
      return {
        circleRadius: form === "concave"
          ? shape.outerRadius
          : shape.innerRadius,
        ballRadius: millimetres(0),
      };
    case "bar":
      return {
        circleRadius: millimetres(shape.span / 2),
        ballRadius: shape.ballRadius,
      };
  }
}
