/**
 * One line of a table, or one cell of a bench sheet, to a reading.
 *
 * @module
 */
import { type TitleUnit, unitAssumed } from "./_unit_words.ts";
import type { FootDirection } from "../geometry/feet.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Ring } from "./bench.ts";
import { TIDY_COLUMNS, type TidyColumn } from "./tidy_columns.ts";
import { cellOfCsv } from "./csv_text.ts";
import { LineFaults } from "./_line_faults.ts";
import type { LineSource, ReadingCell } from "./_line_source.ts";
import { isPieceColumn, isSameName, otherPiece } from "./_piece_column.ts";
import { PlaceCells, remarkOnPlace } from "./_place_cells.ts";
import type { Reading } from "./reading.ts";
import { otherCells } from "./_table_rows.ts";
import { blankCell, FINER_THAN_STEP } from "./_row_words.ts";
import { labelOfTwo, zeroingKeys } from "./_zeroing_key.ts";
import { ReadingCells } from "./_reading_cells.ts";
import { type Cell, type SideCells, sideCells } from "./_side_cells.ts";

type Row = readonly string[];
const FLAT_ZONE = { label: "flat", distance: millimetres(0) } as const;
/** What in the column withdrawn leaves a line in use. */
const NO_MARK = /^(?:no?|0|false|-)$/i;
/** Characters without width, which nobody types on purpose. */
const NOWHERE = /[\u200b\u2060\ufeff]/;
const NOWHERE_ALL = /[\u200b\u2060\ufeff]/g;
const UNKNOWN_FOOT: FootDirection = { kind: "unknown" };

/** Reads lines of one file. */
export class LineReader {
  /** What a column holds when the file has no such column. */
  readonly defaults: Partial<Record<TidyColumn, string>> = {};
  /** A unit in the words above the header. */
  titleUnit: TitleUnit | undefined;
  /** What is wrong with the lines. */
  readonly faults: LineFaults;
  readonly #source: LineSource;
  readonly #at: Readonly<Record<TidyColumn, number>>;
  readonly #cells: ReadingCells;
  readonly #places: PlaceCells;
  readonly #side: SideCells;
  readonly #zeroing = zeroingKeys();
  readonly #pieceAt: number;

  /** Sets the file. */
  constructor(source: LineSource) {
    const { file, piece, bench, decimal, problems } = source;
    this.#source = source;
    this.faults = new LineFaults(file, problems);
    this.#cells = new ReadingCells(piece, bench, decimal);
    this.#places = new PlaceCells(piece, bench, decimal);
    this.#side = sideCells(bench, decimal);
    this.#pieceAt =
      source.unknown.find((index) => isPieceColumn(source.headings[index])) ??
        -1;
    this.#at = Object.fromEntries(
      TIDY_COLUMNS.map((name) => [name, source.columns.get(name) ?? -1]),
    ) as Record<TidyColumn, number>;
  }

  #cell(row: Row, name: TidyColumn): string {
    const index = this.#at[name];
    if (index < 0) return this.defaults[name] ?? "";
    const cell = row[index];
    if (cell === undefined) return "";
    const text = cell.trim();
    return NOWHERE.test(text) ? text.replaceAll(NOWHERE_ALL, "").trim() : text;
  }

  #heading(name: TidyColumn): string {
    const index = this.#at[name];
    return index < 0 ? name : this.#source.headings[index].trim();
  }

  /** A text; `undefined` for a blank cell. */
  #text(row: Row, name: TidyColumn): string | undefined {
    return cellOfCsv(this.#cell(row, name)) || undefined;
  }

  /**
   * Reads one reading from a row.
   *
   * @returns The reading, or `undefined` when the line was refused; the
   * reasons are then among the problems.
   */
  read(
    row: Row,
    line: number,
    order: number,
    cell: ReadingCell,
  ): Reading | undefined {
    const { faults } = this;
    faults.start(line);
    const mark = this.#cell(row, "withdrawn");
    if (mark !== "" && !NO_MARK.test(mark)) {
      faults.withdraw(this.#heading("withdrawn"), cellOfCsv(mark));
      return undefined;
    }
    const piece = this.#pieceAt < 0 ? "" : cellOfCsv(
      (row[this.#pieceAt] ?? "").trim(),
    );
    if (piece !== "" && !isSameName(piece, this.#source.piece.name)) {
      faults.refuse(
        this.#source.headings[this.#pieceAt].trim(),
        piece,
        otherPiece(this.#source.piece.name),
      );
      return undefined;
    }
    const session = cellOfCsv(this.#cell(row, "session"));
    const label = cellOfCsv(this.#cell(row, "zeroing"));
    if (session === "") this.#blank("session", "the reading's session");
    if (label === "") this.#blank("zeroing", "the zeroing it belongs to");
    const ring = this.#strict("ring", row, this.#side.ring);
    const unitCell = this.#cell(row, "unit");
    const typed = (row[cell.index] ?? "").trim();
    const shown = this.#cells.read(typed, unitCell, cell.unit);
    if (shown.kind === "unreadable") {
      if (shown.blame === "unit" && unitCell !== "") {
        faults.refuse(this.#heading("unit"), unitCell, shown.fault);
      } else faults.refuse(this.#column(cell), typed, shown.fault);
    }
    const degrees = this.#strict("diameter_deg", row, this.#side.angle) ?? NaN;
    const foot = this.#cell(row, "foot_deg") === ""
      ? ring?.foot ?? UNKNOWN_FOOT
      : this.#strict("foot_deg", row, this.#side.foot) ?? UNKNOWN_FOOT;
    if (ring === undefined) return undefined;
    const sag = shown.kind === "shown" ? shown.sag : undefined;
    const place = this.#place(row, cell, unitCell, ring, degrees, foot, sag);
    if (
      faults.refused || shown.kind === "unreadable" || place === undefined
    ) return undefined;
    if (shown.finer) {
      faults.remark("note", this.#column(cell), typed, FINER_THAN_STEP);
    }
    if (shown.unitAssumed) {
      const { severity, fault } = unitAssumed(this.titleUnit, shown.unit);
      faults.remark(severity, this.#heading("unit"), "", fault);
    }
    const work = place.kind === "place";
    const note = this.#at.note;
    const operator = this.#text(row, "operator");
    const before = this.#zeroBefore(row, unitCell, cell.unit);
    const reading = {
      file: this.#source.file,
      line,
      order,
      session,
      takenAt: this.#mild("taken_at", row, this.#side.takenAt),
      grade: this.#text(row, "grade"),
      ring: ring.id,
      zeroing: this.#zeroingOf(session, label, operator),
      zeroBefore: before?.sag,
      diameterDegrees: Number.isNaN(degrees) ? undefined : degrees,
      foot,
      on: work ? "work" as const : "flat" as const,
      zone: work ? place.zone : FLAT_ZONE,
      offset: work ? place.offset : FLAT_ZONE.distance,
      sag: shown.sag,
      step: shown.step,
      unit: shown.unit,
      operator,
      temperatureAir: this.#warmth("temperature_air", row),
      temperatureBench: this.#warmth("temperature_bench", row),
      temperatureWork: this.#warmth("temperature_work", row),
      shown: shown.typed,
      zeroBeforeShown: before?.typed,
      note: note < 0 ? undefined : cellOfCsv((row[note] ?? "").trim()),
    };
    return this.#source.unknown.length === 0
      ? reading
      : { ...reading, other: otherCells(row, this.#source) };
  }

  /** Name of the column a reading stands in. */
  #column(cell: ReadingCell): string {
    return cell.zone ?? this.#heading("reading");
  }

  /** The key of a zeroing; says where a label turns out to name two. */
  #zeroingOf(session: string, label: string, operator?: string): string {
    const { key, before } = this.#zeroing(session, label, operator);
    if (before === undefined) return key;
    const fault = labelOfTwo(label, operator, before);
    this.faults.remark("note", this.#heading("zeroing"), label, fault);
    return key;
  }

  #blank(column: TidyColumn, what: string): void {
    this.faults.refuse(this.#heading(column), "", blankCell(column, what));
  }

  /** A cell whose fault refuses the line. */
  #strict<T>(
    name: TidyColumn,
    row: Row,
    read: (typed: string) => Cell<T>,
  ): T | undefined {
    const typed = this.#cell(row, name);
    const { value, fault } = read(typed);
    if (fault !== undefined) {
      this.faults.refuse(this.#heading(name), typed, fault);
    }
    return value;
  }

  /** A cell that a reading can do without. */
  #mild<T>(
    name: TidyColumn,
    row: Row,
    read: (typed: string) => Cell<T>,
  ): T | undefined {
    const typed = this.#cell(row, name);
    if (typed === "") return undefined;
    const { value, fault } = read(typed);
    if (fault !== undefined) {
      this.faults.warn(this.#heading(name), typed, fault);
    }
    return value;
  }

  #warmth(name: TidyColumn, row: Row) {
    return this.#mild(name, row, this.#side.temperature);
  }

  #place(
    row: Row,
    cell: ReadingCell,
    unitCell: string,
    ring: Ring,
    degrees: number,
    foot: FootDirection,
    sag: Millimetres | undefined,
  ) {
    const zone = cell.zone ?? cellOfCsv(this.#cell(row, "zone"));
    const offset = this.#cell(row, "offset");
    const unit = unitCell === "" ? cell.unit : unitCell;
    const place = this.#places.find(
      zone,
      offset,
      unit,
      ring,
      degrees,
      foot,
      sag,
    );
    if (place.kind === "flat") return place;
    if (place.kind === "refused") {
      const byOffset = offset !== "" || zone === "";
      this.faults.refuse(
        cell.zone ?? this.#heading(byOffset ? "offset" : "zone"),
        byOffset ? offset : zone,
        place,
      );
      return undefined;
    }
    if (place.named !== undefined || place.doubt !== undefined) {
      const zoneName = cell.zone ?? this.#heading("zone");
      const where = [zoneName, zone, this.#heading("offset"), offset] as const;
      remarkOnPlace(place, this.faults, ...where, this.#source.piece.unit);
    }
    return place;
  }

  #zeroBefore(row: Row, unit: string, heading: string) {
    const typed = this.#cell(row, "zero_before");
    if (typed === "") return undefined;
    const shown = this.#cells.read(typed, unit, heading);
    if (shown.kind === "shown") return shown;
    this.faults.warn(this.#heading("zero_before"), typed, {
      ...shown.fault,
      message: `${shown.fault.message}; the reading is used without it`,
    });
    return undefined;
  }
}
