/**
 * Smooth surfaces for the contact simulator: a height and its slopes.
 *
 * @module
 */

/** A surface at one place. */
export interface SurfacePoint {
  /** Height towards the gauge, in mm. */
  readonly height: number;
  /** Slope of the height along x. */
  readonly slopeX: number;
  /** Slope of the height along y. */
  readonly slopeY: number;
}

/**
 * A surface as its height towards the gauge over the work's own axes, in mm,
 * with its exact slopes.
 *
 * The height must have continuous slopes and must nowhere curve more sharply
 * than the balls that are to stand on it.
 */
export type ContactSurface = (x: number, y: number) => SurfacePoint;

const LEVEL: SurfacePoint = { height: 0, slopeX: 0, slopeY: 0 };

/**
 * The reference flat.
 *
 * @returns A height of 0 everywhere.
 *
 * @example
 * ```ts
 * import { flatSurface } from "sagbook/geometry/contact_surface.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(flatSurface(3, 4).height, 0);
 * ```
 */
export const flatSurface: ContactSurface = (
  _x: number,
  _y: number,
): SurfacePoint => LEVEL;

/**
 * Makes a concave conic of revolution with its vertex at the origin.
 *
 * `conic` 0 is a sphere. Outside the surface the height is NaN, and no gauge
 * can stand there.
 *
 * @param vertexRadius Vertex radius in mm, above 0.
 * @param conic Conic constant K; 0 for a sphere.
 * @returns The surface, rising from its vertex.
 * @throws {RangeError} If the radius is not above 0 or a number not finite.
 *
 * @example
 * ```ts
 * import { conicSurface } from "sagbook/geometry/contact_surface.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(conicSurface(13, 0)(3, 4).height, 1);
 * equal(conicSurface(1600, -1)(100, 0).slopeX, 0.0625);
 * ```
 */
export function conicSurface(
  vertexRadius: number,
  conic: number,
): ContactSurface {
  if (!(vertexRadius > 0 && Number.isFinite(vertexRadius + conic))) {
    throw new RangeError(
      `Cannot make a conic as its vertex radius must be above 0 mm and its constant finite: current value is ${vertexRadius} mm and ${conic}`,
    );
  }
  const curvature = 1 / vertexRadius;
  const bend = (1 + conic) * curvature * curvature;
  return (x, y) => {
    const square = x * x + y * y;
    const w = Math.sqrt(1 - bend * square);
    const slope = curvature / w;
    return {
      height: curvature * square / (1 + w),
      slopeX: slope * x,
      slopeY: slope * y,
    };
  };
}

/**
 * Makes a concave toric surface with its vertex at the origin.
 *
 * The arc of radius `radiusY` in the plane x = 0 swung about an axis that lies
 * `radiusX` above the vertex along y.
 *
 * @param radiusX Radius of curvature along x at the vertex, in mm, above 0.
 * @param radiusY Radius of curvature along y, in mm, above 0.
 * @returns The surface, rising from its vertex.
 * @throws {RangeError} If a radius is not finite and above 0.
 *
 * @example
 * ```ts
 * import { toricSurface } from "sagbook/geometry/contact_surface.ts";
 * import { equal } from "node:assert/strict";
 *
 * const toric = toricSurface(13, 25);
 * equal(toric(5, 0).height, 1);
 * equal(toric(0, 7).height, 1);
 * ```
 */
export function toricSurface(
  radiusX: number,
  radiusY: number,
): ContactSurface {
  for (const radius of [radiusX, radiusY]) {
    if (!(radius > 0 && Number.isFinite(radius))) {
      throw new RangeError(
        `Cannot make a toric surface as its radii must be finite and above 0 mm: current value is ${radius} mm`,
      );
    }
  }
  return (x, y) => {
    const across = Math.sqrt(radiusY * radiusY - y * y);
    const rise = y * y / (radiusY + across);
    const arm = radiusX - rise;
    const up = Math.sqrt(arm * arm - x * x);
    return {
      height: (rise * (2 * radiusX - rise) + x * x) / (radiusX + up),
      slopeX: x / up,
      slopeY: arm / up * y / across,
    };
  };
}

/**
 * Lays departures on a surface.
 *
 * @param base The surface without them.
 * @param departures What to add, each with its own slopes.
 * @returns Their sum, height by height and slope by slope.
 *
 * @example
 * ```ts
 * import { conicSurface, evenTerm, withDepartures } from "sagbook/geometry/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const worn = withDepartures(conicSurface(13, 0), evenTerm(2, 0.5));
 * equal(worn(3, 4).height, 13.5);
 * ```
 */
export function withDepartures(
  base: ContactSurface,
  ...departures: readonly ContactSurface[]
): ContactSurface {
  return (x, y) => {
    let { height, slopeX, slopeY } = base(x, y);
    for (const departure of departures) {
      const more = departure(x, y);
      height += more.height;
      slopeX += more.slopeX;
      slopeY += more.slopeY;
    }
    return { height, slopeX, slopeY };
  };
}

/**
 * Turns a surface inside out: concave work, departures and all, into convex.
 *
 * Departures stay counted in the direction in which the sag grows.
 *
 * @param surface A surface that rises from its vertex.
 * @returns The surface that falls from it by as much.
 *
 * @example
 * ```ts
 * import { conicSurface, insideOut } from "sagbook/geometry/contact_surface.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(insideOut(conicSurface(13, 0))(3, 4).height, -1);
 * ```
 */
export function insideOut(surface: ContactSurface): ContactSurface {
  return (x, y) => {
    const { height, slopeX, slopeY } = surface(x, y);
    return { height: -height, slopeX: -slopeX, slopeY: -slopeY };
  };
}
