/**
 * What an exercise hides, in words for the teacher.
 *
 * @module
 */
import { peakToValley, quarticFromConic } from "../geometry/asphericity.ts";
import { type Exercise, halfDiameterOf } from "../exercises/exercise.ts";
import type { HiddenSurface } from "../exercises/hidden_surface.ts";
import type { StatedChances } from "../exercises/stated_chances.ts";
import type { LengthUnit } from "../records/piece.ts";
import { formatLength, groupFigures } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { writeSmall } from "./sag_words.ts";

/** Name of a hidden shape in a table. */
export function hiddenName({ kind }: HiddenSurface): string {
  return kind === "coma" ? "lopsided wear (coma)" : kind;
}

/**
 * Says what a hidden surface is, with its amounts.
 *
 * @param hidden The shape.
 * @param exercise The exercise it belongs to.
 * @returns A phrase that starts with a small letter and ends without a stop.
 *
 * @example
 * ```ts
 * import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
 * import { hiddenWords } from "sagbook/narrative/exercise_words.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { equal } from "node:assert/strict";
 *
 * const exercise = drawExercise(new Random(1), "A", { kind: "sphere" });
 * equal(hiddenWords(exercise.hidden, exercise), "a sphere, and nothing else");
 * ```
 */
export function hiddenWords(
  hidden: HiddenSurface,
  exercise: Exercise,
): string {
  const { gauge: { unit }, trueRadius } = exercise;
  const small = (length: number): string => writeSmall(length, unit, 3);
  switch (hidden.kind) {
    case "sphere":
      return "a sphere, and nothing else";
    case "conic": {
      const a4 = quarticFromConic(hidden.conic, millimetres(trueRadius));
      const depth = peakToValley(a4, millimetres(halfDiameterOf(exercise)));
      return `a conic of revolution with the constant ${
        groupFigures(String(hidden.conic))
      }, which departs from its best sphere by ${
        small(depth)
      } from peak to valley`;
    }
    case "turned edge":
      return `an edge turned down over the outermost ${
        wide(hidden.width, unit)
      } inside the bevel, by ${small(hidden.depth)} at the rim`;
    case "coma":
      return `lopsided wear: the side towards ${hidden.degrees}° stands ${
        small(hidden.rise)
      } high at the rim and the opposite side as much low`;
    case "astigmatism":
      return `astigmatism: the diameter at ${hidden.degrees}° stands ${
        small(hidden.rise)
      } high at both ends and the one across it as much low`;
  }
}

function wide(length: number, unit: LengthUnit): string {
  return formatLength(millimetres(length), unit, unit === "mm" ? 0 : 2);
}

/**
 * Says what three feet can see of it under this ring.
 *
 * @param stated Truth and chances.
 * @param exercise The exercise.
 * @returns One sentence.
 *
 * @example See the example of `lib/narrative/exercise_key.ts`.
 */
export function seenWords(
  { zones, ends }: Pick<StatedChances, "zones" | "ends">,
  { gauge: { unit, step } }: Pick<Exercise, "gauge">,
): string {
  const least = step / 1000;
  const differ = [
    ...(zones > least
      ? [`two zones differ by up to ${writeSmall(zones, unit, 3)}`]
      : []),
    ...(ends > least
      ? [
        `the two ends of a diameter differ by up to ${
          writeSmall(ends, unit, 3)
        }`,
      ]
      : []),
  ];
  return differ.length === 0
    ? "Three feet see nothing of it: no zone and no end of a diameter differs in sag."
    : `Under this ring ${differ.join(", and ")} of sag.`;
}

/** Says how the gauge of an exercise behaves. */
export function gaugeWords({ gauge }: Exercise): string {
  const { unit, step, scatter } = gauge;
  const small = (length: number): string => writeSmall(length, unit);
  const drift = scatter.driftPerReading ?? 0;
  return `The display steps by ${
    writeSmall(step, unit, 1)
  }; the zero scatters by ${
    small(scatter.zeroing)
  } from zeroing to zeroing, a reading by ${
    small(scatter.repeat)
  }, and the surface by ${
    small(scatter.diameter)
  } from diameter to diameter (standard deviations). ${
    drift === 0
      ? "The zero does not drift."
      : `The zero drifts by ${drift < 0 ? "\u2212" : "+"}${
        small(drift)
      } with each reading, the same in every set; the looks back at the flat show it.`
  }`;
}

/** The verdict in a sentence. */
export function verdictName(
  verdict: "within" | "outside" | "undecided" | "none",
): string {
  switch (verdict) {
    case "within":
      return "a sphere within the tolerance";
    case "outside":
      return "not a sphere within the tolerance";
    case "undecided":
      return "not decided";
    case "none":
      return "no verdict";
  }
}

/** The verdict in a column of a table. */
export function verdictShort(
  verdict: "within" | "outside" | "undecided" | "none",
): string {
  switch (verdict) {
    case "within":
      return "sphere";
    case "outside":
      return "no sphere";
    case "undecided":
      return "not decided";
    case "none":
      return "none";
  }
}
