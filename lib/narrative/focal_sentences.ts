/**
 * What a ground radius will become, in words.
 *
 * @module
 */
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { FocalReport } from "./focal_report.ts";
import { holdPercent } from "./hold_percent.ts";
import { writeWholeChance } from "./write_whole_chance.ts";
import { writeRadius } from "./write_radius.ts";
import { measuredHow } from "./shop_piece.ts";

/** What the words are made from. */
export type FocalFindings = Omit<FocalReport, "answer" | "notes">;

const within = (value: number, half: number, unit: LengthUnit): string =>
  formatWithUncertainty(millimetres(value), millimetres(half), unit);

/**
 * Says what the piece will become, and where to leave grinding.
 *
 * @param found What was found.
 * @param probability The chance of landing that is wanted, between 0 and 1.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function focalAnswer(
  found: FocalFindings,
  probability: number,
): readonly string[] {
  const { folder: { piece }, radius, prediction, geometry, used } = found;
  const { unit } = piece;
  if (piece.form === "convex") {
    return [
      "A convex surface makes no focus of its own: this page is for concave mirrors, and the measurement plan works out what a lens will do.",
    ];
  }
  if (radius === undefined || geometry === undefined) {
    return [
      "There is no radius to start from: read the ground surface first.",
    ];
  }
  const half = geometry.standardUncertainty *
    studentTQuantile(0.025, geometry.dof, "upper");
  const from = `From a ground radius of ${writeRadius(radius, unit)}`;
  const alone = `${within(geometry.value, half, unit)} (95 %)`;
  if (prediction === undefined) {
    return holdPercent([
      `${from}, geometry alone foretells a focal length of ${alone}.`,
      `${
        used.length === 0 ? "No finished piece" : "One finished piece"
      } tells what polishing does in this shop, so that habit is not in it; from two pieces on it can be reckoned with.`,
      ...becameSentences(found),
    ]);
  }
  const { value, interval } = prediction;
  const wide = (interval.high - interval.low) / 2;
  return holdPercent([
    `${from}, this shop's ${used.length} finished pieces foretell a focal length of ${
      within(value, wide, unit)
    } (95 %).`,
    ...becameSentences(found),
    wide > half
      ? `That is wider than geometry alone, ${alone}: ${
        used.length < 4
          ? "so few pieces say little about the shop's habit, and each more narrows it"
          : "the pieces scatter more than the geometry leaves open"
      }. Geometry leaves out what polishing does; use it only if you trust that to be small.`
      : `Geometry alone would say ${alone}, and knows nothing of what polishing does here.`,
    ...targetSentences(found, probability),
  ]);
}

/** What the piece became, where the shop's file knows that already. */
function becameSentences(
  { itself, prediction, folder: { piece: { unit } } }: FocalFindings,
): readonly string[] {
  if (itself === undefined) return [];
  const { focalLength, focalLengthUncertainty: u } = itself;
  const is = u === undefined
    ? formatLength(focalLength, unit, unit === "mm" ? 1 : 3)
    : within(focalLength, 2 * u, unit);
  const how = measuredHow(itself, unit);
  const inside = prediction === undefined
    ? ""
    : prediction.interval.low <= focalLength &&
        focalLength <= prediction.interval.high
    ? ", as foretold"
    : ", which is not as foretold";
  return [
    `It became ${is}${how === undefined ? "" : ` (${how})`}${inside}.`,
  ];
}

function targetSentences(
  { wanted, tolerance, landing, aim, folder: { piece } }: FocalFindings,
  probability: number,
): readonly string[] {
  if (wanted === undefined || aim === undefined) return [];
  const { unit } = piece;
  const write = (value: number, half: number): string =>
    formatLength(
      millimetres(value),
      unit,
      Math.max(0, decimalsFor(amountIn(millimetres(half), unit))),
    );
  const half = aim.prediction.standardUncertainty *
    studentTQuantile(0.025, aim.prediction.dof, "upper");
  const place = `To land on ${
    write(wanted, half)
  }, leave the fine grinding at ${write(aim.radius, half)}`;
  if (tolerance === undefined || landing === undefined) {
    return [
      `${place}; no tolerance is given, so no chance of landing can be stated.`,
    ];
  }
  const aimed = write(wanted, half);
  const good = `within ${write(tolerance, tolerance)} of it`;
  return [
    `The target is ${aimed}; from here the chance of landing ${good} is ${
      writeWholeChance(landing)
    }.`,
    aim.window === undefined
      ? `${place}: the chance of landing ${good} is ${
        writeWholeChance(aim.probability!)
      } there, and no radius gives ${writeWholeChance(probability)}.`
      : `${place}; anywhere from ${write(aim.window.low, half)} to ${
        write(aim.window.high, half)
      } the chance of landing ${good} is ${
        writeWholeChance(probability)
      } or more.`,
  ];
}
