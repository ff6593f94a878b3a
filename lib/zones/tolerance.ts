/**
 * A sphericity tolerance, turned into a difference of sag.
 *
 * @module
 */
import type { Feet } from "../geometry/feet.ts";
import type { SphericityTolerance } from "../records/piece.ts";
import { type Millimetres, millimetres } from "../units/length.ts";

/** The tolerance as the gauge sees it. */
export interface SagTolerance {
  /** Largest difference of sag between two zones that is still good, in mm. */
  readonly sag: Millimetres;
  /** How the user stated it. */
  readonly stated: SphericityTolerance;
  /**
   * What one unit of sag difference is in the stated kind: 1 for sag,
   * `a⁴/(16 c² r²)` (three feet) for surface error of the shape a₄ρ⁴,
   * `2R²/r²` for radius.
   */
  readonly factor: number;
}

/** Where and on what the tolerance is to be judged. */
export interface ToleranceGround {
  /** Feet of the ring, in mm. */
  readonly feet: Feet;
  /** Half the clear diameter, in mm. */
  readonly halfDiameter: number;
  /** Distance of the outermost zone from the centre, in mm. */
  readonly outermost: number;
  /** Radius of curvature of the surface, in mm. */
  readonly radius: number;
  /**
   * How much a₄ρ⁴ raises the sag at offset c against the centre, in units of
   * `a₄ c² r²`: 4 for three feet or a ring (the default), 6 for a bar along
   * the radius, 2 for one across it.
   */
  readonly response?: number;
}

/**
 * Turns a sphericity tolerance into the largest difference of sag between two
 * zones.
 *
 * A tolerance in radius T is `T r²/(2R²)` of sag, to first order. One in surface error needs a
 * shape: it is taken as a₄ρ⁴ against its best sphere over the clear diameter,
 * for which a peak-to-valley P shows as `16 c² r² P/a⁴` (three feet) between the centre and
 * the outermost zone at c; zones closer together show less, so all pairs are
 * held to that one figure.
 *
 * @param stated The tolerance as the user gave it.
 * @param ground Ring, work and outermost zone.
 * @returns The tolerance in sag; undefined for a surface tolerance when only
 * the centre was read, since no difference then speaks of the surface.
 *
 * @example 0.5 µm of surface, ring of half the half diameter at half way
 * ```ts
 * import { sagTolerance } from "sagbook/zones/tolerance.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(75), ballRadius: mm(0) };
 * const ground = { feet, halfDiameter: 150, outermost: 75, radius: 3000 };
 * const stated = { statedAs: "surface", amount: mm(0.0005) } as const;
 * equal(sagTolerance(stated, ground)?.sag, 0.0005);
 * ```
 */
export function sagTolerance(
  stated: SphericityTolerance,
  ground: ToleranceGround,
): SagTolerance | undefined {
  const { feet, halfDiameter: a, outermost: c, radius: R, response = 4 } =
    ground;
  const r = feet.circleRadius;
  const factor = stated.statedAs === "sag"
    ? 1
    : stated.statedAs === "radius"
    ? 2 * R * R / (r * r)
    : a ** 4 / (4 * response * c * c * r * r);
  if (!Number.isFinite(factor)) return undefined;
  return { sag: millimetres(stated.amount / factor), stated, factor };
}
