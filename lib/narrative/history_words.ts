/**
 * Amounts of work, rates and settings in words.
 *
 * @module
 */
import type { Setting } from "../fabrication/work_timeline.ts";
import { progressLimits } from "../fabrication/predict_progress.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { smallUnit } from "./sag_words.ts";

/**
 * Writes an amount of work.
 *
 * @param amount Wets or minutes.
 * @param unit Which of them.
 * @returns Such as `12 wets`, `1 wet`, `0.4 wets`; whole from ten on.
 *
 * @example
 * ```ts
 * import { writeWork } from "sagbook/narrative/history_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(writeWork(12.4, "wets").replace("\u00a0", " "), "12 wets");
 * equal(writeWork(1, "wets").replace("\u00a0", " "), "1 wet");
 * ```
 */
export function writeWork(amount: number, unit: "wets" | "minutes"): string {
  const rounded = amount < 9.95
    ? Number(amount.toFixed(1))
    : Math.round(amount);
  const name = rounded === 1 ? unit.slice(0, -1) : unit;
  return `${rounded}\u00a0${name}`;
}

/**
 * Writes the most work that may be done, never rounded up.
 *
 * @param amount Wets or minutes, at least 0.
 * @param unit Which of them.
 * @returns Such as `12 wets`; parts below one are kept in tenths.
 *
 * @example
 * ```ts
 * import { writeMostWork } from "sagbook/narrative/history_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(writeMostWork(12.9, "wets").replace("\u00a0", " "), "12 wets");
 * equal(writeMostWork(0.79, "wets").replace("\u00a0", " "), "0.7 wets");
 * ```
 */
export function writeMostWork(
  amount: number,
  unit: "wets" | "minutes",
): string {
  const step = amount < 1 ? 10 : 1;
  return writeWork(Math.floor(amount * step) / step, unit);
}

/**
 * Names a setting.
 *
 * @param setting Grade and position, either of which may be missing.
 * @returns Such as `F80, mirror on top`.
 *
 * @example
 * ```ts
 * import { settingName } from "sagbook/narrative/history_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(settingName({ grade: "F80", position: "tool on top" }), "F80, tool on top");
 * equal(settingName({}), "a grade without a name");
 * ```
 */
export function settingName({ grade, position }: Setting): string {
  const name = grade ?? "a grade without a name";
  return position === undefined ? name : `${name}, ${position}`;
}

/**
 * Writes a rate with its 95 % uncertainty, with its sign.
 *
 * @param rate Change of sag for one wet or minute, in mm.
 * @param unit The user's unit.
 * @returns Such as `+12.1 ± 0.9 µm`.
 *
 * @example
 * ```ts
 * import { writeRate } from "sagbook/narrative/history_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * const rate = { value: 0.012, own: 0.0005, dof: Infinity, common: {} };
 * equal(writeRate(rate, "mm").replaceAll("\u00a0", " "), "+12.00 ± 0.98 µm");
 * ```
 */
export function writeRate(rate: Estimate, unit: LengthUnit): string {
  const { low, high } = progressLimits(rate);
  const size = formatWithUncertainty(
    millimetres(Math.abs(rate.value)),
    millimetres((high - low) / 2),
    smallUnit(unit),
  );
  // What rounds to nothing has no sign.
  const sign = parseFloat(size) === 0 ? "" : rate.value < 0 ? "−" : "+";
  return sign + size;
}
