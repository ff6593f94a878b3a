/**
 * The file that readings are appended to, line by line, onto the disk.
 *
 * @module
 */
import { join } from "node:path";
import { csvText } from "../records/csv_text.ts";
import { writeAtomically } from "../files/write_atomically.ts";
import {
  linesOf,
  markedRow,
  plainHeadings,
  withHeadings,
} from "./_record_row.ts";

/** Columns of a file that the recorder makes. */
export const RECORD_COLUMNS = [
  ...["session", "taken_at", "grade", "ring", "zeroing", "zero_before"],
  ...["diameter_deg", "foot_deg", "zone", "offset", "reading", "unit"],
  ...["operator", "note", "withdrawn"],
] as const;

/** A line that could not be saved, in words for the user. */
export class SaveError extends Error {}

/** What tells one state of a file from another. */
interface Look {
  readonly inode: number | null;
  readonly size: number;
  readonly modified: number | undefined;
}

function look(path: string): Look | undefined {
  try {
    const { ino, size, mtime } = Deno.statSync(path);
    return { inode: ino, size, modified: mtime?.getTime() };
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return undefined;
    throw error;
  }
}

function differs(before: Look | undefined, now: Look | undefined): boolean {
  return now?.inode !== before?.inode || now?.size !== before?.size ||
    now?.modified !== before?.modified;
}

/** Why a file could not be written, for someone who has never heard of errno. */
function troubleWords(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  if (/os error (?:28|122|39|112)\b|no space|quota|disk full/i.test(text)) {
    return "there is no room left on the disk";
  }
  if (/os error 27\b|file too large/i.test(text)) {
    return "the file may not grow any larger";
  }
  if (
    error instanceof Deno.errors.PermissionDenied ||
    error instanceof Deno.errors.NotCapable || /read-only/i.test(text)
  ) return "the file may not be written to";
  if (error instanceof Deno.errors.NotFound) return "the folder is gone";
  return text;
}

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
      throw new SaveError(`Cannot make sheets/: ${troubleWords(error)}.`);
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
    try {
      const before = textOf(path);
      if (before === "undecodable") return undefined;
      // A link stays a link: what it points to is written.
      if (before !== undefined) path = await Deno.realPath(path);
      if (before === undefined || before.replace(/^\uFEFF/, "").trim() === "") {
        await writeAtomically(path, csvText([columns]));
        const other = name === "readings.csv"
          ? ""
          : "readings.csv has a layout of its own and was left alone; ";
        return new RecordFile(path, name, columns, `${other}made ${name}`);
      }
      const headings = plainHeadings(before);
      // Quoted decimal commas would make the points of new lines doubtful.
      if (headings === undefined || /"\s*[-+]?\d*,\d/.test(before)) {
        return undefined;
      }
      const missing = columns.filter((one) => !headings.includes(one));
      if (missing.length === 0) return new RecordFile(path, name, headings, "");
      await writeAtomically(path, withHeadings(before, missing));
      return new RecordFile(
        path,
        name,
        [...headings, ...missing],
        `${name}: ${missing.length === 1 ? "the column" : "the columns"} ${
          missing.join(", ")
        } put at the end of its header; nothing else in it was changed`,
      );
    } catch (error) {
      throw new SaveError(`Cannot record to ${name}: ${troubleWords(error)}.`);
    }
  }

  /** The bytes on the disk; empty when the file is gone. */
  bytes(): Uint8Array {
    try {
      const bytes = Deno.readFileSync(this.#path);
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
    let before = 0;
    try {
      this.#settle();
      file = Deno.openSync(this.#path, { read: true, append: true });
      before = file.statSync().size;
      const row = csvText([this.#columns.map((name) => cells[name] ?? "")]);
      const text = endsOpen(file, before) ? `\n${row}` : row;
      const bytes = new TextEncoder().encode(text);
      let written = 0;
      while (written < bytes.length) {
        const more = file.writeSync(bytes.subarray(written));
        if (more === 0) throw new Error("no space left");
        written += more;
      }
      file.syncDataSync();
      this.#own();
    } catch (error) {
      try {
        file?.truncateSync(before);
      } catch {
        // What was begun stays; the reader says that its line is cut off.
      }
      this.#own();
      throw new SaveError(troubleWords(error));
    } finally {
      file?.close();
    }
  }

  /** Takes the header that is there now, or makes the file anew. */
  #settle(): void {
    if (!differs(this.#settled, look(this.#path))) return;
    const text = textOf(this.#path);
    if (text === undefined || (text !== "undecodable" && text.trim() === "")) {
      Deno.writeTextFileSync(this.#path, csvText([this.#columns]));
      return;
    }
    const headings = text === "undecodable" ? undefined : plainHeadings(text);
    if (
      headings === undefined ||
      this.#columns.some((name) => !headings.includes(name))
    ) {
      throw new SaveError(
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
    try {
      this.#settle();
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
      await writeAtomically(this.#path, lines.join(""));
      this.#own();
    } catch (error) {
      throw error instanceof SaveError
        ? error
        : new SaveError(troubleWords(error));
    }
  }
}

/** The text of a file, its byte-order mark kept. */
function textOf(path: string): string | "undecodable" | undefined {
  let bytes: Uint8Array;
  try {
    bytes = Deno.readFileSync(path);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return undefined;
    throw error;
  }
  try {
    const decoder = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });
    const text = decoder.decode(bytes);
    return text.includes("\u0000") ? "undecodable" : text;
  } catch {
    return "undecodable";
  }
}

/** True when a file's last byte is no line end. */
function endsOpen(file: Deno.FsFile, size: number): boolean {
  if (size === 0) return false;
  const last = new Uint8Array(1);
  file.seekSync(size - 1, Deno.SeekMode.Start);
  file.readSync(last);
  return last[0] !== 0x0a && last[0] !== 0x0d;
}
