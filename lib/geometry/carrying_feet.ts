/**
 * Which feet of a gauge carry it, where there are more than three.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { SurfaceForm } from "./feet.ts";
import { barycentricWeights } from "./probe_circle.ts";

/** The centre of one ball foot in the gauge's own axes, in mm. */
export interface CandidateFoot {
  /** From the probe's axis along x. */
  readonly x: Millimetres;
  /** From the probe's axis along y. */
  readonly y: Millimetres;
  /** Height; only differences between feet matter. */
  readonly z: Millimetres;
}

/** What the feet are to stand on. */
export type Ground =
  | { readonly kind: "flat" }
  | {
    readonly kind: "sphere";
    /** Which way it curves. */
    readonly form: SurfaceForm;
    /** Radius of the sphere of the ball centres in mm: R − b or R + b. */
    readonly centresRadius: Millimetres;
  };

/** How a gauge stands, feet counted from 0 as given. */
export type Standing =
  | {
    /** It stands firmly; every other foot hangs. */
    readonly kind: "stands";
    /** The feet that carry: three, or more that all touch. */
    readonly feet: readonly number[];
    /** How high each foot hangs, in mm, 0 for those that carry. */
    readonly gaps: readonly Millimetres[];
  }
  | {
    /** It tips between the triples named, as the hand leans. */
    readonly kind: "rocks";
    /** Every triple it can come to rest on. */
    readonly between: readonly (readonly [number, number, number])[];
  }
  | {
    /** The probe stands outside all its feet. */
    readonly kind: "falls";
  };

/** Gaps this small count as touching, in mm: a hundredth of any display's step. */
const TOUCHING = 1e-6;

type Space = readonly [number, number, number];
const minus = (a: Space, b: Space): Space => [
  a[0] - b[0],
  a[1] - b[1],
  a[2] - b[2],
];
const dot = (a: Space, b: Space) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Space, b: Space): Space => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Height of a point over the ground through three feet, along its normal. */
function heightOver(
  ground: Ground,
  [p, q, r]: readonly [Space, Space, Space],
): ((foot: Space) => number) | undefined {
  const [u, v] = [minus(q, p), minus(r, p)];
  const across = cross(u, v);
  const size = Math.hypot(...across);
  if (!(Math.abs(across[2]) > 1e-9 * Math.hypot(...u) * Math.hypot(...v))) {
    return undefined;
  }
  const up = across.map((part) =>
    part / size * Math.sign(across[2])
  ) as unknown as Space;
  if (ground.kind === "flat") return (foot) => dot(minus(foot, p), up);
  // The circumcentre of the three, and from there to the sphere's centre.
  const [uu, vv] = [dot(u, u), dot(v, v)];
  const towards = cross(
    [
      uu * v[0] - vv * u[0],
      uu * v[1] - vv * u[1],
      uu * v[2] - vv * u[2],
    ],
    across,
  );
  const middle = towards.map((part, i) =>
    p[i] + part / (2 * size * size)
  ) as unknown as Space;
  const arm = minus(middle, p);
  const { centresRadius, form } = ground;
  const square = centresRadius * centresRadius - dot(arm, arm);
  if (square < 0) return undefined;
  const rise = (form === "concave" ? 1 : -1) * Math.sqrt(square);
  const centre = middle.map((part, i) =>
    part + rise * up[i]
  ) as unknown as Space;
  return (foot) => {
    const distance = Math.hypot(...minus(foot, centre));
    return form === "concave"
      ? centresRadius - distance
      : distance - centresRadius;
  };
}

/**
 * Finds the three feet that carry a gauge, or that it rocks.
 *
 * Of all triples those count that enclose the probe's axis and leave every
 * other foot on or above the ground. One such triple: it stands. Several,
 * because the axis lies on the line between two feet that both share: it
 * rocks. All of their feet touching within 1e-6 mm: it stands on more than
 * three. The balls are alike; on a sphere the answer is exact.
 *
 * @param feet Ball centres in the gauge's own axes, three or more, in mm.
 * @param ground A flat, or the sphere of the ball centres.
 * @returns Which feet carry and how high the others hang; or the triples
 * between which it rocks; or that it falls.
 * @throws {RangeError} If there are fewer than three feet.
 *
 * @example Four feet at the corners of a square, one a hundredth too short
 * ```ts
 * import { carryingFeet } from "sagbook/geometry/carrying_feet.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const corner = (x: number, y: number, z: number) => ({ x: mm(x), y: mm(y), z: mm(z) });
 * const level = [corner(40, 40, 0), corner(-40, 40, 0), corner(-40, -40, 0)];
 * equal(carryingFeet([...level, corner(40, -40, 0.01)], { kind: "flat" }).kind, "rocks");
 * equal(carryingFeet([...level, corner(40, -40, 0)], { kind: "flat" }).kind, "stands");
 * ```
 */
export function carryingFeet(
  feet: readonly CandidateFoot[],
  ground: Ground,
): Standing {
  const count = feet.length;
  if (count < 3) {
    throw new RangeError(
      `Cannot stand a gauge as it must have at least three feet: current value is ${count} feet`,
    );
  }
  const places = feet.map(({ x, y, z }): Space => [x, y, z]);
  const origin = { x: millimetres(0), y: millimetres(0) };
  const found: {
    readonly triple: readonly [number, number, number];
    readonly heights: readonly number[];
  }[] = [];
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      for (let k = j + 1; k < count; k++) {
        const over = heightOver(ground, [places[i], places[j], places[k]]);
        if (over === undefined) continue;
        const weights = barycentricWeights([feet[i], feet[j], feet[k]], origin);
        const heights = places.map(over);
        if (Math.min(...weights) < -1e-9) continue;
        if (Math.min(...heights) < -TOUCHING) continue;
        found.push({ triple: [i, j, k], heights });
      }
    }
  }
  if (found.length === 0) return { kind: "falls" };
  const [{ heights }] = found;
  const firm = found.every(({ triple }) =>
    triple.every((foot) => Math.abs(heights[foot]) <= TOUCHING)
  );
  if (!firm) return { kind: "rocks", between: found.map((one) => one.triple) };
  const touching = heights.map((height) => Math.abs(height) <= TOUCHING);
  return {
    kind: "stands",
    feet: touching.flatMap((touches, foot) => touches ? [foot] : []),
    gaps: heights.map((height, foot) =>
      millimetres(touching[foot] ? 0 : height)
    ),
  };
}
