/**
 * The tables in finished HTML, as rows of text.
 *
 * @module
 */
import { htmlWords } from "./html_words.ts";

/** A table as text. */
export interface TextTable {
  /** The sentence above it, where there is one. */
  readonly caption?: string;
  /** Names of the columns; empty where the table has no head. */
  readonly columns: readonly string[];
  /** Rows of cells, each as long as the widest. */
  readonly rows: readonly (readonly string[])[];
}

interface Row {
  readonly cells: readonly string[];
  readonly isHead: boolean;
}

function rowOf(html: string): Row {
  const cells: string[] = [];
  let isHead = true;
  for (
    const [, kind, attributes, inside] of html.matchAll(
      /<(t[hd])\b([^>]*)>([\s\S]*?)<\/t[hd]>/gi,
    )
  ) {
    if (kind.toLowerCase() === "td") isHead = false;
    const span = /\scolspan="(\d{1,3})"/i.exec(attributes);
    cells.push(htmlWords(inside));
    for (let k = 1; k < Number(span?.[1] ?? 1); k++) cells.push("");
  }
  return { cells, isHead: isHead && cells.length > 0 };
}

/**
 * Reads the tables of well-formed HTML: what `table` makes, or what a page's
 * cleaner wrote anew, with every cell's end tag. A table within a table is not
 * told apart from it.
 *
 * @param html Finished HTML.
 * @returns The tables, in order; each text on one line, as it shows.
 *
 * @example
 * ```ts
 * import { htmlTables } from "sagbook/display/html_tables.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const html = "<table><thead><tr><th>zone</th><th>sag</th></tr></thead>" +
 *   "<tbody><tr><td>edge &amp; bevel</td><td>0.601 mm</td></tr></tbody></table>";
 * deepEqual(htmlTables(html), [
 *   { columns: ["zone", "sag"], rows: [["edge & bevel", "0.601 mm"]] },
 * ]);
 * ```
 */
export function htmlTables(html: string): readonly TextTable[] {
  return [...html.matchAll(/<table\b[^>]*>([\s\S]*?)<\/table>/gi)].map(
    ([, inside]) => {
      const caption = /<caption\b[^>]*>([\s\S]*?)<\/caption>/i.exec(inside);
      const lines = [...inside.matchAll(/<tr\b[^>]*>([\s\S]*?)<\/tr>/gi)]
        .map(([, row]) => rowOf(row)).filter(({ cells }) => cells.length > 0);
      const head = lines[0]?.isHead ? lines[0].cells : [];
      const body = lines.slice(head.length > 0 ? 1 : 0);
      const width = Math.max(
        head.length,
        ...body.map(({ cells }) => cells.length),
      );
      const fill = (cells: readonly string[]) => [
        ...cells,
        ...Array.from({ length: width - cells.length }, () => ""),
      ];
      return {
        ...(caption === null ? {} : { caption: htmlWords(caption[1]) }),
        columns: head.length > 0 ? fill(head) : [],
        rows: body.map(({ cells }) => fill(cells)),
      };
    },
  );
}
