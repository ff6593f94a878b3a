/**
 * What to do next at the bench: read more, bring it to a sphere, or go on.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import { againstTarget, type RadiusRange } from "./against_target.ts";

/** Which of the two lies on top while grinding. */
export type Position = "mirror on top" | "tool on top" | "alternate";

/** One line of the table of strokes. */
export interface Stroke {
  /** Which lies on top. */
  readonly position: Position;
  /** The stroke in the trade's words. */
  readonly stroke: string;
}

/** The bench's table of strokes; a shop may replace any line with its own. */
export interface StrokeTable {
  /** The centre reads deeper than the edge, and the radius is not too short. */
  readonly deepCentre: Stroke;
  /** The centre reads deeper than the edge, and the radius is too short. */
  readonly deepCentreShort: Stroke;
  /** The edge reads deeper than the centre, and the radius is not too long. */
  readonly deepEdge: Stroke;
  /** The edge reads deeper than the centre, and the radius is too long. */
  readonly deepEdgeLong: Stroke;
  /** A sphere that must become shorter. */
  readonly shorten: Stroke;
  /** A sphere that must become longer. */
  readonly lengthen: Stroke;
}

const BROAD = "strokes of a quarter to a third, no overhang";
const SHORT = "short strokes, centre over centre";

/**
 * The strokes for concave work in common use; common practice, no source.
 *
 * For convex work mirror and tool change places.
 */
export const COMMON_STROKES: StrokeTable = {
  deepCentre: {
    position: "alternate",
    stroke: `${BROAD}, changing position until it is spherical`,
  },
  deepCentreShort: { position: "tool on top", stroke: BROAD },
  deepEdge: {
    position: "alternate",
    stroke: `${SHORT}, changing position until it is spherical`,
  },
  deepEdgeLong: { position: "mirror on top", stroke: SHORT },
  shorten: { position: "mirror on top", stroke: "the usual stroke" },
  lengthen: { position: "tool on top", stroke: "the usual stroke" },
};

/** Wears a ring between centre and edge; common practice, no source. */
const ZONE_STROKE: Stroke = {
  position: "alternate",
  stroke: `${BROAD}, changing position until it is spherical`,
};

/** What is known of the surface when the next step is chosen. */
export interface SurfaceState {
  /** Which way it curves. */
  readonly form: SurfaceForm;
  /** The verdict on sphericity. */
  readonly sphericity: "within" | "outside" | "undecided" | "none";
  /**
   * Sag near the centre less sag near the edge, in mm, where the verdict is
   * `outside`; its sign alone is used.
   */
  readonly centreLessEdge?: number;
  /**
   * True where a zone between centre and edge stands apart and these two are
   * not shown to differ, or by far less.
   */
  readonly zoneApart?: boolean;
  /** True when the two ends of a diameter differ beyond the tolerance. */
  readonly lopsided?: boolean;
  /** Radius less target in mm, where there is a target. */
  readonly radiusLessTarget?: number;
  /** How far from the target is still good, in mm, either way. */
  readonly tolerance?: number;
  /**
   * All that radius less target may be, in mm; without it nothing is known of
   * how sure the radius is, and it is neither reached nor missed.
   */
  readonly range?: RadiusRange;
}

/** The next step, as data. */
export type NextStep =
  /** The readings do not decide; no stroke is advised. */
  | { readonly kind: "measure more"; readonly why: "undecided" | "untested" }
  /** Wear is one-sided: turn work and tool, look for the cause. */
  | { readonly kind: "even out" }
  /** Not a sphere: bring it to one before anything else. */
  | {
    readonly kind: "to a sphere";
    readonly shape: "deep centre" | "deep edge" | "zone apart";
    readonly stroke: Stroke;
  }
  /** A sphere, and the radius should change. */
  | { readonly kind: "shorten" | "lengthen"; readonly stroke: Stroke }
  /** A sphere, and on target as far as the uncertainty tells. */
  | { readonly kind: "on target" }
  /**
   * A sphere, on target or not: the uncertainty does not tell. `beyond` where
   * the target itself lies outside the uncertainty, and its tolerance does not.
   */
  | { readonly kind: "near target"; readonly beyond?: true }
  /** A sphere, and no target was given. */
  | { readonly kind: "no target" };

/**
 * Chooses the next step.
 *
 * An open verdict gives "measure more" and never a stroke. A surface that is
 * not a sphere is brought to one before the radius counts. Which position
 * shortens is common practice, no source; see {@link COMMON_STROKES}.
 *
 * @param state What is known, lengths in mm.
 * @param table The bench's strokes for concave work.
 * @returns The step, with position and stroke turned round for convex work.
 *
 * @example A hole in the middle of a radius that is already too short
 * ```ts
 * import { nextStep } from "sagbook/fabrication/next_step.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const step = nextStep({
 *   form: "concave", sphericity: "outside", centreLessEdge: 0.028,
 *   radiusLessTarget: -40, range: { low: -46, high: -34 },
 * });
 * deepEqual(step.kind === "to a sphere" && step.stroke.position, "tool on top");
 * ```
 */
export function nextStep(
  state: SurfaceState,
  table: StrokeTable = COMMON_STROKES,
): NextStep {
  const { sphericity, radiusLessTarget: off, form } = state;
  const turned = (stroke: Stroke): Stroke =>
    form === "concave"
      ? stroke
      : { ...stroke, position: OTHER[stroke.position] };
  if (sphericity === "undecided") {
    return { kind: "measure more", why: "undecided" };
  }
  if (sphericity === "none") return { kind: "measure more", why: "untested" };
  if (sphericity === "outside") {
    if (state.zoneApart && !state.lopsided) {
      return { kind: "to a sphere", shape: "zone apart", stroke: ZONE_STROKE };
    }
    if (state.lopsided || state.centreLessEdge === undefined) {
      return { kind: "even out" };
    }
    if (state.centreLessEdge > 0) {
      const short = off !== undefined && off < 0;
      const stroke = short ? table.deepCentreShort : table.deepCentre;
      return {
        kind: "to a sphere",
        shape: "deep centre",
        stroke: turned(stroke),
      };
    }
    const long = off !== undefined && off > 0;
    const stroke = long ? table.deepEdgeLong : table.deepEdge;
    return { kind: "to a sphere", shape: "deep edge", stroke: turned(stroke) };
  }
  if (off === undefined) return { kind: "no target" };
  const { range, tolerance } = state;
  const wanted = {
    radius: 0,
    ...(tolerance === undefined ? {} : { tolerance }),
  };
  switch (againstTarget(range, wanted)) {
    case "within":
      return { kind: "on target" };
    case "longer":
      return { kind: "shorten", stroke: turned(table.shorten) };
    case "shorter":
      return { kind: "lengthen", stroke: turned(table.lengthen) };
    case "not decided": {
      const { low = 0, high = Infinity } = range ?? {};
      return low > 0 || high < 0
        ? { kind: "near target", beyond: true }
        : { kind: "near target" };
    }
  }
}

const OTHER: Record<Position, Position> = {
  "mirror on top": "tool on top",
  "tool on top": "mirror on top",
  alternate: "alternate",
};
