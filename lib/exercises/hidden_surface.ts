/**
 * What an exercise hides under the ring.
 *
 * @module
 */
import {
  astigmatism,
  coma,
  turnedEdge,
} from "../geometry/contact_departures.ts";
import {
  conicSurface,
  type ContactSurface,
  withDepartures,
} from "../geometry/contact_surface.ts";

/** A shape to find, lengths in mm. */
export type HiddenSurface =
  | {
    /** Nothing is hidden. */
    readonly kind: "sphere";
  }
  | {
    /** A conic of revolution in place of the sphere. */
    readonly kind: "conic";
    /** Its conic constant: -1 a paraboloid, above 0 oblate. */
    readonly conic: number;
  }
  | {
    /** An edge turned down. */
    readonly kind: "turned edge";
    /** Width of the turned zone along the radius. */
    readonly width: number;
    /** Fall at the end of the clear diameter. */
    readonly depth: number;
  }
  | {
    /** Lopsided wear, `C ρ³ cos θ`. */
    readonly kind: "coma";
    /** How high its high side stands at the end of the clear diameter. */
    readonly rise: number;
    /** Direction of its high side in the work's axes, in degrees. */
    readonly degrees: number;
  }
  | {
    /** Two radii at right angles, `A ρ² cos 2θ`. */
    readonly kind: "astigmatism";
    /** How high its high diameter stands at the end of the clear diameter. */
    readonly rise: number;
    /** Direction of that diameter in the work's axes, in degrees. */
    readonly degrees: number;
  };

/** Names of the shapes. */
export type HiddenKind = HiddenSurface["kind"];

/** Every kind of hidden shape, in the order in which keys list them. */
export const HIDDEN_KINDS: readonly HiddenKind[] = [
  "sphere",
  "conic",
  "turned edge",
  "coma",
  "astigmatism",
];

/**
 * Makes the concave surface that an exercise hides, for exact contact.
 *
 * @param hidden The shape.
 * @param vertexRadius Radius of curvature at the vertex in mm, above 0.
 * @param halfDiameter Half the clear diameter in mm, above 0.
 * @returns Height and slopes.
 *
 * @example Lopsided wear stands high by its amount at one end of the rim
 * ```ts
 * import { hiddenShape } from "sagbook/exercises/hidden_surface.ts";
 * import { equal } from "node:assert/strict";
 *
 * const worn = hiddenShape({ kind: "coma", rise: 0.004, degrees: 0 }, 2520, 100);
 * const plain = hiddenShape({ kind: "sphere" }, 2520, 100);
 * equal((worn(100, 0).height - plain(100, 0).height).toFixed(9), "0.004000000");
 * ```
 */
export function hiddenShape(
  hidden: HiddenSurface,
  vertexRadius: number,
  halfDiameter: number,
): ContactSurface {
  const sphere = conicSurface(vertexRadius, 0);
  switch (hidden.kind) {
    case "sphere":
      return sphere;
    case "conic":
      return conicSurface(vertexRadius, hidden.conic);
    case "turned edge": {
      const { width, depth } = hidden;
      return withDepartures(sphere, turnedEdge({ halfDiameter, width, depth }));
    }
    case "coma":
      return withDepartures(
        sphere,
        coma(hidden.rise / halfDiameter ** 3, hidden.degrees),
      );
    case "astigmatism":
      return withDepartures(
        sphere,
        astigmatism(hidden.rise / halfDiameter ** 2, hidden.degrees),
      );
  }
}
