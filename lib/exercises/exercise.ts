/**
 * One exercise: a disc, a gauge, a plan of readings and what is hidden.
 *
 * @module
 */
import { ballRing } from "../geometry/ball_ring.ts";
import { ringGauge } from "../geometry/contact_gauge.ts";
import { contactSag } from "../geometry/contact_sag.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { reach } from "../geometry/reach.ts";
import type { RingShape } from "../geometry/ring.ts";
import type {
  PlannedPlace,
  SessionPlan,
  SessionScatter,
} from "../geometry/simulate_session.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { hiddenShape, type HiddenSurface } from "./hidden_surface.ts";

/** The disc as its owner knows it, lengths in mm. */
export interface ExerciseDisc {
  /** Outer diameter. */
  readonly diameter: number;
  /** Edge thickness. */
  readonly thickness: number;
  /** Width of the bevel. */
  readonly bevel: number;
  /** How far inside the bevel every foot stays. */
  readonly margin: number;
  /** Glass. */
  readonly glass: "borosilicate" | "soda-lime";
  /** Wanted radius of curvature. */
  readonly targetRadius: number;
  /** How far from it is still good. */
  readonly targetTolerance: number;
  /** Largest good difference of sag between zones. */
  readonly sagTolerance: number;
}

/** The ring and the gauge, lengths in mm. */
export interface ExerciseGauge {
  /** Radius of the foot circle as the bench file states it. */
  readonly statedRadius: number;
  /** Radius of the foot circle as it truly is. */
  readonly trueRadius: number;
  /** Radius of the balls. */
  readonly ballRadius: number;
  /** Unit the display shows. */
  readonly unit: "mm" | "in";
  /** Display step. */
  readonly step: number;
  /** What makes readings differ, the drift of the zero included. */
  readonly scatter: SessionScatter;
}

/** One exercise, whole: nothing of it but this is needed to make its files. */
export interface Exercise {
  /** Name of the piece, and of its folder. */
  readonly name: string;
  /** The disc. */
  readonly disc: ExerciseDisc;
  /** The gauge and its ring. */
  readonly gauge: ExerciseGauge;
  /** Radius of curvature at the vertex, in mm: hidden from the student. */
  readonly trueRadius: number;
  /** The shape: hidden from the student. */
  readonly hidden: HiddenSurface;
  /** How many sets, each on a diameter and a zeroing of its own. */
  readonly sets: number;
}

/** The ring as the analysis is told of it. */
export function statedRing({ gauge }: Exercise): RingShape {
  return ballRing(
    millimetres(gauge.statedRadius),
    millimetres(gauge.ballRadius),
  );
}

/** Half the clear diameter, in mm. */
export function halfDiameterOf({ disc }: Exercise): number {
  return disc.diameter / 2 - disc.bevel;
}

/** Places of a set in the order read, the closing look at the flat last. */
export function placesOfExercise(exercise: Exercise): readonly PlannedPlace[] {
  const { disc } = exercise;
  const edge = reach(
    statedRing(exercise),
    "concave",
    millimetres(disc.targetRadius),
    millimetres(disc.diameter / 2 - disc.bevel - disc.margin),
    0,
  );
  if (edge === undefined) {
    throw new RangeError(
      `Cannot make an exercise as its ring must fit on the disc of ${disc.diameter} mm: current value is ${exercise.gauge.statedRadius} mm`,
    );
  }
  const at = (zone: string, offset: number): PlannedPlace => ({
    zone,
    offset: millimetres(offset),
  });
  return [
    at("centre", 0),
    at("50% reach", edge / 2),
    at("-50% reach", -edge / 2),
    at("edge", edge),
    at("-edge", -edge),
    at("flat", 0),
  ];
}

/** Directions of the diameters in degrees, evenly over half a turn. */
export function diametersOf({ sets }: Exercise): readonly number[] {
  return Array.from({ length: sets }, (_, k) => Math.round(180 * k / sets));
}

/**
 * The radius that a perfect gauge with this ring would read at the centre, in
 * mm: that of the sphere through feet and probe, by exact contact. On a conic
 * it is not the vertex radius.
 */
export function centreRadiusOf(exercise: Exercise): Millimetres {
  const { gauge, hidden, trueRadius } = exercise;
  const sag = contactSag(
    hiddenShape(hidden, trueRadius, halfDiameterOf(exercise)),
    "concave",
    ringGauge(gauge.trueRadius, gauge.ballRadius),
    { x: 0, y: 0, footDegrees: 0 },
  );
  const feet = {
    circleRadius: millimetres(gauge.trueRadius),
    ballRadius: millimetres(gauge.ballRadius),
  };
  return radiusFromSag(sag, feet, "concave");
}

/**
 * Plans the session of an exercise for the contact simulator.
 *
 * One foot points out; every set has a zeroing and a diameter of its own, both
 * ends are read and the flat is looked at again after each set, so that what
 * three feet can see is in the readings.
 *
 * @param exercise The exercise.
 * @returns The plan, with the hidden surface.
 * @throws {RangeError} If the ring does not fit on the disc.
 *
 * @example
 * ```ts
 * import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
 * import { sessionPlanOf } from "sagbook/exercises/exercise.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const { places } = sessionPlanOf(drawExercise(new Random(1), "student 1"));
 * deepEqual(places.map(({ zone }) => zone), [
 *   "centre", "50% reach", "-50% reach", "edge", "-edge", "flat",
 * ]);
 * ```
 */
export function sessionPlanOf(exercise: Exercise): SessionPlan {
  const { gauge, hidden, trueRadius } = exercise;
  return {
    surface: hiddenShape(hidden, trueRadius, halfDiameterOf(exercise)),
    form: "concave",
    gauge: ringGauge(gauge.trueRadius, gauge.ballRadius),
    diameters: diametersOf(exercise),
    places: placesOfExercise(exercise),
    foot: "foot out",
    scatter: gauge.scatter,
    step: millimetres(gauge.step),
  };
}
