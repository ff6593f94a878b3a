/**
 * The glass that is left to grind away.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import { surfaceSag, volumeBetweenRadii } from "../geometry/surface_sag.ts";
import type { Millimetres } from "../units/length.ts";

/** Depth and volume between two radii; all at least 0. */
export interface DepthToGo {
  /** What must happen to the radius. */
  readonly change: "shorten" | "lengthen" | "none";
  /** Where the most glass goes. */
  readonly where: "centre" | "edge";
  /** Depth to grind there, in mm. */
  readonly depth: number;
  /** Volume of glass, in mm³. */
  readonly volume: number;
  /** Sag over the half diameter now, in mm. */
  readonly sag: number;
  /** Sag wanted, in mm. */
  readonly targetSag: number;
}

/**
 * Finds depth and volume of glass between a radius and its target.
 *
 * A concave surface grows shorter by deepening its centre and longer by
 * working down its edge, a convex one the other way about. The least glass is
 * counted: the place that need not go stays where it is. What a finer grade
 * must take off everywhere comes on top.
 *
 * @param form Which way the surface curves.
 * @param radius Radius now, in mm.
 * @param target Radius wanted, in mm.
 * @param halfDiameter Half the diameter of the work, in mm.
 * @returns Depth and volume, neither below 0.
 * @throws {RangeError} If a radius is smaller than the half diameter.
 *
 * @see Archimedes, On the Sphere and Cylinder, book II, proposition 2.
 *
 * @example From 3100 to 3000 mm on a 300 mm disc
 * ```ts
 * import { depthToGo } from "sagbook/fabrication/depth_to_go.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const { depth, volume, where } = depthToGo("concave", mm(3100), mm(3000), mm(150));
 * deepEqual([depth.toFixed(6), (volume / 1000).toFixed(3), where], ["0.121188", "4.286", "centre"]);
 * ```
 */
export function depthToGo(
  form: SurfaceForm,
  radius: Millimetres,
  target: Millimetres,
  halfDiameter: Millimetres,
): DepthToGo {
  const [sag, targetSag] = [radius, target].map((one) =>
    surfaceSag(one, halfDiameter) as number
  );
  const shorter = target < radius;
  const depth = Math.abs(targetSag - sag);
  const caps = Math.abs(volumeBetweenRadii(radius, target, halfDiameter));
  const where = shorter === (form === "concave") ? "centre" : "edge";
  return {
    change: target === radius ? "none" : shorter ? "shorten" : "lengthen",
    where,
    depth,
    // Either the difference of the caps, or the rest of the disc of that depth.
    volume: where === "centre"
      ? caps
      : Math.PI * halfDiameter * halfDiameter * depth - caps,
    sag,
    targetSag,
  };
}
