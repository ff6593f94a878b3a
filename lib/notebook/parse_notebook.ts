/**
 * Notebook text to a notebook in memory.
 *
 * @module
 */
import { isCellId, makeCellId } from "./_cell_id.ts";
import { parseJson } from "./_json_text.ts";
import { joinLines, joinSource } from "./_lines.ts";
import { schemaProblems } from "./_schema.ts";
import {
  type Cell,
  isJsonMimeType,
  isJsonObject,
  type JsonObject,
  type JsonValue,
  type Notebook,
  type Output,
} from "./document.ts";

/** A notebook and what had to be mended to read it. */
export interface ParsedNotebook {
  /** What the file holds. */
  readonly notebook: Notebook;
  /** One sentence for each mend; empty for a file in order. */
  readonly warnings: readonly string[];
}

/** Text of a value, cut so that a message stays one line. */
function quote(value: unknown): string {
  const text = value === undefined ? "missing" : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function checkVersion(json: unknown, name: string): void {
  if (!isJsonObject(json)) return;
  const { nbformat } = json;
  if (nbformat !== 4) {
    throw new SyntaxError(
      `Cannot read ${name} as \`nbformat\` must be 4: current value is ${
        quote(nbformat)
      }; open and save it with a current notebook program`,
    );
  }
}

function readOutput(raw: JsonObject): Output {
  const metadata = isJsonObject(raw.metadata) ? raw.metadata : {};
  switch (raw.output_type) {
    case "stream":
      return {
        output_type: "stream",
        name: raw.name as string,
        text: joinLines(raw.text as string | string[]),
      };
    case "error":
      return {
        output_type: "error",
        ename: raw.ename as string,
        evalue: raw.evalue as string,
        traceback: raw.traceback as string[],
      };
    default: {
      const data = Object.entries(raw.data as JsonObject).map((
        [type, form],
      ): [string, JsonValue] =>
        Array.isArray(form) && !isJsonMimeType(type)
          ? [type, joinLines(form as string[])]
          : [type, form]
      );
      const common = { data: Object.fromEntries(data), metadata };
      return raw.output_type === "execute_result"
        ? {
          output_type: "execute_result",
          ...common,
          execution_count: (raw.execution_count ?? null) as number | null,
        }
        : { output_type: "display_data", ...common };
    }
  }
}

const CELL_KEYS = new Set([
  "cell_type",
  "id",
  "metadata",
  "source",
  "attachments",
  "outputs",
  "execution_count",
]);

function readCells(raws: readonly JsonObject[], warnings: string[]): Cell[] {
  const taken = new Set(raws.map((raw) => raw.id).filter(isCellId));
  const holders = new Map<string, number>();
  return raws.map((raw, index) => {
    const ordinal = index + 1;
    const type = raw.cell_type as "code" | "markdown" | "raw";
    const { text: source, lost } = joinSource(raw.source as string | string[]);
    if (lost !== "none" && type === "code") {
      const count = (raw.source as string[]).length;
      warnings.push(
        lost === "all"
          ? `cell ${ordinal}: its ${count} lines were stored without line ends; the line ends were put back`
          : `cell ${ordinal}: some of its ${count} lines are stored without line ends and were joined as they stand`,
      );
    }
    const unknown = Object.keys(raw).filter((key) => !CELL_KEYS.has(key));
    if (unknown.length > 0) {
      warnings.push(
        `cell ${ordinal}: ${
          unknown.map((key) => `\`${key}\``).join(", ")
        } is not part of the notebook format and was left out`,
      );
    }
    let id: string;
    const first = isCellId(raw.id) ? holders.get(raw.id) : undefined;
    if (isCellId(raw.id) && first === undefined) {
      id = raw.id;
      holders.set(id, ordinal);
    } else {
      id = makeCellId(`${type}\0${source}`, taken);
      if (first !== undefined) {
        warnings.push(
          `the id \`${raw.id}\` stands on cells ${first} and ${ordinal}; cell ${ordinal} now has the id \`${id}\``,
        );
      } else if (raw.id !== undefined) {
        warnings.push(
          `cell ${ordinal}: its id ${
            quote(raw.id)
          } is not 1 to 64 of a-z, A-Z, 0-9, - and _; it now has the id \`${id}\``,
        );
      }
    }
    const metadata = isJsonObject(raw.metadata) ? raw.metadata : {};
    if (type === "code") {
      return {
        cell_type: "code",
        id,
        metadata,
        source,
        execution_count: (raw.execution_count ?? null) as number | null,
        outputs: ((raw.outputs ?? []) as JsonObject[]).map(readOutput),
      };
    }
    return {
      cell_type: type,
      id,
      metadata,
      source,
      ...(isJsonObject(raw.attachments)
        ? { attachments: raw.attachments }
        : {}),
    };
  });
}

/**
 * Reads the text of a notebook file of format 4.
 *
 * Older minor versions are raised to 4.5: cells without an id get one made
 * from their content, so two readings of one file agree. Keys that some tools
 * leave out (`outputs`, `execution_count`, `metadata`) become empty. Of two
 * cells with one id the later gets a new one.
 *
 * A source whose lines were stored without line ends gets them back when every
 * inner line lacks its own; where only some do, they are joined as the format
 * says, and a warning tells.
 *
 * @param text The whole file.
 * @param name What messages call the file.
 * @returns The notebook, and a sentence for each mend.
 * @throws {SyntaxError} If the text is not JSON, or not a notebook of format
 * 4; the message names the cell and what was expected.
 *
 * @see The Jupyter notebook format, version 4.5 (nbformat.readthedocs.io).
 *
 * @example
 * ```ts
 * import { parseNotebook } from "sagbook/notebook/parse_notebook.ts";
 * import { equal } from "node:assert/strict";
 *
 * const text = `{ "nbformat": 4, "nbformat_minor": 4, "metadata": {},
 *   "cells": [{ "cell_type": "code", "source": ["1 +\\n", "1"] }] }`;
 * const { notebook } = await parseNotebook(text, "sum.ipynb");
 * equal(notebook.cells[0].source, "1 +\n1");
 * ```
 */
export async function parseNotebook(
  text: string,
  name: string,
): Promise<ParsedNotebook> {
  const json = parseJson(text.replace(/^\uFEFF/, ""), name);
  checkVersion(json, name);
  const problems = await schemaProblems(json);
  if (problems.length > 0) {
    const [{ place, rule, value }] = problems;
    const more = problems.length > 1
      ? ` (and ${problems.length - 1} more places)`
      : "";
    throw new SyntaxError(
      `Cannot read ${name} as ${place} ${rule}: current value is ${
        quote(value)
      }${more}`,
    );
  }
  const file = json as JsonObject;
  const warnings: string[] = [];
  if (typeof file.nbformat_minor === "number" && file.nbformat_minor > 5) {
    warnings.push(
      `the file says format 4.${file.nbformat_minor}; it was read as 4.5`,
    );
  }
  const cells = readCells(file.cells as readonly JsonObject[], warnings);
  const metadata = isJsonObject(file.metadata) ? file.metadata : {};
  return { notebook: { metadata, cells }, warnings };
}
