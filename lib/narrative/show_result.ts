/**
 * Any result as a cell shows it.
 *
 * @module
 */
import { type Displayable, jupyterDisplay } from "../display/bundle.ts";
import { markup } from "../display/markup.ts";
import { table, type TableValue } from "../display/table.ts";
import { answerBlock, RESULTS_TYPE } from "./show.ts";

/** A report with an answer: of a session, of the gauge, or a plan. */
export interface AnsweredReport {
  /** The answer, sentence by sentence. */
  readonly answer: readonly string[];
  /** The folder it is about. */
  readonly folder: { readonly piece: { readonly invented: boolean } };
}

type PlainObject = Readonly<Record<string, unknown>>;

/**
 * Shows a result: what can show itself (a table, a figure, an answer) as it
 * does; a report by its answer; a list of plain objects as a table with a row
 * for each; one plain object, such as a verdict, as a table with a row for each
 * of its values; a promise, such as a figure that is being drawn, by what it
 * comes to; anything else as text.
 *
 * Numbers are shown as they are, in the library's own units (lengths in mm);
 * round them before where fewer figures are known. A value inside a value is
 * shown as short text. The results that a report hands to the program which
 * runs a notebook are not part of what is shown.
 *
 * @param result Anything.
 * @returns A value a cell may return: text, HTML, and Markdown of a table.
 *
 * @example
 * ```ts
 * import { show } from "sagbook/narrative/show_result.ts";
 * import { jupyterDisplay } from "sagbook/display/bundle.ts";
 * import { equal } from "node:assert/strict";
 *
 * const zones = [{ zone: "centre", sets: 3 }, { zone: "edge", sets: 4 }];
 * const bundle = await show(zones)[jupyterDisplay]();
 * equal(
 *   bundle["text/plain"],
 *   "zone    sets\n──────  ────\ncentre  3\nedge    4",
 * );
 * ```
 */
export function show(result: unknown): Displayable {
  if (isDisplayable(result)) return result;
  if (result instanceof Promise) {
    return {
      [jupyterDisplay]: async () => await show(await result)[jupyterDisplay](),
    };
  }
  if (isReport(result)) return reportBlock(result);
  if (Array.isArray(result) && result.length > 0 && result.every(isPlain)) {
    const columns = [...new Set(result.flatMap((row) => Object.keys(row)))];
    if (columns.length > 0) return table(result.map(cellsOf), { columns });
  }
  if (isPlain(result)) {
    const rows = Object.entries(result)
      .map(([name, value]) => ({ name, value: cellOf(value) }));
    if (rows.length > 0) return table(rows);
  }
  return textBlock(typeof result === "string" ? result : written(result));
}

function isDisplayable(value: unknown): value is Displayable {
  return typeof value === "object" && value !== null &&
    typeof (value as Partial<Displayable>)[jupyterDisplay] === "function";
}

function isPlain(value: unknown): value is PlainObject {
  if (typeof value !== "object" || value === null) return false;
  const prototype = Object.getPrototypeOf(value);
  return (prototype === Object.prototype || prototype === null) &&
    !isDisplayable(value);
}

function isReport(value: unknown): value is AnsweredReport {
  if (!isPlain(value)) return false;
  const { answer, folder } = value;
  return Array.isArray(answer) &&
    answer.every((sentence) => typeof sentence === "string") &&
    isPlain(folder) && isPlain(folder.piece) &&
    typeof folder.piece.invented === "boolean";
}

function reportBlock({ answer, folder }: AnsweredReport): Displayable {
  const block = answerBlock(answer, folder.piece.invented, {});
  return {
    [jupyterDisplay]: async () => {
      const { [RESULTS_TYPE]: _, ...shown } = await block[jupyterDisplay]();
      return shown;
    },
  };
}

function textBlock(text: string): Displayable {
  const { html } = markup`<pre>${text}</pre>`;
  return {
    [jupyterDisplay]: () => ({ "text/plain": text, "text/html": html }),
  };
}

function cellsOf(row: PlainObject): Record<string, TableValue> {
  return Object.fromEntries(
    Object.entries(row).map(([name, value]) => [name, cellOf(value)]),
  );
}

/** A value as one cell of a table holds it. */
function cellOf(value: unknown): TableValue {
  if (value === undefined || value === null) return null;
  if (typeof value === "string") return value;
  if (typeof value === "number" && Number.isFinite(value)) return value;
  if (value === Infinity) return "∞";
  if (value === -Infinity) return "−∞";
  return written(value);
}

/** Anything in words of its own kind, on as few lines as there is room. */
function written(value: unknown): string {
  return Deno.inspect(value, { colors: false, depth: 3, breakLength: 100 });
}
