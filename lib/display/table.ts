/**
 * Rows to a table that a notebook shows.
 *
 * @module
 */
import { type Displayable, jupyterDisplay, type MimeBundle } from "./bundle.ts";
import { markup, type MarkupPart } from "./markup.ts";

/** One cell of a table: words, or a number shown as JavaScript writes it. */
export type TableValue = string | number | null;

/** How a table is shown. */
export interface TableOptions {
  /** The columns and their order; the keys of the first row if left out. */
  readonly columns?: readonly string[];
  /** A sentence above the table, which a screen reader announces. */
  readonly caption?: string;
}

/** Cells of up to this many characters are not broken into lines. */
const UNBROKEN = 30;
/** Characters that fit side by side on a sheet of paper, with 8 pt. */
const PAPER = 96;

/** Text on one line. */
function plain(value: TableValue | undefined): string {
  return value === null || value === undefined
    ? ""
    : String(value).replace(/\s+/g, " ");
}

/** The same for a page, where a number stays with its unit when a line breaks. */
function joined(value: TableValue | undefined): string {
  return typeof value === "string"
    ? value.replace(/[^\S\u00a0]+/g, " ")
    : plain(value);
}

function plainText(head: readonly string[], body: readonly string[][]): string {
  const widths = head.map((name, i) =>
    Math.max(...[name, ...body.map((row) => row[i])].map((cell) => cell.length))
  );
  return [head, widths.map((width) => "─".repeat(width)), ...body]
    .map((row) => row.map((cell, i) => cell.padEnd(widths[i])).join("  "))
    .map((line) => line.trimEnd()).join("\n");
}

/** Characters that Markdown or mathematics would read, kept as typed. */
function markdownText(text: string): string {
  return text.replace(/[\\`*_{}[\]<>()#+!|$~&]/g, "\\$&");
}

/**
 * Makes a table that a cell may return: aligned text for a terminal, Markdown
 * and HTML for a page. Columns that hold numbers alone are set flush right.
 *
 * Values are shown as they are; round them before (see `units/`). Every text
 * is escaped, so names and notes from a file show as typed.
 *
 * @param rows One object for each row; a missing or null value is left blank.
 * @param options Columns, order and caption.
 * @returns A value that a notebook shows as a table.
 * @throws {RangeError} If a number is not finite.
 *
 * @example
 * ```ts
 * import { jupyterDisplay } from "sagbook/display/bundle.ts";
 * import { table } from "sagbook/display/table.ts";
 * import { equal } from "node:assert/strict";
 *
 * const zones = table([{ zone: "centre", "R / mm": 3000.4 }]);
 * const { "text/plain": text } = await zones[jupyterDisplay]();
 * equal(text, "zone    R / mm\n──────  ──────\ncentre  3000.4");
 * ```
 */
export function table(
  rows: readonly Readonly<Record<string, TableValue>>[],
  options: TableOptions = {},
): Displayable {
  const columns = options.columns ?? Object.keys(rows[0] ?? {});
  for (const row of rows) {
    for (const column of columns) {
      const value = row[column];
      if (typeof value === "number" && !Number.isFinite(value)) {
        throw new RangeError(
          `Cannot show a table as its numbers must be finite: current value is ${value} in column "${column}"`,
        );
      }
    }
  }
  const body = rows.map((row) => columns.map((column) => plain(row[column])));
  const numeric = columns.map((column) =>
    rows.some((row) => typeof row[column] === "number") &&
    rows.every((row) => typeof (row[column] ?? 0) === "number")
  );
  const short = columns.map((_, i) =>
    body.every((row) => row[i].length <= UNBROKEN)
  );
  const longest = (texts: readonly string[]): number =>
    Math.max(0, ...texts.map((text) => text.length));
  const wide = columns.reduce((sum, name, i) => {
    const cells = body.map((row) => row[i]);
    const words = [name, ...short[i] ? [] : cells].flatMap((text) =>
      text.split(" ")
    );
    return sum + 2 + Math.max(longest(words), short[i] ? longest(cells) : 16);
  }, 0);
  // Broken at blanks alone; long texts may break anywhere, and take little.
  const narrow = columns.reduce((sum, name, i) => {
    const cells = rows.map((row) => joined(row[columns[i]]));
    const words = [name, ...short[i] ? cells : []].flatMap((text) =>
      text.split(" ")
    );
    return sum + 2 + Math.max(longest(words), short[i] ? 0 : 12);
  }, 0);
  const onPaper = wide <= PAPER ? "fits" : narrow <= PAPER ? "wraps" : "";
  const style = (i: number): MarkupPart => {
    const rules = [
      ...(numeric[i] ? ["text-align:right"] : []),
      ...(short[i] ? ["white-space:nowrap"] : []),
    ];
    return rules.length > 0 ? markup` style="${rules.join(";")}"` : "";
  };
  const caption = options.caption;
  if (columns.length === 0 && caption !== undefined) return sentence(caption);
  const above = caption === undefined
    ? ""
    : markup`<caption>${caption}</caption>`;
  const head = columns.map((name, i) =>
    markup`<th scope="col"${
      numeric[i] ? markup` style="text-align:right"` : ""
    }>${name}</th>`
  );
  // A date or a number with its unit: whole on paper too.
  const whole = columns.map((column) =>
    onPaper === "wraps" &&
    rows.every((row) => !joined(row[column]).includes(" "))
  );
  const lines = rows.map((row) =>
    markup`<tr>${
      columns.map((column, i) =>
        markup`<td${whole[i] ? markup` class="whole"` : ""}${style(i)}>${
          joined(row[column])
        }</td>`
      )
    }</tr>`
  );
  const { html } = markup`<table${
    onPaper === "" ? "" : markup` class="${onPaper}"`
  }>${above}<thead><tr>${head}</tr></thead><tbody>${lines}</tbody></table>`;
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  const markdown = [
    line(columns.map(markdownText)),
    line(numeric.map((right) => right ? "---:" : "---")),
    ...body.map((row) => line(row.map(markdownText))),
  ].join("\n");
  const text = plainText(columns, body);
  const bundle: MimeBundle = {
    "text/plain": caption === undefined ? text : `${caption}\n${text}`,
    "text/markdown": caption === undefined
      ? markdown
      : `${markdownText(caption)}\n\n${markdown}`,
    "text/html": html,
  };
  return { [jupyterDisplay]: () => bundle };
}

/** What stands for a table without columns, which would be no wider than a word. */
function sentence(text: string): Displayable {
  const bundle: MimeBundle = {
    "text/plain": text,
    "text/markdown": markdownText(text),
    "text/html": markup`<p>${text}</p>`.html,
  };
  return { [jupyterDisplay]: () => bundle };
}
