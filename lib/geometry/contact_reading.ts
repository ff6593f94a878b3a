/**
 * The reading of a gauge by exact contact with a surface.
 *
 * @module
 */
import { type BallContact, ballContact } from "./_ball_contact.ts";
import { solveThree, tilted, type Vector } from "./_gauge_pose.ts";
import type { ContactGauge } from "./contact_gauge.ts";
import { type ContactSurface, flatSurface } from "./contact_surface.ts";

/** Where a gauge is set down. */
export interface ContactPlace {
  /** Where the probe's axis meets the surface, along x, in mm. */
  readonly x: number;
  /** Where the probe's axis meets the surface, along y, in mm. */
  readonly y: number;
  /** Direction of the gauge's own x axis (foot 1) in the work's axes. */
  readonly footDegrees: number;
}

/** A place where a ball touches the work, in mm. */
export interface TouchingPoint {
  /** Along x. */
  readonly x: number;
  /** Along y. */
  readonly y: number;
  /** Height. */
  readonly z: number;
}

/** A gauge at rest on a surface. */
export interface ContactReading {
  /**
   * How much farther the probe comes out than on a flat, in mm: the sag on
   * concave work, minus the sag on convex work.
   */
  readonly travel: number;
  /** Where the feet touch. */
  readonly feet: readonly TouchingPoint[];
  /** Where the probe touches. */
  readonly probe: TouchingPoint;
  /** The unit vector along the upright of the gauge. */
  readonly upright: readonly [number, number, number];
  /** The largest distance by which any ball misses tangency, in mm. */
  readonly residual: number;
}

/** What counts as touching, in mm. */
const TOUCHING = 1e-12;

/** Height of the gauge above the surface, and tilts, with what they lead to. */
interface Stand {
  readonly contacts: readonly BallContact[];
  readonly gaps: Vector;
  readonly worst: number;
  readonly step: Vector;
}

function standAt(
  surface: ContactSurface,
  gauge: ContactGauge,
  body: readonly Vector[],
  stem: Vector,
  origin: Vector,
  [t, p, q]: Vector,
): Stand {
  const along = tilted(stem, p, q);
  const rows: Vector[] = [];
  const gaps: number[] = [];
  const contacts = body.map((vector, i) => {
    const arm = tilted(vector, p, q);
    const contact = ballContact(
      surface,
      origin[0] + t * along.at[0] + arm.at[0],
      origin[1] + t * along.at[1] + arm.at[1],
      gauge.feet[i].ballRadius,
    );
    const { slopeX, slopeY, centreHeight } = contact;
    // The centres' surface is parallel to the work, so it has the same slopes.
    const gap = (v: Vector) => v[2] - slopeX * v[0] - slopeY * v[1];
    gaps.push(origin[2] + t * along.at[2] + arm.at[2] - centreHeight);
    rows.push([
      gap(along.at),
      gap(arm.perTiltX) + t * gap(along.perTiltX),
      gap(arm.perTiltY) + t * gap(along.perTiltY),
    ]);
    return contact;
  });
  const [first, second, third] = gaps;
  return {
    contacts,
    gaps: [first, second, third],
    worst: Math.max(...gaps.map(Math.abs)),
    step: solveThree([rows[0], rows[1], rows[2]], [first, second, third]),
  };
}

function settle(
  surface: ContactSurface,
  gauge: ContactGauge,
  body: readonly Vector[],
  stem: Vector,
  origin: Vector,
  start: Vector,
): [Vector, Stand] {
  let pose = start;
  let stand = standAt(surface, gauge, body, stem, origin, pose);
  for (let turn = 0; turn < 40 && stand.worst > TOUCHING / 100; turn++) {
    let better: [Vector, Stand] | undefined;
    for (let part = 1; part > 1e-3 && better === undefined; part /= 2) {
      const [t, p, q] = pose.map((value, i) => value - part * stand.step[i]);
      if (!(p * p + q * q < 1)) continue;
      const next = standAt(surface, gauge, body, stem, origin, [t, p, q]);
      if (next.worst < stand.worst) better = [[t, p, q], next];
    }
    if (better === undefined) break;
    [pose, stand] = better;
  }
  return [pose, stand];
}

/** Slides the probe down its axis until its tip touches; returns its travel. */
function lower(
  surface: ContactSurface,
  tipRadius: number,
  origin: Vector,
  along: Vector,
): { travel: number; contact: BallContact; gap: number } {
  let travel = tipRadius / along[2];
  for (let turn = 0;; turn++) {
    const contact = ballContact(
      surface,
      origin[0] + travel * along[0],
      origin[1] + travel * along[1],
      tipRadius,
    );
    const gap = origin[2] + travel * along[2] - contact.centreHeight;
    if (Math.abs(gap) <= TOUCHING / 100 || turn === 40) {
      return { travel, contact, gap };
    }
    travel -= gap /
      (along[2] - contact.slopeX * along[0] - contact.slopeY * along[1]);
  }
}

function rest(
  surface: ContactSurface,
  gauge: ContactGauge,
  place: ContactPlace,
): ContactReading {
  const cosine = Math.cos(place.footDegrees * Math.PI / 180);
  const sine = Math.sin(place.footDegrees * Math.PI / 180);
  const turned = (x: number, y: number, z: number): Vector => [
    cosine * x - sine * y,
    sine * x + cosine * y,
    z,
  ];
  const body = gauge.feet.map((foot) =>
    turned(foot.x, foot.y, foot.height ?? foot.ballRadius)
  );
  const { leanX = 0, leanY = 0, tipRadius } = gauge.probe;
  const length = Math.hypot(leanX, leanY, 1);
  const stem = turned(leanX / length, leanY / length, 1 / length);

  const { height, slopeX, slopeY } = surface(place.x, place.y);
  const origin: Vector = [place.x, place.y, height];
  const steep = Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY);
  const start: Vector = [0, -slopeX / steep, -slopeY / steep];
  const [[t, p, q], stand] = settle(surface, gauge, body, stem, origin, start);
  const probe = lower(surface, tipRadius, origin, tilted(stem, p, q).at);
  const residual = Math.max(
    Math.abs(probe.gap),
    probe.contact.miss,
    ...stand.contacts.map((contact, i) =>
      Math.hypot(stand.gaps[i], contact.miss)
    ),
  );
  if (!(residual <= TOUCHING)) {
    throw new RangeError(
      `Cannot set the gauge down as every ball must touch within ${TOUCHING} mm: current value is ${residual} mm`,
    );
  }
  return {
    travel: t - probe.travel,
    feet: stand.contacts.map(({ x, y, z }) => ({ x, y, z })),
    probe: { x: probe.contact.x, y: probe.contact.y, z: probe.contact.z },
    upright: [p, q, Math.sqrt(1 - p * p - q * q)],
    residual,
  };
}

const zeros = new WeakMap<ContactGauge, number>();

function zeroTravel(gauge: ContactGauge): number {
  let zero = zeros.get(gauge);
  if (zero === undefined) {
    zero = rest(flatSurface, gauge, { x: 0, y: 0, footDegrees: 0 }).travel;
    zeros.set(gauge, zero);
  }
  return zero;
}

/**
 * Sets a gauge down on a surface and finds how far its probe comes out.
 *
 * From tangency alone: the rigid gauge is raised and tilted until each ball
 * shares a normal with the surface at one point, then the probe slides along
 * its axis until its tip does. Newton's method with exact slopes; every ball
 * touches within 1e-12 mm or the call is refused. No formula for a sphere is
 * used anywhere.
 *
 * The gauge is held so that the probe's axis passes through the point of the
 * surface at (x, y), and turned so that its x axis would point along
 * `footDegrees` if it stood upright (the tilt is the shortest turn from there).
 * Balls are let down locally: a second touching point of the same ball
 * elsewhere is not looked for.
 *
 * @param surface Height towards the gauge and slopes, in mm.
 * @param gauge Feet and probe, in mm.
 * @param place Where and how turned.
 * @returns The probe's travel against its travel on a flat, in mm, and the
 * points that touch.
 * @throws {RangeError} If the gauge cannot rest there: the surface ends, or
 * curves more sharply than a ball, or the feet stand in a line.
 *
 * @example A sphere reads the same wherever the gauge stands
 * ```ts
 * import { conicSurface, contactReading, ringGauge } from "sagbook/geometry/mod.ts";
 * import { ok } from "node:assert/strict";
 *
 * const sphere = conicSurface(2502.75, 0);
 * const gauge = ringGauge(50, 2.5);
 * for (const x of [0, 40, -90]) {
 *   const { travel } = contactReading(sphere, gauge, { x, y: 10, footDegrees: 25 });
 *   ok(Math.abs(travel - 0.5) < 1e-12);
 * }
 * ```
 */
export function contactReading(
  surface: ContactSurface,
  gauge: ContactGauge,
  place: ContactPlace,
): ContactReading {
  const reading = rest(surface, gauge, place);
  return { ...reading, travel: reading.travel - zeroTravel(gauge) };
}
