/**
 * The files that a student is given.
 *
 * @module
 */
import {
  type SimulatedReading,
  simulateSession,
} from "../geometry/simulate_session.ts";
import type { Random } from "../numerics/random.ts";
import type { BenchFile } from "../records/bench_file.ts";
import type { PieceFile } from "../records/piece_file.ts";
import { type Exercise, sessionPlanOf } from "./exercise.ts";

/** What every file of an exercise says of itself. */
export const EXERCISE_NOTE =
  "Invented for a class: readings made by a seeded simulation of three balls on a surface, not measured on any real glass.";

/** Name of the one session of an exercise. */
const SESSION = "class";

const MM_PER_INCH = 25.4;

function written(mm: number, unit: "mm" | "in"): string {
  const amount = unit === "mm" ? mm : mm / MM_PER_INCH;
  return `${Number(amount.toFixed(unit === "mm" ? 4 : 6))} ${unit}`;
}

const json = (value: PieceFile | BenchFile): string =>
  `${JSON.stringify(value, null, 2)}\n`;

function pieceFile({ name, disc, gauge }: Exercise): PieceFile {
  const { unit } = gauge;
  return {
    name,
    form: "concave",
    diameter: written(disc.diameter, "mm"),
    bevel: written(disc.bevel, "mm"),
    margin: written(disc.margin, "mm"),
    thickness: written(disc.thickness, "mm"),
    glass: disc.glass,
    target: {
      radius: written(disc.targetRadius, "mm"),
      tolerance: written(disc.targetTolerance, "mm"),
    },
    sphericity_tolerance: { sag: written(disc.sagTolerance, "mm") },
    unit,
    invented: true,
    note: EXERCISE_NOTE,
  };
}

function benchFile({ gauge }: Exercise): BenchFile {
  const { unit, step } = gauge;
  return {
    gauge: {
      id: "class gauge",
      shows: "sag",
      counts_up_on: "concave",
      unit,
      display_step: { [unit]: written(step, unit) },
      scale_uncertainty: "0.05 %",
    },
    rings: [{
      id: `ring ${Math.round(gauge.statedRadius)}`,
      feet: "balls",
      radius: `${gauge.statedRadius} mm`,
      ball_radius: `${gauge.ballRadius} mm`,
      radius_uncertainty: "0.005 mm",
      ball_radius_uncertainty: "0.002 mm",
      material: "steel",
      foot: "foot out",
    }],
    flat: { id: "class flat", size: "200 mm", flatness: "0.0003 mm" },
    note: EXERCISE_NOTE,
  };
}

/** The number the display shows. */
function shownText(
  { shown }: SimulatedReading,
  { unit, step }: Exercise["gauge"],
): string {
  if (unit === "in") return (shown / MM_PER_INCH).toFixed(5);
  return shown.toFixed(step < 0.001 ? 4 : 3);
}

function readingsFile(exercise: Exercise, random: Random): string {
  const { gauge } = exercise;
  const ring = benchFile(exercise).rings[0].id;
  const rows = simulateSession(sessionPlanOf(exercise), random)
    .map((reading, k) =>
      [
        SESSION,
        ring,
        reading.set + 1,
        reading.diameterDegrees,
        reading.zone === "flat" ? "" : "foot out",
        reading.zone,
        shownText(reading, gauge),
        gauge.unit,
        k === 0 ? "invented" : "",
      ].join(",")
    );
  return [
    "session,ring,zeroing,diameter_deg,foot_deg,zone,reading,unit,note",
    ...rows,
    "",
  ].join("\n");
}

/**
 * Makes the files of a student's folder: the piece, the bench and the readings
 * by exact contact with the hidden surface. Nothing in them tells what is
 * hidden, nor the seed.
 *
 * @param exercise The exercise.
 * @param random Where the chance of the readings comes from.
 * @returns The text of each file by its name.
 * @throws {RangeError} If the ring cannot rest on the surface.
 *
 * @example
 * ```ts
 * import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
 * import { exerciseFiles } from "sagbook/exercises/exercise_files.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const exercise = drawExercise(new Random(1), "student 1");
 * const files = exerciseFiles(exercise, new Random(2));
 * deepEqual([...files.keys()], ["piece.json", "bench.json", "readings.csv"]);
 * ```
 */
export function exerciseFiles(
  exercise: Exercise,
  random: Random,
): ReadonlyMap<string, string> {
  return new Map([
    ["piece.json", json(pieceFile(exercise))],
    ["bench.json", json(benchFile(exercise))],
    ["readings.csv", readingsFile(exercise, random)],
  ]);
}
