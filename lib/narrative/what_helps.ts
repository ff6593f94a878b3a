/**
 * What would make a radius surer, in words.
 *
 * @module
 */
import type { BudgetLine } from "../uncertainty/budget.ts";
import { averagesOut } from "./plan_words.ts";

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

/**
 * Says what would make a radius surer: more sets, where the scatter of reading
 * is the largest source, else something about the largest source.
 *
 * @param lines The budget of the radius.
 * @returns Such as `read more sets first`.
 *
 * @example A ring known to 0.1 mm
 * ```ts
 * import { whatHelps } from "sagbook/narrative/what_helps.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(
 *   whatHelps([
 *     { source: "ring radius", common: "ring A radius", share: 0.93 },
 *     { source: "repetition", share: 0.07 },
 *   ]),
 *   "measure the ring better first — more sets do little, since the largest part of the doubt comes from the ring's radius",
 * );
 * equal(whatHelps([]), "read more sets first");
 * ```
 */
export function whatHelps(
  lines: readonly Pick<BudgetLine, "source" | "common" | "share">[],
): string {
  const averaged = lines.filter(averagesOut)
    .reduce((sum, { share }) => sum + share, 0);
  const [worst] = lines.filter((line) => !averagesOut(line))
    .sort((a, b) => b.share - a.share);
  if (worst === undefined || worst.share <= averaged) {
    return "read more sets first";
  }
  const [act, source] = CURES[worst.source] ??
    ["settle its largest source", worst.source];
  return `${act} first — more sets do little, since the largest part of the doubt comes from ${source}`;
}
