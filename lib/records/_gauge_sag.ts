/**
 * From what the gauge shows to the sag it saw.
 *
 * @module
 */
import type { Feet, SurfaceForm } from "../geometry/feet.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Gauge } from "./bench.ts";

const DEGREE = Math.PI / 180;

/** +1 where the gauge counts up on the declared surface, -1 where it counts down. */
export function countingSign(gauge: Gauge, form: SurfaceForm): 1 | -1 {
  return gauge.countsUpOn === "declared surface" || gauge.countsUpOn === form
    ? 1
    : -1;
}

/**
 * Turns a shown value into the sag of the declared surface, in mm.
 *
 * A gauge that shows radius or power has a ring size set in it; the sag is
 * taken back with THAT size, so that the calibrated ring can take it forward.
 * A stated lean of the stem shortens the path by its cosine. Power is of the
 * declared form's size; the sign says only which way the gauge counts.
 *
 * @throws {RangeError} If no sphere under the set ring shows that value.
 */
export function sagShown(
  shown: number,
  gauge: Gauge,
  form: SurfaceForm,
): Millimetres {
  const sign = countingSign(gauge, form);
  const { shows } = gauge;
  if (shows.kind === "sag") {
    const upright = Math.cos((gauge.tiltDegrees ?? 0) * DEGREE);
    // Adding 0 turns −0 into 0.
    return millimetres(sign * shown * upright + 0);
  }
  if (shown === 0) {
    if (shows.kind === "power") return millimetres(0);
    throw new RangeError(
      "Cannot find a sag as a shown radius must not be 0: current value is 0 mm",
    );
  }
  const feet: Feet = {
    circleRadius: shows.circleRadius,
    ballRadius: shows.ballRadius,
  };
  const radius = shows.kind === "radius"
    ? Math.abs(shown)
    : 1000 * (shows.index - 1) / Math.abs(shown);
  const sag = sagFromRadius(millimetres(radius), feet, form);
  return millimetres(sign * Math.sign(shown) * sag);
}

/** The display step in mm of sag near a shown value. */
export function stepInSag(
  shown: number,
  step: number,
  gauge: Gauge,
  form: SurfaceForm,
): Millimetres | undefined {
  if (gauge.shows.kind === "sag") return millimetres(step);
  try {
    const above = sagShown(shown + step / 2, gauge, form);
    const below = sagShown(shown - step / 2, gauge, form);
    return millimetres(Math.abs(above - below));
  } catch {
    return undefined;
  }
}
