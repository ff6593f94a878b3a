/**
 * What the gauge could not have seen in a session.
 *
 * @module
 */
import { contactRadii } from "../geometry/contact_points.ts";
import type { SurfaceForm } from "../geometry/feet.ts";
import { relativeFootDegrees } from "../geometry/foot_direction.ts";
import type { RingShape } from "../geometry/ring.ts";
import { filterItems, forEachItem } from "../numerics/lazy_list.ts";
import type { Reading } from "../records/reading.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { footClass } from "./place.ts";

/** One thing that these readings could not show, however large. */
export type Unseen =
  /** Three feet measure mean curvature; astigmatism has none. */
  | { readonly kind: "astigmatism" }
  /** A bar measures along one line only. */
  | { readonly kind: "across the bar" }
  /** Only the centre was read. */
  | { readonly kind: "zones" }
  /** The probe never stood at the centre. */
  | {
    readonly kind: "centre";
    /** Nearest place to it, in mm. */
    readonly nearest: Millimetres;
  }
  /** No foot ever touched beyond this distance from the centre. */
  | {
    readonly kind: "rim";
    /** Outermost place a foot touched, in mm. */
    readonly beyond: Millimetres;
    /** Half diameter less the bevel, in mm. */
    readonly rim: Millimetres;
    /** True when turning one foot outward would reach further. */
    readonly twoFeetOut: boolean;
  }
  /** No set read both ends of a diameter. */
  | { readonly kind: "coma" }
  /** The ring never stood otherwise at one place. */
  | { readonly kind: "trefoil" }
  /** The direction of the feet was not written down. */
  | { readonly kind: "direction unknown"; readonly readings: number };

/** A probe that stood within this part of the rim's distance saw the centre. */
const NEAR_CENTRE = 0.05;

/**
 * Lists what a session could not have seen.
 *
 * @param readings Readings of the work, of one session and ring.
 * @param shape The ring or bar.
 * @param form Which way the surface curves.
 * @param radius Radius of curvature in mm; a nominal one will do.
 * @param rim Half diameter less the bevel, in mm.
 * @param bothEnds Whether some set read both ends of a diameter.
 * @returns In the order of importance; astigmatism always stands first for
 * three feet.
 *
 * @example One reading at the centre
 * ```ts
 * import { unseenBy } from "sagbook/zones/unseen.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const shape = { kind: "balls", circleRadius: mm(60), ballRadius: mm(3), probeOffset: mm(0) } as const;
 * const reading = { offset: mm(0), foot: { kind: "unknown" } } as unknown as
 *   Parameters<typeof unseenBy>[0][number];
 * const unseen = unseenBy([reading], shape, "concave", mm(2520), mm(100), false);
 * deepEqual(unseen.map(({ kind }) => kind), ["astigmatism", "zones", "rim"]);
 * ```
 */
export function unseenBy(
  readings: readonly Reading[],
  shape: RingShape,
  form: SurfaceForm,
  radius: Millimetres,
  rim: Millimetres,
  bothEnds: boolean,
): readonly Unseen[] {
  const unseen: Unseen[] = [];
  if (shape.kind === "balls") unseen.push({ kind: "astigmatism" });
  if (shape.kind === "bar") unseen.push({ kind: "across the bar" });
  const offCentre = filterItems(readings, ({ offset }) => offset !== 0);
  if (offCentre.length === 0) unseen.push({ kind: "zones" });
  let nearest = Infinity;
  for (const { offset } of readings) {
    nearest = Math.min(nearest, Math.abs(offset));
  }
  if (nearest > NEAR_CENTRE * rim && Number.isFinite(nearest)) {
    unseen.push({ kind: "centre", nearest: millimetres(nearest) });
  }
  const beyond = outermostTouched(readings, shape, form, radius);
  const twoFeetOut = offCentre.every((reading) =>
    footClass(reading, "balls") !== "foot out"
  );
  if (rim - beyond > 0.5) {
    unseen.push({
      kind: "rim",
      beyond,
      rim,
      twoFeetOut: twoFeetOut && offCentre.length > 0 && shape.kind === "balls",
    });
  }
  if (offCentre.length > 0 && !bothEnds) unseen.push({ kind: "coma" });
  if (offCentre.length > 0 && shape.kind === "balls" && !turned(offCentre)) {
    unseen.push({ kind: "trefoil" });
  }
  const unknown = filterItems(
    offCentre,
    (reading) => footClass(reading, shape.kind) === "unknown",
  ).length;
  if (unknown > 0) {
    unseen.push({ kind: "direction unknown", readings: unknown });
  }
  return unseen;
}

/**
 * Finds how far from the centre of the work a foot certainly touched.
 *
 * With the direction of the feet unknown, only as far as two feet out reach.
 *
 * @param readings Readings of the work.
 * @param shape The ring or bar.
 * @param form Which way the surface curves.
 * @param radius Radius of curvature in mm; a nominal one will do.
 * @returns The largest distance in mm, 0 without readings.
 *
 * @example
 * ```ts
 * import { outermostTouched } from "sagbook/zones/unseen.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const shape = { kind: "balls", circleRadius: mm(60), ballRadius: mm(0), probeOffset: mm(0) } as const;
 * const reading = { offset: mm(40), foot: { kind: "foot out" } } as const;
 * equal(outermostTouched([reading], shape, "concave", mm(2520)), 100);
 * ```
 */
export function outermostTouched(
  readings: readonly Pick<Reading, "offset" | "diameterDegrees" | "foot">[],
  shape: RingShape,
  form: SurfaceForm,
  radius: Millimetres,
): Millimetres {
  let outermost = 0;
  forEachItem(readings, ({ offset, diameterDegrees, foot }) => {
    const relative = relativeFootDegrees(foot, diameterDegrees, offset);
    const seen = contactRadii(shape, form, radius, offset, relative);
    const known = seen.feet.length > 0 || shape.kind === "edge" || offset === 0;
    const certain = known
      ? seen.outermost
      : shape.kind === "bar"
      ? seen.innermost
      : contactRadii(shape, form, radius, offset, 180).outermost;
    outermost = Math.max(outermost, certain);
  });
  return millimetres(outermost);
}

/** Whether the ring stood in two directions, as seen from the work, somewhere. */
function turned(readings: readonly Reading[]): boolean {
  const seen = new Set<number>();
  forEachItem(readings, ({ foot, diameterDegrees, offset }) => {
    const relative = relativeFootDegrees(foot, diameterDegrees, offset);
    if (relative === undefined || diameterDegrees === undefined) return;
    const inWork = relative + diameterDegrees + (offset < 0 ? 180 : 0);
    seen.add(Math.round((((inWork % 120) + 120) % 120) / 15) % 8);
  });
  return seen.size > 1;
}
