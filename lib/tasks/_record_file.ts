/**
 * The file that readings are appended to, line by line, onto the disk.
 *
 * @module
 */
import { join } from "node:path";
import { csvText } from "../records/csv_text.ts";
import { readOrdinaryFileSync } from "../files/read_ordinary_file.ts";
import { writeAtomically } from "../files/write_atomically.ts";
import {
  closeQuietly,
  differs,
  endsOpen,
  HeaderChanged,
  type Look,
  look,
  openAlone,
  refuseDeadLink,
  remedyFor,
  SaveError,
  textOf,
  troubleWords,
} from "./_record_disk.ts";
import {
  isBlank,
  isForeign,
  linesOf,
  markedRow,
  plainHeadings,
  withHeadings,
} from "./_record_row.ts";

/** Columns of a file that the recorder makes. */
const RECORD_COLUMNS = [
  ...["session", "taken_at", "grade", "ring", "zeroing", "zero_before"],
  ...["diameter_deg", "foot_deg", "zone", "offset", "reading", "unit"],
  ...["operator", "note", "withdrawn"],
] as const;

/** The file of readings of one folder. */
export class RecordFile {
  /** Its name, seen from the folder. */
  readonly name: string;
  /** What was done to it on opening, in words; blank for nothing. */
  readonly said: string;
  readonly #path: string;
  #columns: readonly string[];
  /** The file as its readings were last read. */
  #known: Look | undefined;
  /** The file as its header was last looked at. */
  #settled: Look | undefined;

  private constructor(
    path: string,
    name: string,
    columns: readonly string[],
    said: string,
  ) {
    this.#path = path;
    this.name = name;
    this.#columns = columns;
    this.said = said;
    this.#own();
  }

  /** Nothing but what was written here has changed. */
  #own(): void {
    this.#known = look(this.#path);
    this.#settled = this.#known;
  }

  /**
   * Opens `readings.csv`, or makes it.
   *
   * A file of another layout (a bench sheet, semicolons, another encoding) is
   * left alone, and `sheets/recorded.csv` is taken instead. A file that lacks
   * a column which is needed gets it at the end of its header.
   *
   * @throws {SaveError} If it can be neither read nor made.
   */
  static async open(
    folder: string,
    columns: readonly string[] = RECORD_COLUMNS,
  ): Promise<RecordFile> {
    const first = await RecordFile.#try(folder, "readings.csv", columns);
    if (first !== undefined) return first;
    try {
      await Deno.mkdir(join(folder, "sheets"), { recursive: true });
    } catch (error) {
      throw refusal("Cannot make sheets/", error);
    }
    for (let k = 1; k < 100; k++) {
      const name = `sheets/recorded${k === 1 ? "" : `-${k}`}.csv`;
      const found = await RecordFile.#try(folder, name, columns);
      if (found !== undefined) return found;
    }
    throw new SaveError("Cannot find a file to record to.");
  }

  static async #try(
    folder: string,
    name: string,
    columns: readonly string[],
  ): Promise<RecordFile | undefined> {
    let path = join(folder, name);
    let file: Deno.FsFile | undefined;
    let isNew = false;
    try {
      refuseDeadLink(path, name);
      const found = textOf(path);
      if (found === "undecodable" || isForeign(found)) return undefined;
      isNew = found === undefined;
      // A link stays a link: what it points to is written.
      if (!isNew) path = await Deno.realPath(path);
      file = openAlone(path);
      const text = textOf(path) ?? ""; // nobody changes it from here on
      if (text === "undecodable" || isForeign(text)) return undefined;
      const headings = isBlank(text) ? columns : plainHeadings(text)!;
      let said = "";
      if (isBlank(text)) {
        file.truncateSync(0);
        file.writeSync(new TextEncoder().encode(csvText([columns])));
        file.syncDataSync();
        said = `${
          name === "readings.csv"
            ? ""
            : "readings.csv has a layout of its own and was left alone; "
        }made ${name}`;
      }
      const missing = columns.filter((one) => !headings.includes(one));
      if (missing.length > 0) {
        if (Deno.build.os === "windows") file.close(); // it holds its name
        await writeAtomically(path, withHeadings(text, missing));
        said = `${name}: ${
          missing.length === 1 ? "the column" : "the columns"
        } ${
          missing.join(", ")
        } put at the end of its header; nothing else in it was changed`;
      }
      return new RecordFile(path, name, [...headings, ...missing], said);
    } catch (error) {
      if (isNew && look(path)?.size === 0) Deno.removeSync(path);
      if (error instanceof SaveError) throw error;
      throw refusal(`Cannot record to ${name}`, error);
    } finally {
      closeQuietly(file);
    }
  }

  /** The bytes on the disk; empty when the file is gone. */
  bytes(): Uint8Array {
    try {
      const bytes = readOrdinaryFileSync(this.#path);
      this.#known = look(this.#path);
      return bytes;
    } catch (error) {
      if (error instanceof Deno.errors.NotFound) return new Uint8Array();
      throw error;
    }
  }

  /** True when another program has changed the file since it was last read. */
  changed(): boolean {
    return differs(this.#known, look(this.#path));
  }

  /**
   * Appends a row and returns once it is on the disk.
   *
   * A row that did not fit is taken off again, so that the file never ends in
   * half a row of ours.
   *
   * @throws {SaveError} If it could not be saved.
   */
  append(cells: Readonly<Record<string, string>>): void {
    let file: Deno.FsFile | undefined;
    let before: number | undefined;
    let written = 0;
    try {
      file = openAlone(this.#path);
      this.#settle(file);
      before = file.statSync().size;
      const row = csvText([this.#columns.map((name) => cells[name] ?? "")]);
      const text = endsOpen(file, before) ? `\n${row}` : row;
      const bytes = new TextEncoder().encode(text);
      while (written < bytes.length) {
        const more = file.writeSync(bytes.subarray(written));
        if (more === 0) throw new Error("no space left");
        written += more;
      }
      file.syncDataSync();
      this.#own();
    } catch (error) {
      try {
        // Unless somebody has written behind it meanwhile, part of a row goes.
        if (file?.statSync().size === before! + written) {
          file.truncateSync(before);
        }
      } catch {
        // What was begun stays; the reader says that its line is cut off.
      }
      this.#own();
      if (error instanceof SaveError) throw error;
      throw new SaveError(troubleWords(error));
    } finally {
      closeQuietly(file);
    }
  }

  /** Takes the header that is there now, or begins the file anew. */
  #settle(file: Deno.FsFile): void {
    if (!differs(this.#settled, look(this.#path))) return;
    const text = textOf(this.#path) ?? "";
    if (text !== "undecodable" && text.trim() === "") {
      file.truncateSync(0);
      file.writeSync(new TextEncoder().encode(csvText([this.#columns])));
      return;
    }
    const headings = text === "undecodable" ? undefined : plainHeadings(text);
    if (
      headings === undefined ||
      this.#columns.some((name) => !headings.includes(name))
    ) {
      throw new HeaderChanged(
        `another program changed the header of ${this.name}`,
      );
    }
    this.#columns = headings;
  }

  /**
   * Marks a line as withdrawn.
   *
   * @param line Its number in the file, from 1.
   * @throws {SaveError} If the line cannot be marked.
   */
  async withdraw(line: number): Promise<void> {
    let file: Deno.FsFile | undefined;
    try {
      file = openAlone(this.#path);
      this.#settle(file);
      const text = textOf(this.#path);
      if (text === undefined || text === "undecodable") {
        throw new SaveError(`${this.name} cannot be read any more`);
      }
      const lines = linesOf(text);
      const [, row, end] = /^([^\r\n]*)([\r\n]*)$/.exec(lines[line - 1] ?? "")!;
      const column = this.#columns.indexOf("withdrawn");
      const marked = row === "" ? undefined : markedRow(row, column, "x");
      if (marked === undefined) {
        throw new SaveError(`line ${line} of ${this.name} cannot be marked`);
      }
      lines[line - 1] = marked + end;
      if (Deno.build.os === "windows") file.close(); // it holds its name
      await writeAtomically(this.#path, lines.join(""));
      this.#own();
    } catch (error) {
      throw error instanceof SaveError
        ? error
        : new SaveError(troubleWords(error));
    } finally {
      closeQuietly(file);
    }
  }
}

function refusal(what: string, error: unknown): SaveError {
  return new SaveError(
    `${what}: ${troubleWords(error)}.${remedyFor(error)}`,
  );
}
