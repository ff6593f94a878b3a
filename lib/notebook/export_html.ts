/**
 * A notebook to one self-contained HTML page.
 *
 * @module
 */
import { escapeHtml } from "../display/escape_html.ts";
import { loadHighlighter } from "./_code_markup.ts";
import { loadMarkdown, Outline } from "./_markdown_markup.ts";
import { loadMath } from "./_math_markup.ts";
import { PageCells } from "./_page_cells.ts";
import { PRINT_CODE_STYLE, ROOM_STYLE } from "./_page_style.ts";
import { pageWords } from "./_page_words.ts";
import {
  type Cell,
  cellTags,
  isJsonObject,
  type Notebook,
} from "./document.ts";
import { pageShell } from "./page_shell.ts";
import { cellNumbers } from "./parameters.ts";

/** A word that a page explains at its end. */
export interface PageWord {
  /** The word. */
  readonly term: string;
  /** Its symbol and unit, where it has any. */
  readonly unit?: string;
  /** What it means, as text. */
  readonly meaning: string;
}

/** How a page is made. */
export interface ExportOptions {
  /** The page's title; left out, the first heading of level 1 in the notebook. */
  readonly title?: string;
  /** A line under the title. */
  readonly subtitle?: string;
  /** A line at the foot, such as the program's version. */
  readonly footer?: string;
  /** Language of the texts, as in `en` (default) or `de-CH`. */
  readonly language?: string;
  /**
   * `full` (default) folds each cell's code above its results. `reader` shows
   * results first and folds the code of all cells up to the next text below
   * them, as "How this was computed".
   */
  readonly layout?: "full" | "reader";
  /** True: the code is printed too. Default false. */
  readonly printCode?: boolean;
  /** Why the page is not to be trusted as a whole; shown as its first line. */
  readonly incomplete?: string;
  /**
   * The program's own script that makes live figures live (see `liveScript`).
   * A page with a live figure runs it and nothing else; without it, or in a
   * page without such a figure, nothing runs.
   */
  readonly liveScript?: string;
  /**
   * `desk` (default) for one reader; `room` for a class that reads a projected
   * page from the back of the room: larger words, wider column.
   */
  readonly reading?: "desk" | "room";
  /**
   * Finds the words in the page's text that a reader may look up: they are
   * explained in a fold at its end, which is not printed.
   */
  readonly words?: (text: string) => readonly PageWord[];
}

/** The first heading of level 1, and the cells without it. */
function takeTitle(cells: readonly Cell[]): [string | undefined, Cell[]] {
  for (const [index, cell] of cells.entries()) {
    if (cell.cell_type !== "markdown") continue;
    const found = /^\s*# +([^\n]+?)(?: +#+)?[ \t\r]*(?:\n|$)/.exec(cell.source);
    if (found === null) return [undefined, [...cells]];
    const rest = cell.source.slice(found[0].length);
    const shown = [...cells];
    shown[index] = { ...cell, source: rest };
    return [found[1].replace(/[*_`]/g, ""), shown];
  }
  return [undefined, [...cells]];
}

/** A failing cell that nobody expected to fail makes the page incomplete. */
function failedCell(cells: readonly Cell[]): string | undefined {
  const index = cells.findIndex((cell) =>
    cell.cell_type === "code" &&
    !cellTags(cell).includes("raises-exception") &&
    cell.outputs.some((output) => output.output_type === "error")
  );
  return index < 0
    ? undefined
    : `cell ${
      cellNumbers(cells)[index]
    } of the notebook stopped with an error.`;
}

/**
 * Makes one HTML file of a notebook as it stands; nothing is run.
 *
 * The page holds its own style for screens (light and dark, from 360 px of
 * width), and for paper (A4 and Letter, without code unless asked for). It has
 * no script but the one that its caller gives for live figures, asks no host
 * for anything, and forbids the rest by its content security policy. HTML and
 * SVG in outputs are written anew from an
 * allow-list, with ids made unique and styles kept to their own output; raw
 * HTML in Markdown shows as typed.
 *
 * The tags `remove-cell`, `remove-input` and `remove-output` leave out what
 * they say. A cell that stopped with an error, and is not tagged
 * `raises-exception`, puts a warning at the top.
 *
 * @param notebook What to show.
 * @param options Title, layout and the like.
 * @returns The file's text; equal input gives equal text.
 *
 * @example
 * ```ts
 * import { exportHtml } from "sagbook/notebook/export_html.ts";
 * import { match } from "node:assert/strict";
 *
 * const page = await exportHtml({
 *   metadata: {},
 *   cells: [{
 *     cell_type: "markdown",
 *     id: "a",
 *     metadata: {},
 *     source: "# Blank 7\n\nSag $s$ at the centre",
 *   }],
 * });
 * match(page, /<h1>Blank 7<\/h1>/);
 * match(page, /<math/);
 * ```
 */
export async function exportHtml(
  notebook: Notebook,
  options: ExportOptions = {},
): Promise<string> {
  const [found, cells] = options.title === undefined
    ? takeTitle(notebook.cells)
    : [options.title, notebook.cells];
  const title = found ?? "Notebook";
  const [math, code] = await Promise.all([loadMath(), loadHighlighter()]);
  const outline = new Outline();
  const markdown = await loadMarkdown(outline, math, code);
  const info = notebook.metadata.language_info;
  const spec = notebook.metadata.kernelspec;
  const language =
    (isJsonObject(info) && typeof info.name === "string"
      ? info.name
      : undefined) ??
      (isJsonObject(spec) && typeof spec.language === "string"
        ? spec.language
        : "typescript");
  const page = new PageCells(
    { markdown, math },
    code,
    language,
    options.layout === "reader",
    options.liveScript !== undefined,
  );
  const numbers = cellNumbers(cells);
  const body = cells.map((cell, index) =>
    page.cell(cell, index + 1, numbers[index])
  );
  const why = options.incomplete ?? failedCell(notebook.cells);
  const parts = [
    why === undefined
      ? ""
      : `<div class="sb-banner" role="note"><p><strong>This page is incomplete:</strong> ${
        escapeHtml(why)
      }</p></div>`,
    ...body,
    page.rest(),
  ].filter((part) => part !== "");
  const explained = options.words
    ? pageWords(parts.join("\n"), options.words)
    : "";
  if (explained !== "") parts.push(explained);
  const { subtitle, footer, language: spoken } = options;
  return pageShell(parts.join("\n"), {
    title,
    ...(subtitle === undefined ? {} : { subtitle }),
    ...(footer === undefined ? {} : { footer }),
    ...(spoken === undefined ? {} : { language: spoken }),
    ...(page.hasLive ? { script: options.liveScript } : {}),
    style: [
      ...(options.reading === "room" ? [ROOM_STYLE] : []),
      ...(options.printCode ? [PRINT_CODE_STYLE] : []),
    ].join("\n"),
  });
}
