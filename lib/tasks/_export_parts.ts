/**
 * A folder's reports as the files that a user takes elsewhere.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { basename, join } from "node:path";
import { jupyterDisplay } from "../display/bundle.ts";
import type { HtmlFigure } from "../figures/element_figure.ts";
import { type Figure, svgFigure } from "../figures/figure.ts";
import { figurePngs } from "../figures/figure_png.ts";
import { figureSvg } from "../figures/figure_svg.ts";
import { RESULTS_TYPE } from "../narrative/show.ts";
import { tableCsv } from "../narrative/table_csv.ts";
import {
  cellTags,
  isJsonObject,
  type JsonObject,
  type Notebook,
} from "../notebook/document.ts";
import {
  type NotebookFigure,
  notebookParts,
} from "../notebook/notebook_parts.ts";
import { readNotebook } from "../notebook/read_notebook.ts";

/** The kinds of files, in the order in which they are told. */
export const KINDS = ["svg", "png", "csv", "json"] as const;
/** One kind of file. */
export type Kind = typeof KINDS[number];

/** How parts become files. */
export interface PartOptions {
  /** Which kinds are wanted. */
  readonly kinds: ReadonlySet<Kind>;
  /** Colours of figures. */
  readonly theme: "light" | "dark";
  /** Width of PNG pictures in pixels. */
  readonly width?: number;
  /** Whether tables have decimal commas. */
  readonly decimalComma: boolean;
}

/** One file to write. */
export interface PartFile {
  /** Its name, in the folder of exports. */
  readonly name: string;
  /** Its kind. */
  readonly kind: Kind;
  /** The report it is from. */
  readonly report: string;
  /** Title of the figure, or sentence above the table. */
  readonly title: string;
  /** Text or bytes. */
  readonly content: string | Uint8Array;
}

/** A report as it stands in the folder. */
export interface KeptReport {
  /** Name of its files, such as `session`. */
  readonly name: string;
  /** The notebook as run. */
  readonly notebook: Notebook;
  /** Path of the notebook. */
  readonly path: string;
  /** Its results, where it gave some. */
  readonly results?: JsonObject;
  /** Whether a cell of it failed. */
  readonly failed: boolean;
}

/** The sum by which a file is known again. */
export function sumOf(content: string | Uint8Array): string {
  return createHash("sha256").update(content).digest("hex");
}

function resultsOf(notebook: Notebook): JsonObject | undefined {
  for (const cell of notebook.cells) {
    if (cell.cell_type !== "code") continue;
    for (const output of cell.outputs) {
      const found = "data" in output ? output.data[RESULTS_TYPE] : undefined;
      if (isJsonObject(found)) return found;
    }
  }
  return undefined;
}

/** Reads every report that lies in a piece's folder, the session's first. */
export async function keptReports(folder: string): Promise<KeptReport[]> {
  const out = join(folder, "report");
  const names: string[] = [];
  try {
    for await (const { name, isFile } of Deno.readDir(out)) {
      if (isFile && name.endsWith(".ipynb") && !name.startsWith(".")) {
        names.push(name);
      }
    }
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
  const first = (name: string): number => name === "session.ipynb" ? 0 : 1;
  names.sort((a, b) => first(a) - first(b) || (a < b ? -1 : 1));
  return await Promise.all(names.map(async (name): Promise<KeptReport> => {
    const path = join(out, name);
    const { notebook } = await readNotebook(path);
    const results = resultsOf(notebook);
    return {
      name: basename(name, ".ipynb"),
      notebook,
      path,
      ...(results === undefined ? {} : { results }),
      failed: notebook.cells.some((cell) =>
        cell.cell_type === "code" &&
        !cellTags(cell).includes("raises-exception") &&
        cell.outputs.some(({ output_type }) => output_type === "error")
      ),
    };
  }));
}

function figureOf(part: NotebookFigure): Figure | HtmlFigure {
  const { title, description, markup } = part;
  if (part.form === "html") {
    return {
      title,
      description,
      html: markup,
      [jupyterDisplay]: () => ({ "text/html": markup }),
    };
  }
  const root = /^<svg\b[^>]*>/.exec(markup)?.[0] ?? "";
  const value = (name: string): string =>
    new RegExp(` ${name}="([^"]*)"`).exec(root)?.[1] ?? "";
  const [, , wide, tall] = value("viewBox").trim().split(/[\s,]+/).map(Number);
  const size = (name: string, box: number): number => {
    const given = parseFloat(value(name));
    return given > 0 ? given : box > 0 ? box : 300;
  };
  return svgFigure({
    title,
    description,
    svg: markup,
    width: size("width", wide),
    height: size("height", tall),
  });
}

/**
 * Makes the files of a report: figures as SVG and PNG, tables as CSV.
 *
 * @returns The files; and why there are no PNG pictures, where those failed.
 */
export async function partFiles(
  { name: report, notebook }: KeptReport,
  options: PartOptions,
): Promise<{ files: PartFile[]; noPictures?: string }> {
  const { kinds, theme, width, decimalComma } = options;
  const files: PartFile[] = [];
  const figures: {
    file: string;
    title: string;
    figure: Figure | HtmlFigure;
  }[] = [];
  for (const part of notebookParts(notebook)) {
    const file = `${report}-${part.name}`;
    if (part.kind === "figure") {
      figures.push({ file, title: part.title, figure: figureOf(part) });
    } else if (kinds.has("csv")) {
      files.push({
        name: `${file}.csv`,
        kind: "csv",
        report,
        title: part.table.caption ?? part.name,
        content: await tableCsv(part.table, { decimalComma }),
      });
    }
  }
  if (kinds.has("svg")) {
    for (const { file, title, figure } of figures) {
      const content = await figureSvg(figure, { theme });
      files.push({ name: `${file}.svg`, kind: "svg", report, title, content });
    }
  }
  if (!kinds.has("png")) return { files };
  try {
    const pictures = await figurePngs(figures.map(({ figure }) => figure), {
      theme,
      ...(width === undefined ? {} : { width }),
    });
    for (const [i, { file, title }] of figures.entries()) {
      const content = pictures[i];
      files.push({ name: `${file}.png`, kind: "png", report, title, content });
    }
  } catch (error) {
    return {
      files,
      noPictures: error instanceof Error ? error.message : String(error),
    };
  }
  return { files };
}
