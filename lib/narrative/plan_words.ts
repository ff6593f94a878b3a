/**
 * What a ring shows, and lengths with few figures, in words.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { BudgetLine } from "../uncertainty/budget.ts";
import type {
  RingAnswer,
  RingChoice,
  RingQuestion,
} from "../uncertainty/ring_question.ts";
import { formatLength, groupFigures } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import { writeSmall } from "./sag_words.ts";

/**
 * Writes a length with a few figures in the user's unit.
 *
 * @param length In mm.
 * @param unit The user's unit.
 * @param figures Significant figures; whole units are never cut.
 * @returns Such as `60.012 mm`.
 *
 * @example
 * ```ts
 * import { someFigures } from "sagbook/narrative/plan_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(someFigures(60.0123, "mm", 5).replaceAll("\u00a0", " "), "60.012 mm");
 * ```
 */
export function someFigures(
  length: number,
  unit: LengthUnit,
  figures: number,
): string {
  const amount = Math.abs(amountIn(millimetres(length), unit));
  return formatLength(
    millimetres(length),
    unit,
    amount === 0 ? 0 : Math.max(0, decimalsFor(amount, figures)),
  );
}

/** A length with two figures in the user's unit. */
export function twoFigures(length: number, unit: LengthUnit): string {
  return someFigures(length, unit, 2);
}

/** Two figures, and no power of ten however large the number is. */
function twoPlainFigures(value: number): string {
  const text = value.toPrecision(2);
  return text.includes("e") ? groupFigures(`${Number(text)}`) : text;
}

/**
 * Writes the smallest amount a ring shows, in the words of its question.
 *
 * @param amount What is detected, and its unit.
 * @param detectable How much of it, in that unit.
 * @param unit The user's unit.
 * @returns Such as `a radius off by 9.1 mm`.
 *
 * @example
 * ```ts
 * import { writeDetectable } from "sagbook/narrative/plan_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(writeDetectable("conic constant", 0.5, "mm"), "a conic constant of 0.50");
 * ```
 */
export function writeDetectable(
  amount: RingChoice["amount"],
  detectable: number,
  unit: LengthUnit,
): string {
  switch (amount) {
    case "mm of radius":
      return `a radius off by ${
        formatLength(
          millimetres(detectable),
          unit,
          detectable === 0
            ? 0
            : decimalsFor(amountIn(millimetres(detectable), unit)),
        )
      }`;
    case "conic constant":
      return `a conic constant of ${twoPlainFigures(detectable)}`;
    case "mm of depth":
      return `a depth of ${writeSmall(detectable, unit)}`;
    case "mm peak to valley":
      return `astigmatism of ${writeSmall(detectable, unit)} peak to valley`;
  }
}

/** The questions, in words. */
export const QUESTIONS: Readonly<Record<RingQuestion, string>> = {
  radius: "the radius itself",
  conic: "how far it is from a sphere",
  "edge fault": "a turned edge",
  astigmatism: "astigmatism",
};

const REASONS: Record<NonNullable<RingAnswer["reason"]>, string> = {
  "does not fit the work": "it does not fit on the work",
  "does not fit the flat": "too large to be zeroed on the flat",
  "cannot leave the centre": "it cannot leave the centre",
  "does not touch the fault": "no foot reaches it",
  "three feet cannot see it": "three feet cannot see it",
  "reads it as a sphere": "a sharp edge reads it as a sphere",
};

/**
 * Says why a ring has no answer to a question.
 *
 * @param reason The reason, as data.
 * @returns Words.
 *
 * @example
 * ```ts
 * import { whyNone } from "sagbook/narrative/plan_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(whyNone("does not fit the work"), "it does not fit on the work");
 * ```
 */
export function whyNone(reason: RingAnswer["reason"]): string {
  return reason === undefined ? "nothing it could show" : REASONS[reason];
}

/**
 * Whether more sets make the share of a source smaller.
 *
 * What a ring, a gauge or a flat makes common to all readings stays, and so
 * does the display's step: what is counted of it is what averaging left.
 *
 * @param line The source.
 * @returns True when reading more helps.
 *
 * @example
 * ```ts
 * import { averagesOut } from "sagbook/narrative/plan_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(averagesOut({ source: "repetition" }), true);
 * equal(averagesOut({ source: "display step of the zero" }), false);
 * equal(averagesOut({ source: "ring radius", common: "ring A radius" }), false);
 * ```
 */
export function averagesOut(
  line: Pick<BudgetLine, "source" | "common">,
): boolean {
  return line.common === undefined && !line.source.startsWith("display step");
}
