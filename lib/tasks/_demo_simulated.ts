/**
 * The readings of an invented piece, by simulation.
 *
 * @module
 */
import { ringGauge } from "../geometry/contact_gauge.ts";
import { conicSurface, withDepartures } from "../geometry/contact_surface.ts";
import { relativeFootDegrees } from "../geometry/foot_direction.ts";
import { reach } from "../geometry/reach.ts";
import type { RingShape } from "../geometry/ring.ts";
import {
  type SimulatedReading,
  simulateSession,
} from "../geometry/simulate_session.ts";
import { Random } from "../numerics/random.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { DemoPiece, DemoPlace, DemoSession } from "./_demo_piece.ts";

/** The shape of its ring, as stated. */
export function ringShape(piece: DemoPiece): RingShape {
  return {
    kind: "balls",
    circleRadius: millimetres(piece.ring.statedRadius),
    ballRadius: millimetres(piece.ring.ballRadius),
    probeOffset: millimetres(0),
  };
}

function offsetOf(piece: DemoPiece, place: DemoPlace): Millimetres {
  const half = piece.diameter / 2;
  if (place.of === "half diameter") return millimetres(place.fraction * half);
  const limit = reach(
    ringShape(piece),
    "concave",
    millimetres(piece.targetRadius),
    millimetres(half - piece.bevel - piece.margin),
    relativeFootDegrees({ kind: piece.foot }, undefined, millimetres(1)),
  );
  if (limit === undefined) {
    throw new RangeError(
      `Cannot make a demo piece as its ring must fit on it: current value is ${piece.ring.statedRadius} mm`,
    );
  }
  return millimetres(place.fraction * limit);
}

/** The readings of one of its sessions. */
export function simulated(
  piece: DemoPiece,
  session: DemoSession,
): SimulatedReading[] {
  const random = new Random(piece.seed);
  return simulateSession(
    {
      surface: withDepartures(
        conicSurface(piece.trueRadius, 0),
        ...piece.departures.map(({ shape }) => shape),
      ),
      form: "concave",
      gauge: ringGauge(piece.ring.trueRadius, piece.ring.ballRadius),
      diameters: session.diameters,
      places: piece.places.map((place) => ({
        zone: place.zone,
        offset: offsetOf(piece, place),
      })),
      foot: piece.foot,
      scatter: piece.scatter,
      step: millimetres(piece.step),
    },
    random.fork(session.id),
    random.fork("work"),
  );
}
