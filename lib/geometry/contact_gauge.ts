/**
 * A gauge as a rigid body, for the contact simulator.
 *
 * @module
 */

/** One foot, in the gauge's own axes. */
export interface ContactFoot {
  /** Place of the ball's centre in mm, from the probe's axis. */
  readonly x: number;
  /** Place of the ball's centre in mm, from the probe's axis. */
  readonly y: number;
  /** Radius of the ball in mm, 0 for a point. */
  readonly ballRadius: number;
  /**
   * Height of the ball's centre in mm; its radius unless given, so that every
   * ball touches the plane at height 0.
   */
  readonly height?: number;
}

/** The probe, which slides along a line through the gauge's origin. */
export interface ContactProbe {
  /** Radius of its tip in mm, 0 for a point. */
  readonly tipRadius: number;
  /** How much the stem leans in its sleeve along x, per mm of height. */
  readonly leanX?: number;
  /** How much the stem leans in its sleeve along y, per mm of height. */
  readonly leanY?: number;
}

/** Three ball feet and a probe. */
export interface ContactGauge {
  /** Its three feet. */
  readonly feet: readonly [ContactFoot, ContactFoot, ContactFoot];
  /** Its probe. */
  readonly probe: ContactProbe;
}

/**
 * Makes a gauge with three equal balls at equal spacings.
 *
 * Foot 1 lies along the gauge's own x axis, the probe at the centre.
 *
 * @param circleRadius Radius of the circle through the ball centres in mm,
 * above 0.
 * @param ballRadius Radius of the balls in mm, at least 0.
 * @param tipRadius Radius of the probe's tip in mm, 0 for a point.
 * @returns The gauge.
 * @throws {RangeError} If a length is negative or not finite, or the circle 0.
 *
 * @example
 * ```ts
 * import { ringGauge } from "sagbook/geometry/contact_gauge.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(ringGauge(60, 6.35).feet[0].x, 60);
 * ```
 */
export function ringGauge(
  circleRadius: number,
  ballRadius: number,
  tipRadius: number = 0,
): ContactGauge {
  if (!(circleRadius > 0 && Number.isFinite(circleRadius))) {
    throw new RangeError(
      `Cannot make a gauge as its foot circle must be above 0 mm: current value is ${circleRadius} mm`,
    );
  }
  for (const radius of [ballRadius, tipRadius]) {
    if (!(radius >= 0 && Number.isFinite(radius))) {
      throw new RangeError(
        `Cannot make a gauge as its balls must be at least 0 mm: current value is ${radius} mm`,
      );
    }
  }
  const foot = (degrees: number): ContactFoot => ({
    x: circleRadius * Math.cos(degrees * Math.PI / 180),
    y: circleRadius * Math.sin(degrees * Math.PI / 180),
    ballRadius,
  });
  return { feet: [foot(0), foot(120), foot(240)], probe: { tipRadius } };
}
