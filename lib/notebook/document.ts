/**
 * A notebook in memory: the open notebook format, version 4.5, with every text
 * joined into one string.
 *
 * @module
 */

/** Any value that JSON can hold. */
export type JsonValue =
  | null
  | boolean
  | number
  | string
  | readonly JsonValue[]
  | JsonObject;

/** A JSON object. */
export interface JsonObject {
  /** Any key. */
  readonly [key: string]: JsonValue;
}

/** Text that a cell wrote while it ran. */
export interface StreamOutput {
  /** The kind of output. */
  readonly output_type: "stream";
  /** `stdout` or `stderr`. */
  readonly name: string;
  /** All of it, in the order written. */
  readonly text: string;
}

/** A value in several forms, shown by a call or as a cell's last value. */
export interface DataOutput {
  /** Shown by a call, or the cell's last value. */
  readonly output_type: "display_data" | "execute_result";
  /** Forms by MIME type; text, or any JSON where the type says JSON. */
  readonly data: JsonObject;
  /** Hints by MIME type, such as `width` and `height`. */
  readonly metadata: JsonObject;
  /** Only on a result: the number of the run that made it. */
  readonly execution_count?: number | null;
}

/** The failure that ended a cell. */
export interface ErrorOutput {
  /** The kind of output. */
  readonly output_type: "error";
  /** Name of the error's class. */
  readonly ename: string;
  /** Its message. */
  readonly evalue: string;
  /** Where it happened, as the kernel tells it. */
  readonly traceback: readonly string[];
}

/** What a code cell left behind. */
export type Output = StreamOutput | DataOutput | ErrorOutput;

/** What every cell has. */
export interface CellBase {
  /** 1 to 64 of `[a-zA-Z0-9-_]`, different from every other cell's. */
  readonly id: string;
  /** Tags, and what programs keep about the cell. */
  readonly metadata: JsonObject;
  /** The text, with the line ends of the file. */
  readonly source: string;
}

/** A cell of program text with what it left behind. */
export interface CodeCell extends CellBase {
  /** The kind of cell. */
  readonly cell_type: "code";
  /** Number of the run that made the outputs; null if it has not been run. */
  readonly execution_count: number | null;
  /** What it left behind, in order. */
  readonly outputs: readonly Output[];
}

/** A cell of Markdown, or of text passed through as it is. */
export interface TextCell extends CellBase {
  /** The kind of cell. */
  readonly cell_type: "markdown" | "raw";
  /** Pictures by file name, each a bundle of forms by MIME type. */
  readonly attachments?: JsonObject;
}

/** One cell. */
export type Cell = CodeCell | TextCell;

/** A notebook. */
export interface Notebook {
  /** Kernel and language, and what programs keep about the file. */
  readonly metadata: JsonObject;
  /** In order. */
  readonly cells: readonly Cell[];
}

/** True for a plain JSON object. */
export function isJsonObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** True if a form of this MIME type holds JSON and not text. */
export function isJsonMimeType(mimeType: string): boolean {
  return mimeType === "application/json" ||
    (mimeType.startsWith("application/") && mimeType.endsWith("+json"));
}

/**
 * Lists a cell's tags.
 *
 * @param cell Any cell.
 * @returns The tags, in the order of the file; empty without any.
 *
 * @example
 * ```ts
 * import { cellTags } from "sagbook/notebook/document.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const cell = { id: "a", metadata: { tags: ["remove-input"] }, source: "1" };
 * deepEqual(cellTags(cell), ["remove-input"]);
 * ```
 */
export function cellTags(cell: CellBase): readonly string[] {
  const { tags } = cell.metadata;
  return Array.isArray(tags)
    ? tags.filter((tag) => typeof tag === "string")
    : [];
}
