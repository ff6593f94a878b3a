/**
 * The units of length that people write beside a number.
 *
 * @module
 */
import { type Millimetres, millimetres } from "./length.ts";

/** A unit of length by its short name. */
export type LengthUnitName =
  | "mm"
  | "cm"
  | "m"
  | "µm"
  | "nm"
  | "in"
  | "thou"
  | "µin";

/** What a unit's text turned out to be. */
export type UnitReading =
  | { readonly kind: "unit"; readonly unit: LengthUnitName }
  | { readonly kind: "blank" }
  | {
    readonly kind: "refused";
    /** Why, with the units that are known. */
    readonly reason: string;
  };

/** Millimetres in a unit as a ratio, so that no factor is rounded. */
const MILLIMETRES: Record<LengthUnitName, readonly [number, number]> = {
  mm: [1, 1],
  cm: [10, 1],
  m: [1000, 1],
  "µm": [1, 1000],
  nm: [1, 1_000_000],
  in: [127, 5],
  thou: [127, 5000],
  "µin": [127, 5_000_000],
};

/** How each unit may be written, in lower case and with one micro sign. */
const SPELLINGS: Record<LengthUnitName, readonly string[]> = {
  mm: ["mm", "mm.", "millimetre", "millimetres", "millimeter", "millimeters"],
  cm: ["cm", "centimetre", "centimetres", "centimeter", "centimeters"],
  m: ["m", "metre", "metres", "meter", "meters"],
  "µm": [
    ...["µm", "um", "micron", "microns"],
    ...["micrometre", "micrometres", "micrometer", "micrometers"],
  ],
  nm: ["nm", "nanometre", "nanometres", "nanometer", "nanometers"],
  in: ["in", "in.", "inch", "inches", '"', "″", "”", "“", "''", "′′", "’’"],
  thou: ["thou", "thou.", "thous", "mil", "mils", "thousandths of an inch"],
  "µin": [
    ...["uin", "µin", "uin.", "µin.", 'µ"', 'u"', "microinch"],
    ...["microinches", "micro-inch", "micro-inches", "micro inch"],
  ],
};

const UNIT_OF = new Map(
  Object.entries(SPELLINGS).flatMap(([unit, spellings]) =>
    spellings.map((spelling) => [spelling, unit as LengthUnitName] as const)
  ),
);

/** Capitals that change what a metric unit means. */
const CASE_MATTERS = new Set(["M", "NM", "Nm", "nM"]);

/**
 * Every unit that is read, as a message lists them.
 *
 * @example
 * ```ts
 * import { KNOWN_UNITS } from "sagbook/units/length_unit.ts";
 * import { ok } from "node:assert/strict";
 *
 * ok(KNOWN_UNITS.includes("thou"));
 * ```
 */
export const KNOWN_UNITS: string =
  'mm, cm, m, µm (um, micron), nm, in (inch, "), thou (mil), µin (uin)';

/**
 * Reads a unit of length as people type it.
 *
 * Capitals and brackets around the unit do not matter, but for `M` (a prefix, not a unit) and `NM`, which
 * are refused rather than guessed. The two micro signs (U+00B5 and U+03BC) are
 * the same; `mil` and `thou` are both a thousandth of an inch.
 *
 * @param text A unit's name or sign.
 * @returns The unit, or blank, or refused with the units that are known.
 *
 * @example
 * ```ts
 * import { parseUnit } from "sagbook/units/length_unit.ts";
 * import { deepEqual, equal } from "node:assert/strict";
 *
 * deepEqual(parseUnit(" MM "), { kind: "unit", unit: "mm" });
 * deepEqual(parseUnit("micron"), { kind: "unit", unit: "µm" });
 * equal(parseUnit("M").kind, "refused");
 * ```
 */
export function parseUnit(text: string): UnitReading {
  const typed = text.trim();
  if (typed === "") return { kind: "blank" };
  const key = typed.normalize("NFKC").toLowerCase().replaceAll("μ", "µ")
    .replaceAll("”", '"').replace(/^[([](.*)[)\]]$/, "$1")
    .replaceAll(/\s+/g, " ").trim();
  const unit = CASE_MATTERS.has(typed) ? undefined : UNIT_OF.get(key);
  if (unit !== undefined) return { kind: "unit", unit };
  return {
    kind: "refused",
    reason: `"${typed}" is not a known unit of length: ${KNOWN_UNITS}`,
  };
}

/**
 * Turns an amount of a unit into millimetres.
 *
 * @param amount A finite number of units.
 * @param unit The unit.
 * @returns The length in mm, within two roundings.
 * @throws {RangeError} If the amount is not finite.
 *
 * @see ISO 80000-3: one inch is 25.4 mm exactly.
 *
 * @example
 * ```ts
 * import { lengthFrom } from "sagbook/units/length_unit.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(lengthFrom(715, "µm"), 0.715);
 * equal(lengthFrom(10, "in"), 254);
 * ```
 */
export function lengthFrom(amount: number, unit: LengthUnitName): Millimetres {
  const [times, per] = MILLIMETRES[unit];
  return millimetres(amount * times / per);
}

/**
 * Counts how many of a unit a length is.
 *
 * @param length A length in mm.
 * @param unit The unit wanted.
 * @returns The amount of that unit, within two roundings.
 *
 * @example
 * ```ts
 * import { amountIn } from "sagbook/units/length_unit.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(amountIn(mm(0.0254), "thou"), 1);
 * ```
 */
export function amountIn(length: Millimetres, unit: LengthUnitName): number {
  const [times, per] = MILLIMETRES[unit];
  return length * per / times;
}
