import { ballRing } from "../geometry/ball_ring.ts";
import {
  type ContactPoints,
  contactPoints,
} from "../geometry/contact_points.ts";
import { millimetres as mm } from "../units/length.ts";
import { circle, dot, line, type Shape } from "./_shape.ts";

/** The work seen from above. */
export interface PlanView {
  /** Where its centre is drawn. */
  readonly centre: readonly [number, number];
  /** Pixels of a millimetre. */
  readonly scale: number;
}

/** Where a place of the work is drawn; its y axis points up. */
export function placeIn(
  { centre, scale }: PlanView,
  x: number,
  y: number,
): readonly [number, number] {
  return [centre[0] + x * scale, centre[1] - y * scale];
}

/** Where three balls touch, with the gauge on the x axis. */
export function feetAt(
  radius: number,
  ring: number,
  ball: number,
  offset: number,
  footDegrees: number,
): ContactPoints {
  return contactPoints(
    ballRing(mm(ring), mm(ball)),
    "concave",
    mm(radius),
    mm(offset),
    0,
    footDegrees,
  );
}

/** Three feet, foot 1 with a ring round it, and the probe as a cross. */
export function gaugeShapes(
  view: PlanView,
  { probe, feet }: ContactPoints,
  isGood: (distance: number) => boolean = () => true,
): Shape[] {
  const [px, py] = placeIn(view, probe.x, probe.y);
  const places = feet.map(({ x, y }) => placeIn(view, x, y));
  return [
    ...places.map((place) =>
      line([px, py], place, "ink", { width: 1.5, dash: "3 4" })
    ),
    line([px - 8, py], [px + 8, py], "ink", { width: 3 }),
    line([px, py - 8], [px, py + 8], "ink", { width: 3 }),
    ...feet.map(({ x, y }, k) =>
      dot(places[k], 7, isGood(Math.hypot(x, y)) ? "ink" : "alarm")
    ),
    circle(places[0], 11, "ink", { width: 1.5 }),
  ];
}
