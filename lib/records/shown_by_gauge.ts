/**
 * From the sag under a ring to what the gauge's display shows of it.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { powerFromRadius } from "../geometry/surface_power.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Gauge } from "./bench.ts";
import { countingSign } from "./_gauge_sag.ts";

const DEGREE = Math.PI / 180;

/**
 * Finds what the display shows of a sag: the reader's step backwards.
 *
 * A gauge that counts down on the declared surface shows it with a minus, one
 * whose stem leans shows more by the cosine of the lean, and one that shows
 * radius or power works it out with the ring size set in it.
 *
 * @param sag Sag in mm, positive for the declared surface.
 * @param gauge The gauge.
 * @param form Which way the surface was declared to curve.
 * @returns The amount, in mm for sag and radius and in dioptres for power.
 * @throws {RangeError} If a gauge that shows radius has none to show, as for a
 * sag of 0 or above the set ring's radius.
 *
 * @example A gauge that counts down on this surface
 * ```ts
 * import { shownByGauge } from "sagbook/records/shown_by_gauge.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const gauge = {
 *   id: "gauge",
 *   shows: { kind: "sag" },
 *   countsUpOn: "concave",
 *   steps: {},
 *   scaleUncertainty: 0,
 * } as const;
 * equal(shownByGauge(mm(0.715), gauge, "convex"), -0.715);
 * ```
 */
export function shownByGauge(
  sag: Millimetres,
  gauge: Gauge,
  form: SurfaceForm,
): number {
  const sign = countingSign(gauge, form);
  const { shows } = gauge;
  if (shows.kind === "sag") {
    // Adding 0 turns −0 into 0.
    return sign * sag / Math.cos((gauge.tiltDegrees ?? 0) * DEGREE) + 0;
  }
  if (shows.kind === "power" && sag === 0) return 0;
  const turned = sign * Math.sign(sag);
  const radius = radiusFromSag(millimetres(Math.abs(sag)), shows, form);
  return turned * (shows.kind === "radius"
    ? radius
    // The display's power has the size alone; its sign is the way it counts.
    : Math.abs(powerFromRadius(radius, form, shows.index)));
}
