/**
 * What drawing every source at random gave, and work that may be flat.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { BudgetCheck } from "../uncertainty/monte_carlo.ts";
import type { RadiusBudget } from "../uncertainty/radius_budget.ts";
import type { RadiusDistribution } from "../uncertainty/radius_monte_carlo.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor, roundDecimal } from "../units/round_decimal.ts";
import { twoFigures } from "./plan_words.ts";

/**
 * Writes a chance as a percentage with two figures.
 *
 * @param share From 0 to 1.
 * @returns Such as `0.62 %`.
 *
 * @example
 * ```ts
 * import { writeChance } from "sagbook/narrative/plan_distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(writeChance(0.00621), "0.62 %");
 * equal(writeChance(0), "less than 0.001 %");
 * ```
 */
export function writeChance(share: number): string {
  const percent = 100 * share;
  return percent < 0.001
    ? "less than 0.001 %"
    : `${roundDecimal(percent, Math.max(0, decimalsFor(percent)))} %`;
}

/** Curvatures in 1/m, or 1/ft, with the figures their width supports. */
function curvatures(
  values: readonly number[],
  width: number,
  unit: LengthUnit,
): { texts: string[]; per: string } {
  const scale = unit === "mm" ? 1000 : 304.8;
  const places = Math.max(0, decimalsFor(width * scale));
  return {
    texts: values.map((value) =>
      roundDecimal(value * scale, places).replace("-", "−")
    ),
    per: unit === "mm" ? "per metre" : "per foot",
  };
}

/**
 * Says what is known of work that is nearly flat: its curvature with the
 * interval, and the least radius that allows.
 *
 * @param budget The budget of a radius that has no upper limit.
 * @param unit The user's unit.
 * @returns Sentences in one string.
 *
 * @example
 * ```ts
 * import { curvatureSentence } from "sagbook/narrative/plan_distribution.ts";
 * import { match } from "node:assert/strict";
 *
 * const curvature = { value: 1e-6, lower: -3e-6, upper: 5e-6 };
 * const text = curvatureSentence({
 *   form: "concave", curvature, lower: 2e5, otherSideProbability: 0.3,
 * }, "mm");
 * match(text.replaceAll("\u00a0", " "), /between −0\.0030 and 0\.0050/);
 * ```
 */
export function curvatureSentence(
  { form, curvature, lower, otherSideProbability }:
    & Pick<RadiusBudget, "form" | "lower" | "otherSideProbability">
    & {
      readonly curvature: Pick<
        RadiusBudget["curvature"],
        "value" | "lower" | "upper"
      >;
    },
  unit: LengthUnit,
): string {
  const { value, lower: low, upper: high } = curvature;
  const { texts: [best, from, to], per } = curvatures(
    [value, low, high],
    (high - low) / 2,
    unit,
  );
  const least = roughly(lower, unit);
  if (high <= 0) {
    return `The work curves the other way than ${form}: its curvature 1/R is ${best} ${per}, with 95 % between ${from} and ${to}, counted positive for ${form}. Look at the form in the piece file, and at the sign of the gauge.`;
  }
  return `The work may be flat: its curvature 1/R is ${best} ${per}, with 95 % between ${from} and ${to} (counted positive for ${form}), so |R| is at least ${least}. No radius with ± belongs to that; the chance that it curves the other way is ${
    writeChance(otherSideProbability)
  }.`;
}

/**
 * Says what drawing every source at random gave.
 *
 * @param distribution The draws.
 * @param unit The user's unit.
 * @returns One or two sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function drawnSentence(
  distribution: RadiusDistribution,
  unit: LengthUnit,
): string {
  const { symmetric, draws, settled, check, otherSideDraws } = distribution;
  const times = draws.toLocaleString("en").replace(/,/g, "\u202f");
  const drawn = `Drawing every source at random ${times} times (${
    settled ? "settled to two figures" : "not settled"
  })`;
  if (!symmetric) {
    return `${drawn} leaves a flat among the possible surfaces: |R| is at least ${
      roughly(distribution.atLeast, unit)
    }, and ${
      writeChance(otherSideDraws / draws)
    } of the draws curve the other way. Mean and standard deviation of R would mean nothing.`;
  }
  const { lower, upper } = symmetric;
  const range = `${places(lower, symmetric, unit)} and ${
    places(upper, symmetric, unit)
  }`;
  const gives = `${drawn} gives 95 % between ${range}`;
  if (distribution.histogramOf === "curvature") {
    return `${gives}, found in curvature and turned round; ${
      otherSideDraws === 0
        ? "a flat is so near"
        : `in ${
          writeChance(otherSideDraws / draws)
        } of them, which are kept, the surface curves the other way, so`
    } that R has no mean and no standard deviation that would settle, and none is given.`;
  }
  return check === undefined
    ? `${gives}.`
    : `${gives}; the ends that R ± U of the budget gives lie ${
      check.valid ? "there too" : `up to ${off(check, unit)} away`
    }.`;
}

/** A very long radius, with two figures and no more. */
function roughly(length: number, unit: LengthUnit): string {
  const amount = amountIn(millimetres(length), unit);
  return formatLength(millimetres(length), unit, decimalsFor(amount));
}

/** The larger distance between the ends of two intervals. */
function off(
  { lowerDifference, upperDifference }: BudgetCheck,
  unit: LengthUnit,
): string {
  return twoFigures(Math.max(lowerDifference, upperDifference), unit);
}

/** A length with the figures that an interval's width supports. */
function places(
  length: number,
  { lower, upper }: { readonly lower: number; readonly upper: number },
  unit: LengthUnit,
): string {
  const half = amountIn(millimetres((upper - lower) / 2), unit);
  return formatLength(
    millimetres(length),
    unit,
    half === 0 ? 3 : decimalsFor(half),
  );
}
