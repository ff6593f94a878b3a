/**
 * The readings of a folder while more are taken: kept, marked, read again.
 *
 * @module
 */
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Problem } from "../records/problem.ts";
import type { Reading } from "../records/reading.ts";
import { scanReadings } from "../records/scan_readings.ts";
import { HeaderChanged, SaveError } from "./_record_disk.ts";
import { RecordFile } from "./_record_file.ts";
import { readLine } from "./_record_reading.ts";
import { plainNumber } from "./_record_row.ts";
import { sameAs, tally } from "./_record_tally.ts";

type Cells = Readonly<Record<string, string>>;

/** A row of the file; without a reading it is a line that was none. */
export interface KeptRow {
  readonly cells: Cells;
  readonly reading?: Reading;
}

/** Keeps readings in the file of a folder. */
export class Keeper {
  readonly #piece: Piece;
  readonly #bench: Bench;
  readonly #folder: string;
  /** Readings of the folder's other files. */
  readonly #elsewhere: readonly Reading[];
  /** What the file held before this run. */
  readonly #atStart: ReadonlyMap<string, number>;
  /** Every row of this run, in order, marks included. */
  #rows: KeptRow[] = [];
  /** Rows that wait for room on the disk. */
  #held: KeptRow[] = [];
  #file: RecordFile;
  #own: Reading[];
  /** Lines of the file that give no reading. */
  #reported = 0;

  private constructor(
    piece: Piece,
    bench: Bench,
    folder: string,
    readings: readonly Reading[],
    file: RecordFile,
  ) {
    this.#piece = piece;
    this.#bench = bench;
    this.#folder = folder;
    this.#file = file;
    this.#elsewhere = readings.filter((one) => one.file !== file.name);
    this.#own = readings.filter((one) => one.file === file.name);
    this.#atStart = tally(this.#own);
  }

  /**
   * Opens the file of a folder that has been read.
   *
   * @throws {SaveError} If there is no file to record to.
   */
  static async open(
    folder: string,
    piece: Piece,
    bench: Bench,
    readings: readonly Reading[],
  ): Promise<Keeper> {
    const file = await RecordFile.open(folder);
    const keeper = new Keeper(piece, bench, folder, readings, file);
    await keeper.#reload();
    return keeper;
  }

  /** The file's name. */
  get name(): string {
    return this.#file.name;
  }

  /** What was done to the file on opening. */
  get said(): string {
    return this.#file.said;
  }

  /** Every reading of the folder that counts, in order. */
  get readings(): readonly Reading[] {
    return [...this.#elsewhere, ...this.#own];
  }

  /** Rows that wait for room on the disk. */
  get held(): readonly KeptRow[] {
    return this.#held;
  }

  async #reload(): Promise<void> {
    const found: Reading[] = [];
    const { account } = await scanReadings(this.#file.bytes(), {
      file: this.#file.name,
      piece: this.#piece,
      bench: this.#bench,
      firstOrder: this.#elsewhere.length,
    }, (reading) => found.push(reading));
    this.#own = found;
    this.#reported = account.reported;
  }

  /**
   * Reads the file again if another program changed it, and writes again what
   * that program wrote over: its own older copy, as spreadsheets do.
   *
   * @returns What happened, in words; nothing when nothing did.
   */
  async follow(): Promise<string | undefined> {
    if (!this.#file.changed()) return undefined;
    const before = this.#reported;
    await this.#reload();
    const lead =
      `${this.name} was changed by another program; it was read again`;
    const have = tally(this.#own);
    const wanted = this.#rows.filter(({ cells, reading }) =>
      reading !== undefined && cells.withdrawn === undefined
    );
    const missing = wanted.filter(({ reading }) => {
      const key = sameAs(reading!);
      const left = (have.get(key) ?? 0) - (this.#atStart.get(key) ?? 0);
      have.set(key, (have.get(key) ?? 0) - 1);
      return left <= 0;
    });
    if (missing.length === 0) return `${lead}.`;
    const count = missing.length === 1
      ? "1 reading of this run is"
      : `${missing.length} readings of this run are`;
    // Someone may have marked them there; then they are not put back.
    if (this.#reported > before) {
      return `${lead}; ${count} no longer used in it. Was that meant?`;
    }
    const rows = missing.length === wanted.length ? this.#rows : missing;
    for (const [at, { cells }] of rows.entries()) {
      const why = await this.#append(cells);
      if (why !== undefined) {
        this.#hold(rows.slice(at));
        return `${lead}; ${count} no longer in it, and could not be written again: ${why}. What is not saved is held here.`;
      }
    }
    await this.#reload();
    return `${lead}. ${count} no longer in it and written again to ${this.name}.`;
  }

  /** Holds rows that were on the disk and are no more. */
  #hold(rows: readonly KeptRow[]): void {
    this.#rows = this.#rows.filter((row) => !rows.includes(row));
    this.#held.unshift(...rows);
  }

  /** Reads cells as the reader of files will, figures as they were typed. */
  async read(cells: Cells): Promise<{
    readonly cells: Cells;
    readonly reading?: Reading;
    readonly problems: readonly Problem[];
  }> {
    const order = this.#elsewhere.length + this.#own.length;
    const first = await readLine(cells, this.#piece, this.#bench, order);
    const shown = first.reading?.shown;
    if (shown === undefined) return { cells, ...first };
    const mark = this.#bench.decimalMark === "comma" ? "," : ".";
    const plain = {
      ...cells,
      reading: plainNumber(cells.reading, shown.amount).replace(".", mark),
      unit: shown.unit,
    };
    const again = await readLine(plain, this.#piece, this.#bench, order);
    return { cells: plain, ...again };
  }

  /**
   * Saves a reading that was read.
   *
   * @returns Nothing once it is on the disk; else why it is not and is held.
   */
  async keep(cells: Cells, reading: Reading): Promise<string | undefined> {
    return await this.#save({ cells, reading });
  }

  /**
   * Saves a line that is no reading, marked as not read.
   *
   * @returns Nothing once it is on the disk; else why it is not and is held.
   */
  async keepUnread(cells: Cells): Promise<string | undefined> {
    return await this.#save({ cells: { ...cells, withdrawn: "not read" } });
  }

  async #save(row: KeptRow): Promise<string | undefined> {
    // Those that wait come first, or their order would be lost.
    const why = this.#held.length > 0
      ? "what was held before it waits too"
      : await this.#append(row.cells);
    if (why === undefined) this.#saved(row);
    else this.#held.push(row);
    return why;
  }

  #saved(row: KeptRow): void {
    const { cells, reading } = row;
    this.#rows.push(row);
    if (reading === undefined || cells.withdrawn !== undefined) {
      this.#reported++;
    } else this.#own.push({ ...reading, file: this.#file.name });
  }

  /** Appends a row; returns why it could not. */
  async #append(cells: Cells): Promise<string | undefined> {
    try {
      this.#file.append(cells);
      return undefined;
    } catch (error) {
      if (!(error instanceof SaveError)) throw error;
      if (!(error instanceof HeaderChanged)) return error.message;
    }
    try {
      this.#file = await RecordFile.open(this.#folder);
      this.#file.append(cells);
      return undefined;
    } catch (error) {
      if (!(error instanceof SaveError)) throw error;
      return error.message;
    }
  }

  /** Tries to save what waits; returns what was saved and why the rest was not. */
  async retry(): Promise<{ saved: readonly Reading[]; why?: string }> {
    const saved: Reading[] = [];
    while (this.#held.length > 0) {
      const [row, ...rest] = this.#held;
      const why = await this.#append(row.cells);
      if (why !== undefined) return { saved, why };
      this.#held = rest;
      this.#saved(row);
      if (row.reading !== undefined) saved.push(row.reading);
    }
    return { saved };
  }

  /**
   * Marks the last reading of a session as withdrawn.
   *
   * @returns The reading; a text says why there is none or it cannot be
   * marked.
   */
  async withdrawLast(session: string): Promise<Reading | string> {
    const waiting = this.#held.findLastIndex(({ cells, reading }) =>
      reading !== undefined && cells.withdrawn === undefined
    );
    if (waiting >= 0) {
      const row = this.#held[waiting];
      this.#held[waiting] = { ...row, cells: { ...row.cells, withdrawn: "x" } };
      return row.reading!;
    }
    await this.#reload();
    const last = this.#own.findLast((one) => one.session === session);
    if (last === undefined) {
      return `there is no reading of session ${session} in ${this.name} to take back`;
    }
    try {
      await this.#file.withdraw(last.line);
    } catch (error) {
      if (error instanceof SaveError) return error.message;
      throw error;
    }
    const key = sameAs(last);
    const mine = this.#rows.findLastIndex(({ cells, reading }) =>
      reading !== undefined && cells.withdrawn === undefined &&
      sameAs(reading) === key
    );
    if (mine >= 0) {
      const row = this.#rows[mine];
      this.#rows[mine] = { ...row, cells: { ...row.cells, withdrawn: "x" } };
    }
    await this.#reload();
    return last;
  }
}
