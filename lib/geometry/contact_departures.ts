/**
 * Departures from a sphere to lay on a surface of the contact simulator.
 *
 * @module
 */
import type { ContactSurface, SurfacePoint } from "./contact_surface.ts";

const NOTHING: SurfacePoint = { height: 0, slopeX: 0, slopeY: 0 };

/**
 * A term of revolution, `δ = a ρᵖ`.
 *
 * @param power Even power p, at least 2.
 * @param coefficient a in mm per mmᵖ.
 * @returns The departure.
 * @throws {RangeError} If the power is not an even whole number, 2 or more.
 *
 * @example
 * ```ts
 * import { evenTerm } from "sagbook/geometry/contact_departures.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(evenTerm(4, 0.5)(1, 2).height, 12.5);
 * ```
 */
export function evenTerm(power: number, coefficient: number): ContactSurface {
  if (!(Number.isInteger(power) && power >= 2 && power % 2 === 0)) {
    throw new RangeError(
      `Cannot make a term of revolution as its power must be even and at least 2: current value is ${power}`,
    );
  }
  const half = power / 2;
  return (x, y) => {
    const square = x * x + y * y;
    const below = coefficient * square ** (half - 1);
    return {
      height: below * square,
      slopeX: power * below * x,
      slopeY: power * below * y,
    };
  };
}

/** A departure turned about the axis of the work. */
function turned(departure: ContactSurface, degrees: number): ContactSurface {
  if (degrees === 0) return departure;
  const cosine = Math.cos(degrees * Math.PI / 180);
  const sine = Math.sin(degrees * Math.PI / 180);
  return (x, y) => {
    const { height, slopeX, slopeY } = departure(
      cosine * x + sine * y,
      cosine * y - sine * x,
    );
    return {
      height,
      slopeX: cosine * slopeX - sine * slopeY,
      slopeY: sine * slopeX + cosine * slopeY,
    };
  };
}

/**
 * Astigmatism, `δ = A ρ² cos 2(θ − θ₀)`.
 *
 * @param coefficient A in 1/mm.
 * @param degrees Direction θ₀ of its high diameter in the work's axes.
 * @returns The departure.
 *
 * @example
 * ```ts
 * import { astigmatism } from "sagbook/geometry/contact_departures.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(astigmatism(0.5)(2, 0).height, 2);
 * equal(astigmatism(0.5)(0, 2).height, -2);
 * ```
 */
export function astigmatism(
  coefficient: number,
  degrees: number = 0,
): ContactSurface {
  return turned((x, y) => ({
    height: coefficient * (x * x - y * y),
    slopeX: 2 * coefficient * x,
    slopeY: -2 * coefficient * y,
  }), degrees);
}

/**
 * Coma-like wear, `δ = C ρ³ cos(θ − θ₀)`.
 *
 * @param coefficient C in 1/mm².
 * @param degrees Direction θ₀ of its high side in the work's axes.
 * @returns The departure.
 *
 * @example
 * ```ts
 * import { coma } from "sagbook/geometry/contact_departures.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(coma(0.5)(2, 0).height, 4);
 * equal(coma(0.5)(-2, 0).height, -4);
 * ```
 */
export function coma(coefficient: number, degrees: number = 0): ContactSurface {
  return turned((x, y) => {
    const square = x * x + y * y;
    return {
      height: coefficient * x * square,
      slopeX: coefficient * (square + 2 * x * x),
      slopeY: coefficient * 2 * x * y,
    };
  }, degrees);
}

/**
 * Trefoil, `δ = T ρ³ cos 3(θ − θ₀)`.
 *
 * @param coefficient T in 1/mm².
 * @param degrees Direction θ₀ of one of its high sides in the work's axes.
 * @returns The departure.
 *
 * @example
 * ```ts
 * import { trefoil } from "sagbook/geometry/contact_departures.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(trefoil(0.5)(2, 0).height, 4);
 * ```
 */
export function trefoil(
  coefficient: number,
  degrees: number = 0,
): ContactSurface {
  return turned((x, y) => ({
    height: coefficient * x * (x * x - 3 * y * y),
    slopeX: 3 * coefficient * (x * x - y * y),
    slopeY: -6 * coefficient * x * y,
  }), degrees);
}

/** The shape of a turned edge. */
export interface TurnedEdge {
  /** Half the clear diameter, where the edge is deepest, in mm. */
  readonly halfDiameter: number;
  /** Width of the turned zone along the radius, in mm, above 0. */
  readonly width: number;
  /** Fall at the rim in mm, above 0 for an edge turned down. */
  readonly depth: number;
  /**
   * How it begins: 3 (the default) rolls off with continuous curvature, 2 with
   * continuous slope only.
   */
  readonly power?: 2 | 3;
}

/**
 * A turned edge that rolls off smoothly.
 *
 * Nothing up to `width` from the rim, then `δ = −depth · tᵖ` with t running
 * from 0 to 1 at the rim, and on beyond it.
 *
 * @param edge Where it begins, how deep it goes, lengths in mm.
 * @returns The departure.
 * @throws {RangeError} If the width is not above 0 or wider than the half
 * diameter.
 *
 * @example
 * ```ts
 * import { turnedEdge } from "sagbook/geometry/contact_departures.ts";
 * import { equal } from "node:assert/strict";
 *
 * const edge = turnedEdge({ halfDiameter: 150, width: 20, depth: 0.008 });
 * equal(edge(130, 0).height, 0);
 * equal(edge(140, 0).height, -0.001);
 * ```
 */
export function turnedEdge(edge: TurnedEdge): ContactSurface {
  const { halfDiameter, width, depth, power = 3 } = edge;
  if (!(width > 0 && width <= halfDiameter)) {
    throw new RangeError(
      `Cannot make a turned edge as its width must be above 0 mm and at most the half diameter of ${halfDiameter} mm: current value is ${width} mm`,
    );
  }
  const start = halfDiameter - width;
  return (x, y) => {
    const distance = Math.hypot(x, y);
    if (distance <= start) return NOTHING;
    const t = (distance - start) / width;
    const below = -depth * t ** (power - 1);
    const slope = power * below / (width * distance);
    return { height: below * t, slopeX: slope * x, slopeY: slope * y };
  };
}

/** The shape of a hole in the middle. */
export interface DeepCentre {
  /** Radius at which it ends, in mm, above 0. */
  readonly radius: number;
  /** How deep it is at the centre in mm, above 0 for a hole. */
  readonly depth: number;
}

/**
 * A smooth hole in the middle, `δ = −depth · (1 − ρ²/w²)³` inside radius w.
 *
 * Height, slope and curvature all end at 0 where it ends.
 *
 * @param hole How wide and how deep, lengths in mm.
 * @returns The departure.
 * @throws {RangeError} If the radius is not above 0.
 *
 * @example
 * ```ts
 * import { deepCentre } from "sagbook/geometry/contact_departures.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(deepCentre({ radius: 60, depth: 0.008 })(0, 0).height, -0.008);
 * equal(deepCentre({ radius: 60, depth: 0.008 })(0, 60).height, 0);
 * ```
 */
export function deepCentre(hole: DeepCentre): ContactSurface {
  const { radius, depth } = hole;
  if (!(radius > 0)) {
    throw new RangeError(
      `Cannot make a hole as its radius must be above 0 mm: current value is ${radius} mm`,
    );
  }
  const square = radius * radius;
  return (x, y) => {
    const inside = 1 - (x * x + y * y) / square;
    if (inside <= 0) return NOTHING;
    const slope = 6 * depth * inside * inside / square;
    return {
      height: -depth * inside ** 3,
      slopeX: slope * x,
      slopeY: slope * y,
    };
  };
}
