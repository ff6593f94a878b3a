/**
 * Lengths and names as a handout writes them.
 *
 * @module
 */
import { type Markup, markup } from "../display/markup.ts";
import { ringName } from "../records/ring_name.ts";
import type { LengthUnit } from "../records/piece.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import { formula, mi } from "./_formula.ts";
import type { HandoutFigures, HandoutRing } from "./handout_figures.ts";
import { writeSmall } from "./sag_words.ts";

/** A name that fits on a line of the sheet. */
export function shortName(name: string, most: number = 60): string {
  return name.length <= most ? name : `${name.slice(0, most - 1)}…`;
}

/** A ring's name, no longer than fits. */
export function shortRingName(
  { id }: { readonly id: string },
  most: number = 30,
): string {
  return shortName(ringName(id), most);
}

/** A change of radius, with two figures and no less than a whole unit. */
export function writeRadius(radius: number, unit: LengthUnit): string {
  return formatLength(millimetres(radius), unit, unit === "mm" ? 1 : 2);
}

/** A length on the disc. */
export function rounded(length: number, unit: LengthUnit): string {
  return formatLength(millimetres(length), unit, unit === "mm" ? 0 : 2);
}

/** The size of a ring or a ball. */
export function writeSize(length: number, unit: LengthUnit): string {
  return formatLength(millimetres(length), unit, unit === "mm" ? 2 : 4);
}

/** A length with as many figures after the point as it needs, up to `most`. */
export function writeExactly(
  length: number,
  unit: LengthUnit,
  most: number,
): string {
  const amount = amountIn(millimetres(length), unit);
  const needed = String(Number(roundDecimal(amount, most))).split(".")[1] ?? "";
  return formatLength(millimetres(length), unit, needed.length);
}

/** A display step, such as `1 µm`, `0.05 thou` or `0.01 mm`. */
export function writeStep(step: number, unit: LengthUnit): string {
  return step >= 0.01 && unit === "mm"
    ? formatLength(millimetres(step), "mm", 2)
    : writeSmall(step, unit, 1);
}

/** A letter of a formula within a line. */
export const letter = (name: string): Markup => formula(mi(name));

/** The ring of which the sheet speaks: one of balls that can be moved. */
export function mainRing({ rings }: HandoutFigures): HandoutRing {
  return rings.find(({ atEdge }) => atEdge !== undefined) ?? rings[0];
}

/** A list of rules. */
export function rules(...items: readonly (string | Markup)[]): Markup {
  return markup`<ul>${items.map((item) => markup`<li>${item}</li>`)}</ul>`;
}
