/**
 * One line of a table, or one cell of a bench sheet, to a reading.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { FootDirection } from "../geometry/feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { LengthUnitName } from "../units/length_unit.ts";
import type { Bench, Ring } from "./bench.ts";
import { closestName } from "./_closest_name.ts";
import { TIDY_COLUMNS, type TidyColumn } from "./_column_names.ts";
import { parseFoot } from "./_foot_cell.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import type { ProblemCollector } from "./_problem_collector.ts";
import {
  familyOf,
  type FileDecimal,
  readNumber,
  unitOfWord,
} from "./_read_cell.ts";
import { type LengthReading, parseLength } from "../units/parse_length.ts";
import type { Reading } from "./reading.ts";
import { ReadingCells } from "./_reading_cells.ts";
import { type Place, resolvePlace } from "./_resolve_place.ts";
import { parseZoneName } from "./_zone_name.ts";
import { parseTakenAt } from "./_taken_at.ts";

/** What a line reader needs to know of its file. */
export interface LineSource {
  readonly file: string;
  readonly piece: Piece;
  readonly bench: Bench;
  readonly decimal: FileDecimal;
  readonly columns: ReadonlyMap<TidyColumn, number>;
  readonly headings: readonly string[];
  readonly unknown: readonly number[];
  readonly problems: ProblemCollector;
}

type Row = readonly string[];
type Angle = { readonly degrees?: number; readonly bad?: string };
const FLAT_ZONE = { label: "flat", distance: millimetres(0) } as const;
const SIZE_OF_CACHE = 50_000;
const SURELY_FLAT = millimetres(1e9);

/** Reads lines of one file; remembers what it has met, for files repeat it. */
export class LineReader {
  /** What a column holds when the file has no such column. */
  readonly defaults: Partial<Record<TidyColumn, string>> = {};
  readonly #source: LineSource;
  readonly #at: Record<TidyColumn, number>;
  readonly #cells: ReadingCells;
  readonly #places = new Map<string, Place | { readonly kind: "flat" }>();
  readonly #zeroings = new Map<string, Map<string, string>>();
  readonly #rings = new Map<string, Ring | undefined>();
  readonly #radii = new Map<string, Millimetres>();
  readonly #angles = new Map<string, Angle>();
  readonly #numbers = new Map<string, number | undefined>();
  /** True when the last reading took its unit from bench.json. */
  lastUnitAssumed = false;
  #bad: Problem[] = [];
  #line = 0;

  /** Sets the file. */
  constructor(source: LineSource) {
    this.#source = source;
    this.#cells = new ReadingCells(source.piece, source.bench, source.decimal);
    this.#at = Object.fromEntries(
      TIDY_COLUMNS.map((name) => [name, source.columns.get(name) ?? -1]),
    ) as Record<TidyColumn, number>;
  }

  #cell(row: Row, name: TidyColumn): string {
    const index = this.#at[name];
    if (index < 0) return this.defaults[name] ?? "";
    const cell = row[index];
    return cell === undefined ? "" : cell.trim();
  }

  #heading(name: TidyColumn): string {
    const index = this.#at[name];
    return index < 0 ? name : this.#source.headings[index].trim();
  }

  #refuse(
    column: TidyColumn | string,
    value: string,
    fault: Omit<Problem, "severity" | "file">,
    severity: Problem["severity"] = "refused",
  ): void {
    const problem: Problem = {
      ...fault,
      severity,
      file: this.#source.file,
      line: this.#line,
      column,
      value,
    };
    if (severity === "refused") this.#bad.push(problem);
    else this.#source.problems.add(problem);
  }

  /**
   * Reads one reading from a row.
   *
   * @returns The reading, or `undefined` when the line was refused; the
   * reasons are then in the collector.
   */
  read(
    row: Row,
    line: number,
    order: number,
    readingAt: number,
    readingUnit: string,
    zoneTyped: string | undefined,
  ): Reading | undefined {
    this.#line = line;
    if (this.#bad.length > 0) this.#bad = [];
    const session = this.#cell(row, "session");
    const label = this.#cell(row, "zeroing");
    if (session === "") this.#blank("session", "the reading's session");
    if (label === "") this.#blank("zeroing", "the zeroing it belongs to");
    const ring = this.#ring(this.#cell(row, "ring"));
    const unitCell = this.#cell(row, "unit");
    const typed = (row[readingAt] ?? "").trim();
    const shown = this.#cells.read(typed, unitCell, readingUnit);
    const readingName = zoneTyped === undefined
      ? this.#heading("reading")
      : zoneTyped;
    if (shown.kind === "unreadable") {
      const blame = shown.blame === "unit" && unitCell !== ""
        ? [this.#heading("unit"), unitCell] as const
        : [readingName, typed] as const;
      this.#refuse(blame[0], blame[1], shown.fault);
    }
    const diameter = this.#angle(row);
    const foot = this.#foot(this.#cell(row, "foot_deg"), ring);
    const zone = zoneTyped ?? this.#cell(row, "zone");
    const place = ring === undefined ? undefined : this.#place(
      zone,
      this.#cell(row, "offset"),
      unitCell === "" ? readingUnit : unitCell,
      ring,
      diameter?.degrees,
      foot,
      shown.kind === "shown" ? shown.sag : undefined,
    );
    if (place?.kind === "refused") {
      const { code, message, expected, mend } = place;
      const blamed = zone === "" || this.#cell(row, "offset") !== ""
        ? "offset"
        : "zone";
      this.#refuse(
        zoneTyped ?? this.#heading(blamed),
        blamed === "offset" ? this.#cell(row, "offset") : zone,
        { code, message, mend, ...(expected ? { expected } : {}) },
      );
    }
    if (
      this.#bad.length > 0 || shown.kind !== "shown" || ring === undefined ||
      place === undefined || place.kind === "refused"
    ) {
      this.#source.problems.addAll(this.#bad);
      return undefined;
    }
    if (shown.finer) {
      this.#refuse(readingName, typed, {
        code: "finer-than-step",
        message: "the reading is finer than the display step; it is kept",
        mend: "nothing, if it was read between two marks",
      }, "note");
    }
    if (place.kind === "place" && place.named !== undefined) {
      this.#refuse(this.#heading("offset"), this.#cell(row, "offset"), {
        code: "offset-wins",
        message: `the offset wins over “${zone}”, which would be ${
          place.named.toFixed(2)
        } mm`,
      }, "note");
    }
    if (place.kind === "place" && place.doubt !== undefined) {
      this.#refuse(zoneTyped ?? this.#heading("zone"), zone, {
        code: "foot-unknown",
        message: place.doubt,
        mend:
          "write “feet out” under foot_deg (or as the ring's foot in bench.json) if two feet pointed outwards; if one did, take the reading out",
      }, "warning");
    }
    const zeroBefore = this.#zeroBefore(row, unitCell, readingUnit);
    const work = place.kind === "place";
    this.lastUnitAssumed = shown.unitAssumed;
    const other = this.#other(row);
    return {
      file: this.#source.file,
      line,
      order,
      session,
      takenAt: this.#takenAt(this.#cell(row, "taken_at")),
      grade: this.#cell(row, "grade") || undefined,
      ring: ring.id,
      zeroing: this.#zeroing(session, label),
      zeroBefore,
      diameterDegrees: diameter.degrees,
      foot,
      on: work ? "work" : "flat",
      zone: work ? place.zone : FLAT_ZONE,
      offset: work ? place.offset : FLAT_ZONE.distance,
      sag: shown.sag,
      step: shown.step,
      unit: shown.unit,
      operator: this.#cell(row, "operator") || undefined,
      temperatureAir: this.#temperature(row, "temperature_air"),
      temperatureBench: this.#temperature(row, "temperature_bench"),
      temperatureWork: this.#temperature(row, "temperature_work"),
      note: this.#at.note < 0 ? undefined : (row[this.#at.note] ?? "").trim(),
      ...(other === undefined ? {} : { other }),
    };
  }

  #blank(column: TidyColumn, what: string): void {
    this.#refuse(this.#heading(column), "", {
      code: "blank-cell",
      message: `the line does not say ${what}`,
      mend: `fill the column ${column}`,
    });
  }

  #zeroing(session: string, label: string): string {
    let ofSession = this.#zeroings.get(session);
    if (ofSession === undefined) {
      this.#zeroings.set(session, ofSession = new Map());
    }
    let key = ofSession.get(label);
    if (key === undefined) {
      if (ofSession.size >= SIZE_OF_CACHE) ofSession.clear();
      ofSession.set(label, key = `${session} / ${label}`);
    }
    return key;
  }

  #ring(typed: string): Ring | undefined {
    const { rings } = this.#source.bench;
    if (!this.#rings.has(typed)) {
      if (this.#rings.size >= SIZE_OF_CACHE) this.#rings.clear();
      this.#rings.set(
        typed,
        typed === ""
          ? rings.length === 1 ? rings[0] : undefined
          : rings.find((ring) => ring.id === typed) ??
            rings.find((ring) => ring.id.toLowerCase() === typed.toLowerCase()),
      );
    }
    const ring = this.#rings.get(typed);
    if (ring === undefined) {
      const ids = rings.map((one) => one.id);
      const near = closestName(typed, ids);
      this.#refuse(this.#heading("ring"), typed, {
        code: typed === "" ? "no-ring" : "unknown-ring",
        message: typed === ""
          ? "the line names no ring, and the bench has several"
          : "the bench has no ring of this name",
        expected: ids.slice(0, 8).join(", "),
        mend: near === undefined
          ? "name a ring of bench.json, or add this one there"
          : `did you mean ${near}?`,
      });
    }
    return ring;
  }

  #angle(row: Row): Angle {
    const typed = this.#cell(row, "diameter_deg");
    let found = this.#angles.get(typed);
    if (found === undefined) {
      const number = readNumber(
        typed.replace(/\s*(?:°|deg|degrees?)$/i, ""),
        this.#source.decimal,
      );
      found = number.kind === "number"
        ? { degrees: number.value }
        : number.kind === "blank"
        ? {}
        : { bad: typed };
      if (this.#angles.size >= SIZE_OF_CACHE) this.#angles.clear();
      this.#angles.set(typed, found);
    }
    if (found.bad !== undefined) {
      this.#refuse(this.#heading("diameter_deg"), typed, {
        code: "not-an-angle",
        message: "this is not an angle",
        expected: "the direction of the diameter in degrees, such as 60",
        mend: "type the degrees, or leave the cell blank",
      });
    }
    return found;
  }

  #foot(typed: string, ring: Ring | undefined): FootDirection {
    if (typed === "") return ring?.foot ?? { kind: "unknown" };
    const foot = parseFoot(typed, this.#source.decimal);
    if (foot !== undefined) return foot;
    this.#refuse(this.#heading("foot_deg"), typed, {
      code: "not-a-foot-direction",
      message: "this is no direction of foot 1",
      expected: "degrees, “foot out”, “feet out” or “unknown”",
      mend: "write one of these, or leave the cell blank",
    });
    return { kind: "unknown" };
  }

  #place(
    zone: string,
    offsetTyped: string,
    unit: string,
    ring: Ring,
    diameterDegrees: number | undefined,
    foot: FootDirection,
    sag: Millimetres | undefined,
  ): Place | { readonly kind: "flat" } {
    const angle = foot.kind === "angle" ? foot.degrees : foot.kind;
    const key =
      `${zone}\u0000${offsetTyped}\u0000${unit}\u0000${ring.id}\u0000${diameterDegrees}\u0000${angle}`;
    const known = this.#places.get(key);
    if (known !== undefined) return known;
    const name = parseZoneName(zone);
    let found: Place | { readonly kind: "flat" };
    if (name?.kind === "flat") found = { kind: "flat" };
    else {
      const asLength = name?.kind === "length" && offsetTyped === ""
        ? name.text
        : offsetTyped;
      const offset = this.#offset(asLength, unit);
      found = offset.kind === "refused" ? offset : resolvePlace({
        piece: this.#source.piece,
        ring,
        radius: this.#radius(ring, sag),
        foot,
        diameterDegrees,
        ...(name === undefined || name.kind === "length" ? {} : { name }),
        typed: name?.kind === "length" ? "" : zone,
        offset: offset.length,
      });
    }
    if (this.#places.size >= SIZE_OF_CACHE) this.#places.clear();
    this.#places.set(key, found);
    return found;
  }

  /** A radius for the contact points: nominal, or the first that was read. */
  #radius(ring: Ring, sag: Millimetres | undefined): Millimetres {
    const { piece } = this.#source;
    const nominal = piece.target?.radius ?? piece.startingRadius ??
      this.#radii.get(ring.id);
    if (nominal !== undefined) return nominal;
    const feet = effectiveFeet(ring.shape, piece.form);
    const size = Math.abs(sag ?? 0);
    if (size === 0 || size > feet.circleRadius) return SURELY_FLAT;
    const radius = radiusFromSag(millimetres(size), feet, piece.form);
    this.#radii.set(ring.id, radius);
    return radius;
  }

  #offset(
    typed: string,
    lineUnit: string,
  ):
    | { readonly kind: "length"; readonly length?: Millimetres }
    | (Place & { readonly kind: "refused" }) {
    const refused = (message: string, mend: string) => ({
      kind: "refused",
      code: "no-place",
      message,
      mend,
    } as const);
    if (typed === "") return { kind: "length" };
    const fallback = this.#source.bench.gauge.unit ?? this.#source.piece.unit;
    const unit = unitOfWord(lineUnit) ?? fallback;
    const read = this.#length(typed, unit);
    if (read.kind === "blank") return { kind: "length" };
    if (read.kind === "refused") {
      return refused(
        `the offset is not a length: ${read.reason}`,
        "type the distance from the centre of the work",
      );
    }
    if (read.kind === "ambiguous") {
      return refused(
        `the offset can be read two ways: ${
          read.amounts.join(` ${read.unit} or `)
        } ${read.unit}`,
        "write it without a thousands mark",
      );
    }
    const family = familyOf(read.unit);
    const fine = read.unit !== family && read.unit !== "cm" &&
      read.unit !== "m";
    if (read.unitAssumed && fine && read.amount !== 0) {
      return refused(
        `the line's unit is ${read.unit}: this is ${read.amount} ${read.unit} or ${read.amount} ${family}`,
        `write the unit into the cell: ${read.amount} ${family}`,
      );
    }
    return { kind: "length", length: read.value };
  }

  /** A length under the file's decimal mark, never guessed. */
  #length(typed: string, defaultUnit: LengthUnitName): LengthReading {
    const { mark } = this.#source.decimal;
    if (mark !== "unknown") {
      return parseLength(typed, { decimal: mark, defaultUnit });
    }
    const asComma = parseLength(typed, { decimal: ",", defaultUnit });
    return asComma.kind === "ambiguous"
      ? asComma
      : parseLength(typed, { decimal: ".", defaultUnit });
  }

  #zeroBefore(
    row: Row,
    unit: string,
    readingUnit: string,
  ): Millimetres | undefined {
    if (this.#at.zero_before < 0) return undefined;
    const typed = this.#cell(row, "zero_before");
    if (typed === "") return undefined;
    const shown = this.#cells.read(typed, unit, readingUnit);
    if (shown.kind === "shown") return shown.sag;
    this.#refuse(this.#heading("zero_before"), typed, {
      ...shown.fault,
      message: `${shown.fault.message}; the reading is used without it`,
    }, "warning");
    return undefined;
  }

  #temperature(row: Row, name: TidyColumn): number | undefined {
    if (this.#at[name] < 0) return undefined;
    const typed = this.#cell(row, name);
    if (typed === "") return undefined;
    if (!this.#numbers.has(typed)) {
      const number = readNumber(
        typed.replace(/\s*(?:°\s*c?|c)$/i, ""),
        this.#source.decimal,
      );
      if (this.#numbers.size >= SIZE_OF_CACHE) this.#numbers.clear();
      this.#numbers.set(
        typed,
        number.kind === "number" && Math.abs(number.value) < 150
          ? number.value
          : undefined,
      );
    }
    const value = this.#numbers.get(typed);
    if (value === undefined) {
      this.#refuse(this.#heading(name), typed, {
        code: "not-a-temperature",
        message: "this is not a temperature; the reading is used without it",
        expected: "degrees Celsius such as 20.5",
      }, "warning");
    }
    return value;
  }

  #takenAt(typed: string): string | undefined {
    if (typed === "") return undefined;
    const found = parseTakenAt(typed);
    if (found === undefined) {
      this.#refuse(this.#heading("taken_at"), typed, {
        code: "not-a-date",
        message:
          "this is not a date that can be read one way only; the reading is used without it",
        expected: "year-month-day, with the time if known: 2031-05-17 14:20",
      }, "warning");
    }
    return found;
  }

  #other(row: Row): Record<string, string> | undefined {
    const { unknown, headings } = this.#source;
    if (unknown.length === 0) return undefined;
    const other: Record<string, string> = Object.create(null);
    for (const index of unknown) {
      const cell = row[index];
      if (cell !== undefined && cell !== "") {
        other[headings[index].trim()] = cell;
      }
    }
    return other;
  }
}
