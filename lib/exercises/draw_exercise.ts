/**
 * Exercises drawn by seed.
 *
 * @module
 */
import type { Random } from "../numerics/random.ts";
import { millimetres } from "../units/length.ts";
import { scaledTo } from "./_scaled_to.ts";
import type { Exercise, ExerciseDisc, ExerciseGauge } from "./exercise.ts";
import {
  HIDDEN_KINDS,
  type HiddenKind,
  type HiddenSurface,
} from "./hidden_surface.ts";

/** What may be fixed beforehand; the rest is drawn. */
export interface ExerciseChoice {
  /** Kind of the hidden surface. */
  readonly kind?: HiddenKind;
  /**
   * What the hidden shape shows, in tolerances: the largest difference of sag
   * between zones or ends; of astigmatism, which shows nothing, a quarter of
   * its height at the rim. A sphere has none.
   */
  readonly strength?: number;
  /** How far the true radius is from its target, as a fraction of it. */
  readonly radiusOff?: number;
}

/** Strengths that are drawn: one is good work, the others are not. */
export const STRENGTHS: readonly number[] = [0.5, 1.25, 1.75, 3];

/** Discs of the invented workshop: diameter, focal ratio, ring, thickness. */
const DISCS: readonly (readonly [number, number, number, number])[] = [
  [150, 8, 30, 25],
  [200, 6, 40, 30],
  [250, 6, 50, 32],
  [300, 5, 60, 40],
  [350, 5, 70, 45],
  [400, 4.5, 80, 50],
  [450, 4, 90, 55],
];

/** Displays: unit and step in mm. */
const DISPLAYS: readonly (readonly ["mm" | "in", number])[] = [
  ["mm", 0.0005],
  ["mm", 0.001],
  ["mm", 0.002],
  ["in", 0.00127],
  ["in", 0.000508],
];

function one<Item>(random: Random, items: readonly Item[]): Item {
  return items[random.integer(items.length)];
}

/** A draw between two numbers, written with few decimals. */
function between(
  random: Random,
  low: number,
  high: number,
  decimals: number,
): number {
  return Number((low + (high - low) * random.uniform()).toFixed(decimals));
}

function drawGauge(random: Random, ringRadius: number): ExerciseGauge {
  const [unit, step] = one(random, DISPLAYS);
  const repeat = between(random, 0.0004, 0.0012, 4);
  const zeroing = between(random, 0.0008, 0.0025, 4);
  const diameter = between(random, 0.0002, 0.0005, 4);
  const drift = random.uniform() < 0.5
    ? 0
    : between(random, 0.0002, 0.0006, 4) * (random.uniform() < 0.5 ? -1 : 1);
  return {
    statedRadius: Number((ringRadius + 0.005 * random.normal()).toFixed(3)),
    trueRadius: ringRadius,
    ballRadius: ringRadius < 60 ? 3 : 6,
    unit,
    step,
    scatter: {
      repeat: millimetres(repeat),
      zeroing: millimetres(zeroing),
      diameter: millimetres(diameter),
      driftPerReading: millimetres(drift),
    },
  };
}

/** The shape of a kind at no particular size, its direction drawn. */
function drawShape(
  random: Random,
  kind: HiddenKind,
  halfDiameter: number,
): HiddenSurface {
  const degrees = random.integer(36) * 10;
  const sign = random.uniform() < 0.5 ? -1 : 1;
  const width = Math.round(halfDiameter * (0.12 + 0.1 * random.uniform()));
  switch (kind) {
    case "sphere":
      return { kind };
    case "conic":
      return { kind, conic: sign };
    case "turned edge":
      return { kind, width, depth: 0.001 };
    case "coma":
      return { kind, rise: 0.001, degrees };
    case "astigmatism":
      return { kind, rise: 0.001, degrees: degrees % 180 };
  }
}

/**
 * Draws an exercise: disc, gauge, true radius and hidden surface.
 *
 * The size of the hidden shape is worked out from what it shows under this
 * ring, so that an exercise is as hard as its strength says whatever the disc.
 * What the student is told (disc, tolerance, plan) has the same distribution
 * for every shape, so that it gives nothing away.
 *
 * @param random Where chance comes from; every part has a branch of its own.
 * @param name Name of the piece and of its folder.
 * @param choice What is fixed beforehand.
 * @returns The exercise.
 * @throws {RangeError} If the strength is not above 0.
 *
 * @example The same seed gives the same exercise
 * ```ts
 * import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { deepEqual, equal } from "node:assert/strict";
 *
 * const draw = () => drawExercise(new Random(7), "student 1", { kind: "coma" });
 * deepEqual(draw(), draw());
 * equal(draw().hidden.kind, "coma");
 * ```
 */
export function drawExercise(
  random: Random,
  name: string,
  choice: ExerciseChoice = {},
): Exercise {
  const told = random.fork("told");
  const [diameter, ratio, ringRadius, thickness] = one(told, DISCS);
  const gauge = drawGauge(random.fork("gauge"), ringRadius);
  const { repeat, diameter: turn } = gauge.scatter;
  const spread = Math.hypot(repeat, turn, gauge.step / 2);
  // Whole half micrometres, as a workshop would state it.
  const sagTolerance = Math.ceil(one(told, [5, 6, 7]) * spread / 0.0005) * 5 /
    10_000;
  const targetRadius = 2 * ratio * diameter;
  const disc: ExerciseDisc = {
    diameter,
    thickness,
    bevel: 1.5,
    margin: 0.5,
    glass: one(told, ["borosilicate", "soda-lime"] as const),
    targetRadius,
    targetTolerance: targetRadius / 200,
    sagTolerance,
  };
  const hiding = random.fork("hidden");
  const kind = choice.kind ?? one(hiding, HIDDEN_KINDS);
  const strength = choice.strength ?? one(hiding, STRENGTHS);
  const drawnOff = 0.006 * hiding.normal();
  const exercise: Exercise = {
    name,
    disc,
    gauge,
    trueRadius: Number(
      (targetRadius * (1 + (choice.radiusOff ?? drawnOff))).toFixed(1),
    ),
    hidden: drawShape(hiding, kind, diameter / 2),
    sets: one(told, [6, 8]),
  };
  return { ...exercise, hidden: scaledTo(exercise, strength) };
}
