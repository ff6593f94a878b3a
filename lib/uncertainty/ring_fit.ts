/**
 * Whether a ring stands safely on a flat and on the work.
 *
 * @module
 */
import { contactCircleRadius } from "../geometry/contact_circle.ts";
import { reach } from "../geometry/reach.ts";
import type { ReferenceFlat, Ring } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import { type Millimetres, millimetres } from "../units/length.ts";

/** How a ring stands on one surface. */
export interface Stand {
  /** Whether it stands, with all feet. */
  readonly fits: boolean;
  /** Diameter in mm over the outermost points it touches. */
  readonly needed: Millimetres;
  /** Diameter there is in mm; absent when nobody stated it. */
  readonly available?: Millimetres;
}

/** How a ring stands on its flat and on the work. */
export interface RingFit {
  /** On the reference flat; absent when there is none. */
  readonly flat?: Stand;
  /** At the centre of the work, inside bevel and margin. */
  readonly work: Stand;
  /**
   * How far from the centre the ring may go in mm, in its usual direction;
   * 0 when it fits the centre only, absent when it does not fit at all.
   */
  readonly reach?: Millimetres;
}

/**
 * Finds whether a ring fits the flat it is zeroed on and the work.
 *
 * @param ring The ring.
 * @param piece The work: diameter, bevel, margin and form.
 * @param radius Radius of curvature of the work in mm, as expected.
 * @param flat The reference flat; its size is taken as a diameter (for a
 * square, its side).
 * @returns Fits, with the diameters that decide.
 *
 * @example A ring of 60 mm on a 300 mm disc and on a 120 mm flat
 * ```ts
 * import { ringFit } from "sagbook/uncertainty/ring_fit.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const ring = {
 *   shape: { kind: "balls", circleRadius: mm(60), ballRadius: mm(6.35), probeOffset: mm(0) },
 *   foot: { kind: "foot out" },
 * } as const;
 * const piece = { form: "concave", diameter: mm(300), bevel: mm(1), margin: mm(1) } as const;
 * const flat = { id: "F", size: mm(119) };
 * const found = ringFit(ring, piece, mm(3000), flat);
 * equal(found.work.fits, true);
 * equal(found.flat?.fits, false);
 * equal(found.reach?.toFixed(0), "88");
 * ```
 */
export function ringFit(
  ring: Pick<Ring, "shape" | "foot">,
  piece: Pick<Piece, "form" | "diameter" | "bevel" | "margin">,
  radius: Millimetres,
  flat?: ReferenceFlat,
): RingFit {
  const { shape, foot } = ring;
  const { form, diameter, bevel, margin } = piece;
  const usable = millimetres(diameter / 2 - bevel - margin);
  const needed = millimetres(2 * contactCircleRadius(shape, form, radius));
  const available = millimetres(2 * usable);
  const fits = needed <= available;
  const farthest = reach(shape, form, radius, usable, OUTWARD[foot.kind]);
  const onFlat = diameterOnFlat(shape);
  return {
    ...(flat === undefined ? {} : {
      flat: {
        fits: flat.size === undefined || onFlat <= flat.size,
        needed: onFlat,
        ...(flat.size === undefined ? {} : { available: flat.size }),
      },
    }),
    work: { fits, needed, available },
    ...(farthest === undefined ? {} : { reach: farthest }),
  };
}

/**
 * Finds the diameter a ring needs on a flat.
 *
 * @param shape Its feet.
 * @returns Diameter in mm over the outermost points it touches.
 *
 * @example
 * ```ts
 * import { diameterOnFlat } from "sagbook/uncertainty/ring_fit.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(diameterOnFlat({ kind: "edge", innerRadius: mm(24), outerRadius: mm(25) }), 50);
 * ```
 */
export function diameterOnFlat(shape: Ring["shape"]): Millimetres {
  return millimetres(
    shape.kind === "edge"
      ? 2 * shape.outerRadius
      : shape.kind === "bar"
      ? shape.span
      : 2 * shape.circleRadius,
  );
}

/** Angle of foot 1 from the outward radius where a name says it. */
const OUTWARD: Readonly<Record<string, number>> = {
  "foot out": 0,
  "feet out": 180,
};
