/**
 * The cells beside a reading: ring, angle, feet, temperature, time.
 *
 * @module
 */
import type { FootDirection } from "../geometry/feet.ts";
import type { Bench, Ring } from "./bench.ts";
import { closestName } from "./closest_name.ts";
import { cellOfCsv } from "./csv_text.ts";
import { parseFoot } from "./_foot_cell.ts";
import type { Fault } from "./_line_faults.ts";
import { remembered } from "./_memo.ts";
import { type FileDecimal, readNumber } from "./_read_cell.ts";
import { dateFault, parseTakenAt } from "./_taken_at.ts";

/** A cell that was understood, or what is wrong with it. */
export type Cell<T> =
  | { readonly value: T; readonly fault?: undefined }
  | { readonly value?: undefined; readonly fault: Fault };

const HOTTEST = 150;

/** Readers of the cells beside a reading. */
export interface SideCells {
  /** The ring; the bench's only one for a blank cell. */
  readonly ring: (typed: string) => Cell<Ring>;
  /** Degrees of a diameter; `NaN` for a blank cell. */
  readonly angle: (typed: string) => Cell<number>;
  /** Where foot 1 pointed; the cell is not blank. */
  readonly foot: (typed: string) => Cell<FootDirection>;
  /** Degrees Celsius. */
  readonly temperature: (typed: string) => Cell<number>;
  /** An ISO date and time. */
  readonly takenAt: (typed: string) => Cell<string>;
}

function ringOf(cell: string, bench: Bench): Cell<Ring> {
  const typed = cellOfCsv(cell);
  const { rings } = bench;
  const found = typed === ""
    ? rings.length === 1 ? rings[0] : undefined
    : rings.find((ring) => ring.id === typed) ??
      rings.find((ring) => ring.id.toLowerCase() === typed.toLowerCase());
  if (found !== undefined) return { value: found };
  const ids = rings.map((one) => one.id);
  const near = closestName(typed, ids);
  return {
    fault: {
      code: typed === "" ? "no-ring" : "unknown-ring",
      message: typed === ""
        ? "the line names no ring, and the bench has several"
        : "the bench has no ring of this name",
      expected: ids.slice(0, 8).join(", "),
      mend: near === undefined
        ? "name a ring of bench.json, or add this one there"
        : `did you mean ${near}?`,
    },
  };
}

function angleOf(typed: string, decimal: FileDecimal): Cell<number> {
  const read = readNumber(
    typed.replace(/\s*(?:°|deg|degrees?)$/i, ""),
    decimal,
  );
  if (read.kind === "blank") return { value: NaN };
  if (read.kind === "number") return { value: read.value };
  return {
    fault: {
      code: "not-an-angle",
      message: "this is not an angle",
      expected: "the direction of the diameter in degrees, such as 60",
      mend: "type the degrees, or leave the cell blank",
    },
  };
}

function footOf(typed: string, decimal: FileDecimal): Cell<FootDirection> {
  const value = parseFoot(typed, decimal);
  if (value !== undefined) return { value };
  return {
    fault: {
      code: "not-a-foot-direction",
      message: "this is no direction of foot 1",
      expected: "degrees, “foot out”, “feet out” or “unknown”",
      mend: "write one of these, or leave the cell blank",
    },
  };
}

function temperatureOf(typed: string, decimal: FileDecimal): Cell<number> {
  const read = readNumber(typed.replace(/\s*(?:°\s*c?|c)$/i, ""), decimal);
  if (read.kind === "number" && Math.abs(read.value) < HOTTEST) {
    return { value: read.value };
  }
  return {
    fault: {
      code: "not-a-temperature",
      message: "this is not a temperature; the reading is used without it",
      expected: "degrees Celsius such as 20.5",
    },
  };
}

function takenAtOf(typed: string): Cell<string> {
  const value = parseTakenAt(typed);
  if (value !== undefined) return { value };
  const { code, message } = dateFault(typed);
  return {
    fault: {
      code,
      message: `${message}; the reading is used without it`,
      expected: "year-month-day, with the time if known: 2031-05-17 14:20",
    },
  };
}

/** Makes readers that work each text out once. */
export function sideCells(bench: Bench, decimal: FileDecimal): SideCells {
  return {
    ring: remembered((typed) => ringOf(typed, bench)),
    angle: remembered((typed) => angleOf(typed, decimal)),
    foot: remembered((typed) => footOf(typed, decimal)),
    temperature: remembered((typed) => temperatureOf(typed, decimal)),
    takenAt: remembered(takenAtOf),
  };
}
