/**
 * The points of the work that a reading really sees.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import { contactCircleRadius } from "./contact_circle.ts";
import type { SurfaceForm } from "./feet.ts";
import type { PlanePoint } from "./probe_circle.ts";
import type { RingShape } from "./ring.ts";

/** Where the probe and the feet touch, in the work's axes. */
export interface ContactPoints {
  /** The probe. */
  readonly probe: PlanePoint;
  /** The feet; empty for a sharp edge, which touches all the way round. */
  readonly feet: readonly PlanePoint[];
}

/** Distances from the centre of the work at which a reading sees it. */
export interface ContactRadii {
  /** Of the probe, in mm. */
  readonly probe: Millimetres;
  /**
   * Of each foot in mm, the outermost first; empty for a sharp edge and for
   * feet of unknown direction.
   */
  readonly feet: readonly Millimetres[];
  /** The smallest distance a foot has or may have, in mm. */
  readonly innermost: Millimetres;
  /** The largest distance a foot has or may have, in mm. */
  readonly outermost: Millimetres;
}

const TURNS = { balls: [0, 120, 240], bar: [0, 180], edge: [] } as const;

/**
 * Finds where a gauge touches the work.
 *
 * Laid out in the plane: on a sphere of radius R the feet lie closer to the
 * centre by less than c r (c + r)/(2R²), 0.05 mm for 150 mm half diameter at
 * 3000 mm.
 *
 * @param shape The ring or bar as made, lengths in mm.
 * @param form Which way the surface curves.
 * @param radius Radius of curvature in mm; a nominal one will do.
 * @param offset Signed distance of the axis from the centre along the
 * diameter, in mm.
 * @param diameterDegrees Direction of the diameter in the work's axes.
 * @param footDegrees Direction of foot 1 (or of the bar) in the work's axes.
 * @returns Places in mm in the work's own axes.
 *
 * @example
 * ```ts
 * import { contactPoints } from "sagbook/geometry/contact_points.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const bar = { kind: "bar", span: mm(40), ballRadius: mm(0) } as const;
 * const { probe, feet } = contactPoints(bar, "concave", mm(900), mm(30), 0, 0);
 * equal(probe.x, 30);
 * equal(feet[0].x, 50);
 * ```
 */
export function contactPoints(
  shape: RingShape,
  form: SurfaceForm,
  radius: Millimetres,
  offset: Millimetres,
  diameterDegrees: number,
  footDegrees: number,
): ContactPoints {
  const r = contactCircleRadius(shape, form, radius);
  const along = diameterDegrees * Math.PI / 180;
  const x = offset * Math.cos(along);
  const y = offset * Math.sin(along);
  return {
    probe: { x: millimetres(x), y: millimetres(y) },
    feet: TURNS[shape.kind].map((turn) => {
      const angle = (footDegrees + turn) * Math.PI / 180;
      return {
        x: millimetres(x + r * Math.cos(angle)),
        y: millimetres(y + r * Math.sin(angle)),
      };
    }),
  };
}

/**
 * Finds how far from the centre of the work a reading sees it.
 *
 * @param shape The ring or bar as made, lengths in mm.
 * @param form Which way the surface curves.
 * @param radius Radius of curvature in mm; a nominal one will do.
 * @param offset Distance of the gauge's axis from the centre in mm, of either
 * sign.
 * @param relativeDegrees Angle of foot 1 (or of the bar) from the outward
 * radius, as `relativeFootDegrees` finds it; leave it out when unknown.
 * @returns Distances from the centre in mm, laid out in the plane.
 *
 * @example Two feet out at 85 mm
 * ```ts
 * import { contactRadii } from "sagbook/geometry/contact_points.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const ring = {
 *   kind: "balls",
 *   circleRadius: mm(60),
 *   ballRadius: mm(0),
 *   probeOffset: mm(0),
 * } as const;
 * const { feet } = contactRadii(ring, "concave", mm(3000), mm(85), 180);
 * deepEqual(feet.map(Math.round), [126, 126, 25]);
 * ```
 */
export function contactRadii(
  shape: RingShape,
  form: SurfaceForm,
  radius: Millimetres,
  offset: Millimetres,
  relativeDegrees?: number,
): ContactRadii {
  const r = contactCircleRadius(shape, form, radius);
  const c = Math.abs(offset);
  const probe = millimetres(c);
  if (shape.kind === "edge" || relativeDegrees === undefined) {
    return {
      probe,
      feet: [],
      innermost: millimetres(Math.abs(c - r)),
      outermost: millimetres(c + r),
    };
  }
  const { feet } = contactPoints(
    shape,
    form,
    radius,
    probe,
    0,
    relativeDegrees,
  );
  const distances = feet.map(({ x, y }) => millimetres(Math.hypot(x, y)))
    .sort((p, q) => q - p);
  return {
    probe,
    feet: distances,
    innermost: distances[distances.length - 1],
    outermost: distances[0],
  };
}
