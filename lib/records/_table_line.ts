/**
 * One line of a typed table, cell by cell.
 *
 * @module
 */
import type { Millimetres } from "../units/length.ts";
import type { LengthUnitName } from "../units/length_unit.ts";
import { closestName } from "./closest_name.ts";
import { bracketed } from "./_column_names.ts";
import { cellOfCsv } from "./csv_text.ts";
import type { Fault, LineFaults } from "./_line_faults.ts";
import {
  type FileDecimal,
  readLength,
  readNumber,
  unitOfWord,
} from "./_read_cell.ts";
import { dateFault, parseTakenAt } from "./_taken_at.ts";

/** One line of a typed table; a cell that cannot be read refuses the line. */
export class TableLine {
  /** Line in the file, from 1. */
  readonly line: number;
  readonly #row: readonly string[];
  readonly #at: ReadonlyMap<string, number>;
  readonly #headings: readonly string[];
  readonly #faults: LineFaults;
  readonly #decimal: FileDecimal;
  readonly #unit: LengthUnitName | undefined;

  /** Sets the line. */
  constructor(
    line: number,
    row: readonly string[],
    at: ReadonlyMap<string, number>,
    headings: readonly string[],
    faults: LineFaults,
    decimal: FileDecimal,
    unit: LengthUnitName | undefined,
  ) {
    this.line = line;
    this.#row = row;
    this.#at = at;
    this.#headings = headings;
    this.#faults = faults;
    this.#decimal = decimal;
    this.#unit = unit;
  }

  /** Refuses the line because of a cell. */
  refuse(name: string, fault: Fault): undefined {
    this.#faults.refuse(name, this.#cell(name), fault);
    return undefined;
  }

  #cell(name: string): string {
    const index = this.#at.get(name);
    return index === undefined ? "" : (this.#row[index] ?? "").trim();
  }

  /** A text; `undefined` for a blank cell. */
  text(name: string): string | undefined {
    return cellOfCsv(this.#cell(name)) || undefined;
  }

  /** A number of at least 0; `undefined` for a blank cell. */
  amount(name: string): number | undefined {
    const read = readNumber(this.#cell(name), this.#decimal);
    if (read.kind === "blank") return undefined;
    if (read.kind === "number" && read.value >= 0) return read.value;
    return this.refuse(name, {
      code: read.kind === "ambiguous" ? "ambiguous-number" : "not-a-number",
      message: read.kind === "ambiguous"
        ? `this can be read two ways: ${read.readings.join(" or ")}`
        : read.kind === "refused"
        ? `this is not a number: ${read.reason}`
        : "this must be 0 or more",
      expected: "a number of at least 0",
    });
  }

  /** A length above 0, in mm; `undefined` for a blank cell. */
  length(name: string): Millimetres | undefined {
    const index = this.#at.get(name);
    const heading = index === undefined
      ? undefined
      : bracketed(this.#headings[index]);
    const unit = (heading && unitOfWord(heading)) ||
      unitOfWord(this.#cell("unit")) || this.#unit;
    const read = readLength(this.#cell(name), this.#decimal, unit);
    if (read.kind === "blank") return undefined;
    if (read.kind === "length" && read.value > 0) return read.value;
    return this.refuse(name, {
      code: read.kind === "ambiguous" ? "ambiguous-number" : "not-a-length",
      message: read.kind === "ambiguous"
        ? `this can be read two ways: ${
          read.amounts.join(` ${read.unit} or `)
        } ${read.unit}`
        : read.kind === "refused"
        ? `this is not a length: ${read.reason}`
        : "this must be above 0",
      expected: "a length with its unit, such as 40.02 mm",
    });
  }

  /** One of some words; `undefined` for a blank cell. */
  word<W extends string>(name: string, known: readonly W[]): W | undefined {
    const typed = this.#cell(name);
    if (typed === "") return undefined;
    const plain = typed.toLowerCase().replace(/[\s_-]+/g, " ");
    const found = known.find((word) => word === plain);
    if (found !== undefined) return found;
    const near = closestName(plain, known);
    return this.refuse(name, {
      code: "unknown-word",
      message: "this is not one of the words known here",
      expected: known.join(", "),
      ...(near === undefined ? {} : { mend: `did you mean ${near}?` }),
    });
  }

  /** An ISO date; `undefined` for a blank cell. */
  date(name: string): string | undefined {
    const typed = this.#cell(name);
    if (typed === "") return undefined;
    return parseTakenAt(typed) ?? this.refuse(name, {
      ...dateFault(typed),
      expected: "year-month-day, such as 2031-05-17",
    });
  }
}
