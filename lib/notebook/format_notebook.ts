/**
 * A notebook in memory to the text of a notebook file.
 *
 * @module
 */
import { splitLines } from "./_lines.ts";
import {
  type Cell,
  isJsonObject,
  type JsonObject,
  type JsonValue,
  type Notebook,
  type Output,
} from "./document.ts";

/** Forms that are stored as a list of lines, to keep differences small. */
function isStoredAsLines(mimeType: string): boolean {
  return mimeType.startsWith("text/") || mimeType === "image/svg+xml" ||
    mimeType === "application/javascript";
}

function storedOutput(output: Output): JsonObject {
  if (output.output_type === "stream") {
    return { ...output, text: splitLines(output.text) };
  }
  if (output.output_type === "error") return { ...output };
  const forms = Object.entries(output.data).map((
    [type, form],
  ): [string, JsonValue] =>
    typeof form === "string" && isStoredAsLines(type)
      ? [type, splitLines(form)]
      : [type, form]
  );
  return { ...output, data: Object.fromEntries(forms) } as JsonObject;
}

function storedCell(cell: Cell): JsonObject {
  const source = splitLines(cell.source);
  return cell.cell_type === "code"
    ? { ...cell, source, outputs: cell.outputs.map(storedOutput) }
    : { ...cell, source } as JsonObject;
}

/** JSON with sorted keys and one space of indent for each level. */
function layout(value: JsonValue, indent: string): string {
  if (Array.isArray(value)) {
    if (value.length === 0) return "[]";
    const inner = indent + " ";
    const items = value.map((item) => inner + layout(item, inner));
    return `[\n${items.join(",\n")}\n${indent}]`;
  }
  if (isJsonObject(value)) {
    const keys = Object.keys(value).filter((key) => value[key] !== undefined);
    if (keys.length === 0) return "{}";
    const inner = indent + " ";
    const items = keys.sort().map((key) =>
      `${inner}${JSON.stringify(key)}: ${layout(value[key], inner)}`
    );
    return `{\n${items.join(",\n")}\n${indent}}`;
  }
  return JSON.stringify(value);
}

/**
 * Writes a notebook as the text of a file of format 4.5.
 *
 * Keys are sorted, the indent is one space, texts are cut into lines and the
 * file ends with a line feed, as Jupyter itself lays files out: opening and
 * saving the file there changes nothing.
 *
 * @param notebook Any notebook.
 * @returns The file's text; equal notebooks give equal text.
 *
 * @see The Jupyter notebook format, version 4.5 (nbformat.readthedocs.io).
 *
 * @example
 * ```ts
 * import { formatNotebook } from "sagbook/notebook/format_notebook.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(
 *   formatNotebook({ metadata: {}, cells: [] }),
 *   '{\n "cells": [],\n "metadata": {},\n "nbformat": 4,\n "nbformat_minor": 5\n}\n',
 * );
 * ```
 */
export function formatNotebook(notebook: Notebook): string {
  const file: JsonObject = {
    cells: notebook.cells.map(storedCell),
    metadata: notebook.metadata,
    nbformat: 4,
    nbformat_minor: 5,
  };
  return layout(file, "") + "\n";
}
