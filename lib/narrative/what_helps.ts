/**
 * What would make a radius surer, in words.
 *
 * @module
 */
import type { BudgetLine } from "../uncertainty/budget.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { RadiusStatement } from "./radius_statement.ts";
import { averagesOut } from "./plan_words.ts";
import { writeSmall } from "./sag_words.ts";

/** What to do about a source that reading more sets leaves as it is. */
const CURES: Readonly<Record<string, readonly [act: string, source: string]>> =
  {
    "ring radius": ["measure the ring better", "the ring's radius"],
    "ball radius": ["measure the balls better", "the size of the balls"],
    "gauge scale": [
      "check the gauge's scale against gauge blocks",
      "the gauge's scale",
    ],
    "reference flat": [
      "zero on a flat that is known better",
      "the reference flat",
    ],
    "display step of the reading": ["use a finer display", "the display step"],
    "display step of the zero": ["use a finer display", "the display step"],
    "lean of the stem": ["set the gauge upright", "the lean of the gauge"],
  };

/** What more sets are held against. */
export interface WhatHelpsOptions {
  /** How far from the target is still good, in mm, where that is stated. */
  readonly tolerance?: number | undefined;
  /** The user's unit; mm unless stated. */
  readonly unit?: LengthUnit;
}

/** What of a stated radius tells what would make it surer. */
export type DoubtfulRadius = Pick<RadiusStatement, "radius" | "people"> & {
  readonly budget: {
    readonly lines:
      readonly (Pick<BudgetLine, "source" | "share"> & Partial<BudgetLine>)[];
    readonly estimate?: unknown;
  };
};

/** Standard deviations that hold 95 % of a normal distribution. */
const NORMAL_95 = 1.96;

/**
 * Says what would make a radius surer: more sets, where the scatter of reading
 * is the largest source, else something about the largest source. Where what
 * sets do not touch is wider than the tolerance by itself, no number of sets
 * can show the radius to be within it, and that is said.
 *
 * @param radius The radius with its budget; undefined where there is none.
 * @param options Tolerance of the target, and the unit.
 * @returns Such as `read more sets first`.
 *
 * @example A ring known to 0.1 mm
 * ```ts
 * import { whatHelps } from "sagbook/narrative/what_helps.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const lines = [
 *   { source: "ring radius", common: "ring A radius", share: 0.93 },
 *   { source: "repetition", share: 0.07 },
 * ];
 * equal(
 *   whatHelps({ radius: mm(2200), budget: { lines } }),
 *   "measure the ring better first — more sets do little, since the largest part of the doubt comes from the ring's radius",
 * );
 * equal(whatHelps(undefined), "read more sets first");
 * ```
 */
export function whatHelps(
  radius: DoubtfulRadius | undefined,
  { tolerance, unit = "mm" }: WhatHelpsOptions = {},
): string {
  const { lines, estimate } = radius?.budget ?? { lines: [] };
  const averaged = lines.filter(averagesOut)
    .reduce((sum, { share }) => sum + share, 0);
  const lasting = lines.filter((line) => !averagesOut(line))
    .sort((a, b) => b.share - a.share);
  const [worst] = lasting;
  const [act, source] = worst === undefined
    ? ["", ""]
    : CURES[worst.source] ?? ["settle its largest source", worst.source];
  if (worst !== undefined && worst.share > averaged) {
    return `${act} first — more sets do little, since the largest part of the doubt comes from ${source}`;
  }
  // Lines are in mm of R, or of curvature where R has no deviation.
  const scale = radius === undefined || estimate !== undefined
    ? 1
    : radius.radius ** 2;
  const left = NORMAL_95 * scale *
    Math.hypot(...lasting.map(({ contribution = 0 }) => contribution));
  if (tolerance !== undefined && left > tolerance) {
    return `${act} first — no number of sets can show the radius to be within the tolerance, since what they leave as it is makes ±${
      writeSmall(left, unit)
    } by itself, most of it from ${source}`;
  }
  return radius?.people === undefined
    ? "read more sets first"
    : "have more people read first — more sets by the same people do little, since the people differ";
}
