/**
 * The cell of a reading, with its unit, to a sag.
 *
 * @module
 */
import { familyOf } from "../units/unit_family.ts";
import type { Millimetres } from "../units/length.ts";
import type { Bench } from "./bench.ts";
import { sagShown, stepInSag } from "./_gauge_sag.ts";
import type { LengthUnit, Piece } from "./piece.ts";
import type { Fault } from "./_line_faults.ts";
import { noNumber } from "./_no_number.ts";
import type { ShownValue } from "./reading.ts";
import type { LengthUnitName } from "../units/length_unit.ts";
import {
  type FileDecimal,
  inMillimetres,
  readNumber,
  splitUnit,
  UNIT_LIST,
  unitOfWord,
} from "./_read_cell.ts";

/** A reading's cell, understood. */
export interface Shown {
  readonly kind: "shown";
  readonly sag: Millimetres;
  readonly unit: LengthUnit;
  readonly typed: ShownValue;
  readonly step?: Millimetres;
  /** True where the number has more digits than the display can show. */
  readonly finer: boolean;
  /** True where the unit came from bench.json. */
  readonly unitAssumed: boolean;
}

/** A reading's cell that cannot be used. */
export interface Unreadable {
  readonly kind: "unreadable";
  readonly blame: "reading" | "unit";
  readonly fault: Fault;
}

const DIOPTRE = /^(?:d|dpt|dioptres?|diopters?)$/i;
const SIZE_OF_CACHE = 50_000;
const MOST_UNITS = 100;

const trimmed = (value: number) => String(Number(value.toPrecision(8)));

/** Reads reading cells; remembers texts it has met, for files repeat them. */
export class ReadingCells {
  readonly #caches = new Map<string, Map<string, Shown | Unreadable>>();
  #cache: Map<string, Shown | Unreadable> | undefined;
  #unit = "";
  #heading = "";
  readonly #piece: Piece;
  readonly #bench: Bench;
  readonly #decimal: FileDecimal;

  /** Sets the piece, the bench and the file's decimal mark. */
  constructor(piece: Piece, bench: Bench, decimal: FileDecimal) {
    this.#piece = piece;
    this.#bench = bench;
    this.#decimal = decimal;
  }

  /** Reads one cell; `unit` is the unit column's, `heading` the header's. */
  read(typed: string, unit: string, heading: string): Shown | Unreadable {
    let cache = this.#cache;
    if (
      cache === undefined || unit !== this.#unit || heading !== this.#heading
    ) {
      const key = `${unit}\u0000${heading}`;
      cache = this.#caches.get(key);
      if (cache === undefined) {
        if (this.#caches.size >= MOST_UNITS) this.#caches.clear();
        this.#caches.set(key, cache = new Map());
      }
      this.#cache = cache;
      this.#unit = unit;
      this.#heading = heading;
    }
    let found = cache.get(typed);
    if (found === undefined) {
      if (cache.size >= SIZE_OF_CACHE) cache.clear();
      found = this.#understand(typed, unit, heading);
      cache.set(typed, found);
    }
    return found;
  }

  #understand(
    typed: string,
    unitTyped: string,
    heading: string,
  ): Shown | Unreadable {
    const { gauge } = this.#bench;
    const power = gauge.shows.kind === "power";
    const refuse = (
      blame: "reading" | "unit",
      fault: Fault,
    ): Unreadable => ({ kind: "unreadable", blame, fault });
    const known = noNumber(typed);
    if (known !== undefined) return refuse("reading", known);
    const parts = splitUnit(typed);
    const number = readNumber(parts.number, this.#decimal);
    if (number.kind === "blank") {
      return refuse("reading", {
        code: "no-reading",
        message: "the reading is blank",
        expected: "a number such as 0.715",
        mend: "type the reading, or take the line out",
      });
    }
    if (number.kind === "refused") {
      return refuse("reading", {
        code: "not-a-number",
        message: `this is not a reading: ${number.reason}`,
        expected: "a decimal number such as 0.715, with or without a unit",
        mend: "type the number as the display showed it",
      });
    }
    const declared = unitTyped !== "" ? unitTyped : heading;
    const unitOf = (word: string): LengthUnitName | "D" | undefined =>
      power ? DIOPTRE.test(word.trim()) ? "D" : undefined : unitOfWord(word);
    const glued = parts.unit === undefined ? undefined : unitOf(parts.unit);
    if (parts.unit !== undefined && glued === undefined) {
      return refuse("reading", unknownUnit(parts.unit));
    }
    const stated = declared === "" ? undefined : unitOf(declared);
    if (declared !== "" && stated === undefined) {
      return refuse("unit", unknownUnit(declared));
    }
    const fromHeading = heading === "" ? undefined : unitOf(heading);
    const clash = glued !== undefined && stated !== undefined &&
        glued !== stated
      ? [
        glued,
        stated,
        "the cell",
        unitTyped !== "" ? "the unit column" : "the heading",
      ] as const
      : unitTyped !== "" && fromHeading !== undefined && stated !== undefined &&
          fromHeading !== stated
      ? [stated, fromHeading, "the unit column", "the heading"] as const
      : undefined;
    if (clash !== undefined && number.kind === "number") {
      const [one, other, here, there] = clash;
      const as = (unit: LengthUnitName | "D") =>
        unit === "D"
          ? `${number.value} D`
          : `${trimmed(inMillimetres(number.value, unit))} mm`;
      return refuse("reading", {
        code: "units-disagree",
        message: `${here} says ${one}, ${there} says ${other}: this is ${
          as(one)
        } or ${as(other)}`,
        mend: "keep the unit that the display showed",
      });
    }
    const benchUnit = power ? unitOf("D") : gauge.unit && unitOf(gauge.unit);
    const unit = glued ?? stated ?? benchUnit;
    if (unit === undefined) {
      return refuse("unit", {
        code: "no-unit",
        message: "neither the line nor bench.json says the unit",
        expected: UNIT_LIST,
        mend: "fill the unit column, or give the gauge a unit in bench.json",
      });
    }
    if (number.kind === "ambiguous") {
      const [one, other] = number.readings;
      return refuse("reading", {
        code: "ambiguous-number",
        message:
          `this can be read two ways: ${one} ${unit} or ${other} ${unit}`,
        expected: "a number whose mark cannot be a thousands mark",
        mend: `write ${
          one.toFixed(4)
        } or ${other}, or state "decimal_mark": "comma" (or "point") in bench.json, beside "gauge"`,
      });
    }
    const family = unit === "D" ? this.#piece.unit : familyOf(unit);
    const shown = unit === "D"
      ? number.value
      : inMillimetres(number.value, unit);
    // A display steps by the same amount in the unit of which nothing is said,
    // as far as anybody knows; no step at all would count no rounding.
    const own = gauge.steps[family];
    const step = own ?? gauge.steps[family === "mm" ? "in" : "mm"];
    try {
      const sag = sagShown(shown, gauge, this.#piece.form);
      const steps = own === undefined ? 0 : shown / own;
      return {
        kind: "shown",
        sag,
        unit: family,
        typed: { amount: number.value, unit },
        ...(step === undefined
          ? {}
          : { step: stepInSag(shown, step, gauge, this.#piece.form) }),
        finer: Math.abs(steps - Math.round(steps)) > 1e-3,
        unitAssumed: glued === undefined && stated === undefined && !power,
      };
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return refuse("reading", {
        code: "impossible-reading",
        message:
          `no ${this.#piece.form} surface under the ring set in the gauge shows this`,
        expected: `a ${gauge.shows.kind} that the set ring can see`,
        mend: "check the reading and the ring size set in the gauge",
      });
    }
  }
}

function unknownUnit(word: string): Fault {
  return {
    code: "unknown-unit",
    message: `“${word.slice(0, 30)}” is not a unit that is known here`,
    expected: UNIT_LIST,
    mend: word === "M"
      ? "M could be mm or m: write which"
      : "write one of these units",
  };
}
