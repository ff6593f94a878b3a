/**
 * What a ring at its best place reads of each kind of departure.
 *
 * @module
 */
import { turnedEdge } from "../geometry/contact_departures.ts";
import { contactCircleRadius } from "../geometry/contact_circle.ts";
import { edgeRingMean } from "../geometry/edge_ring_mean.ts";
import type { FootDirection } from "../geometry/feet.ts";
import { reach } from "../geometry/reach.ts";
import { type Departure, threeFootMean } from "../geometry/three_foot_mean.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { ComparedRing, RingChoicePlan } from "./ring_question.ts";

/** A change of reading between the centre and some place, per unit amount. */
export interface Response {
  readonly offset: Millimetres;
  readonly perUnit: number;
}

type Shape = ComparedRing["shape"];

/** Angle of foot 1 from the outward radius; 0 is the worst for reach. */
export function outwardDegrees(foot: FootDirection): number | undefined {
  return foot.kind === "foot out"
    ? 0
    : foot.kind === "feet out"
    ? 180
    : undefined;
}

/** How far the ring may go in mm; undefined when it does not fit at all. */
export function reachOf(
  shape: Shape,
  plan: RingChoicePlan,
  foot: FootDirection,
): number | undefined {
  const { form, radius, diameter, margin } = plan.work;
  const usable = millimetres(diameter / 2 - margin);
  return reach(shape, form, radius, usable, outwardDegrees(foot));
}

/** δ = K ρ⁴/(8R³), per unit of conic constant: 4 a₄ c² r² at offset c. */
export function conicResponse(
  shape: Shape,
  plan: RingChoicePlan,
  farthest: number,
): Response {
  const { form, radius } = plan.work;
  const circleRadius = contactCircleRadius(shape, form, radius);
  const offset = millimetres(farthest);
  const scale = 8 * radius ** 3;
  if (shape.kind === "edge") {
    // It rests on the points that stand highest: towards the paraboloid.
    const departure: Departure = (x, y) => -((x * x + y * y) ** 2) / scale;
    const at = (where: Millimetres): number =>
      edgeRingMean(departure, {
        circleRadius,
        offset: where,
        diameterDegrees: 0,
        footDegrees: 0,
      }, form);
    return { offset, perUnit: at(millimetres(0)) - at(offset) };
  }
  // Three feet see the mean curvature; a bar the one along the radius.
  const along = shape.kind === "bar" ? 6 : 4;
  return { offset, perUnit: along * (farthest * circleRadius) ** 2 / scale };
}

/** A turned edge of 1 mm depth: the place within reach that shows it best. */
export function edgeResponse(
  shape: Shape,
  plan: RingChoicePlan,
  farthest: number,
  foot: FootDirection,
): Response {
  const { form, radius, diameter } = plan.work;
  const halfDiameter = diameter / 2;
  const width = Math.min(plan.edgeWidth ?? 20, halfDiameter);
  const edge = turnedEdge({ halfDiameter, width, depth: 1, power: 2 });
  const departure: Departure = (x, y) => edge(x, y).height;
  const circleRadius = contactCircleRadius(shape, form, radius);
  const footDegrees = outwardDegrees(foot) ?? 0;
  const at = (offset: Millimetres): number => {
    const place = { circleRadius, offset, diameterDegrees: 0, footDegrees };
    if (shape.kind === "bar") {
      const ends = departure(offset + circleRadius, 0) +
        departure(offset - circleRadius, 0);
      return ends / 2 - departure(offset, 0);
    }
    return shape.kind === "edge"
      ? edgeRingMean(departure, place, form)
      : threeFootMean(departure, place);
  };
  const centre = at(millimetres(0));
  let best: Response = { offset: millimetres(0), perUnit: 0 };
  const places = shape.kind === "edge" ? 12 : 200;
  for (let k = 1; k <= places; k++) {
    const offset = millimetres(farthest * k / places);
    const perUnit = at(offset) - centre;
    // The farthest of equal places: that is where a person puts the gauge.
    if (Math.abs(perUnit) >= Math.abs(best.perUnit)) best = { offset, perUnit };
  }
  return best;
}
