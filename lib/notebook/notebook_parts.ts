/**
 * The figures and tables of a notebook as run, each with a name.
 *
 * @module
 */
import { htmlTables, type TextTable } from "../display/html_tables.ts";
import { htmlWords } from "../display/html_words.ts";
import { cleanMarkup } from "./_clean_markup.ts";
import { cellTags, type DataOutput, type Notebook } from "./document.ts";
import { cellNumbers } from "./parameters.ts";

/** A figure of a notebook. */
export interface NotebookFigure {
  /** The kind of part. */
  readonly kind: "figure";
  /** Name for a file: small letters, digits and hyphens. */
  readonly name: string;
  /** Its title. */
  readonly title: string;
  /** What it shows, in words. */
  readonly description: string;
  /** The picture, cleaned of all that runs or loads. */
  readonly markup: string;
  /** Whether the picture is an SVG, or HTML such as a plot with a legend. */
  readonly form: "svg" | "html";
}

/** A table of a notebook. */
export interface NotebookTable {
  /** The kind of part. */
  readonly kind: "table";
  /** Name for a file: small letters, digits and hyphens. */
  readonly name: string;
  /** Its texts. */
  readonly table: TextTable;
}

/** What a notebook shows that may be kept as a file. */
export type NotebookPart = NotebookFigure | NotebookTable;

/** Longest name, in characters: file systems and people bear no more. */
const LONGEST = 60;

/** Words as a file's name. */
function fileName(words: string): string {
  return words.normalize("NFKD").toLowerCase()
    .replace(/µ|μ/g, "u").replace(/[^a-z0-9]+/g, "-").slice(0, LONGEST)
    .replace(/^-+|-+$/g, "");
}

/** Ids of a cleaned picture begin with this. */
const SCOPE = "picture";

function figureOf(
  output: DataOutput,
  place: string,
): Omit<NotebookFigure, "name"> | undefined {
  const { "image/svg+xml": svg, "text/html": html, "text/plain": plain } =
    output.data;
  const said = typeof plain === "string" ? htmlWords(plain) : "";
  const [, head = "", rest = ""] = /^(.{1,200}?)\. (.*)$/s.exec(said) ?? [];
  const form = typeof svg === "string" ? "svg" : "html";
  const raw = form === "svg" ? svg : html;
  if (typeof raw !== "string") return undefined;
  const markup = cleanMarkup(raw, { scope: SCOPE, isXml: form === "svg" })
    .trim();
  if (!(form === "svg" ? /^<svg[\s>]/ : /<svg[\s>]/).test(markup)) {
    return undefined;
  }
  const told = (tag: string): string =>
    form === "html" ? "" : htmlWords(
      new RegExp(`<${tag}\\b[^>]*>([^<]*)`).exec(markup)?.[1] ?? "",
    );
  return {
    kind: "figure",
    title: told("title") || head || place,
    description: told("desc") || rest || said,
    markup,
    form,
  };
}

/**
 * Lists what a notebook's cells left behind and a reader may want as a file.
 *
 * A part is named by its cell's `name` (an entry of a cell's metadata in the
 * open notebook format), without one by its title; the same name twice gets a
 * number. Cells and outputs that a page leaves out by their tags are left out.
 *
 * @param notebook A notebook as run.
 * @returns Figures and tables, in order.
 *
 * @example
 * ```ts
 * import { notebookParts } from "sagbook/notebook/notebook_parts.ts";
 * import { equal } from "node:assert/strict";
 *
 * const [part] = notebookParts({
 *   metadata: {},
 *   cells: [{
 *     cell_type: "code",
 *     id: "a",
 *     metadata: { name: "Radius by zone" },
 *     source: "zonesTable(report);",
 *     execution_count: 1,
 *     outputs: [{
 *       output_type: "execute_result",
 *       data: { "text/html": "<table><tr><td>edge</td></tr></table>" },
 *       metadata: {},
 *       execution_count: 1,
 *     }],
 *   }],
 * });
 * equal(part.name, "radius-by-zone");
 * ```
 */
export function notebookParts(notebook: Notebook): readonly NotebookPart[] {
  const numbers = cellNumbers(notebook.cells);
  const taken = new Map<string, number>();
  const parts: NotebookPart[] = [];
  const unique = (kind: string, wanted: string): string => {
    const name = wanted || kind;
    const count = (taken.get(`${kind} ${name}`) ?? 0) + 1;
    taken.set(`${kind} ${name}`, count);
    if (count === 1) return name;
    return unique(kind, `${name}-${count}`);
  };
  for (const [index, cell] of notebook.cells.entries()) {
    const tags = cellTags(cell);
    const hidden = tags.includes("remove-cell") ||
      tags.includes("remove-output");
    if (cell.cell_type !== "code" || hidden) continue;
    const own = typeof cell.metadata.name === "string"
      ? fileName(cell.metadata.name)
      : "";
    for (const output of cell.outputs) {
      if (!("data" in output)) continue;
      const figure = figureOf(output, `Figure of cell ${numbers[index]}`);
      if (figure !== undefined) {
        const name = unique("figure", own || fileName(figure.title));
        parts.push({ ...figure, name });
        continue;
      }
      const html = output.data["text/html"];
      if (typeof html !== "string") continue;
      const clean = cleanMarkup(html, { scope: SCOPE, isXml: false });
      for (const table of htmlTables(clean)) {
        if (table.rows.length === 0) continue;
        const name = unique("table", own || fileName(table.caption ?? ""));
        parts.push({ kind: "table", name, table });
      }
    }
  }
  return parts;
}
