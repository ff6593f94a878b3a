/**
 * Notebooks: read, run without a screen, write, and turn into a page.
 *
 * @example From a file's text to a page
 * ```ts
 * import { exportHtml, parseNotebook } from "sagbook/notebook/mod.ts";
 * import { match } from "node:assert/strict";
 *
 * const text = `{ "nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": [
 *   { "cell_type": "markdown", "id": "a", "metadata": {}, "source": "# Blank 7" }
 * ] }`;
 * const { notebook } = await parseNotebook(text, "blank7.ipynb");
 * match(await exportHtml(notebook), /<h1>Blank 7<\/h1>/);
 * ```
 *
 * @module
 */
export {
  type Cell,
  type CellBase,
  cellTags,
  type CodeCell,
  type DataOutput,
  type ErrorOutput,
  isJsonMimeType,
  isJsonObject,
  type JsonObject,
  type JsonValue,
  type Notebook,
  type Output,
  type StreamOutput,
  type TextCell,
} from "./document.ts";
export {
  exportHtml,
  type ExportOptions,
  type PageWord,
} from "./export_html.ts";
export { formatNotebook } from "./format_notebook.ts";
export { chooseKernel, type KernelChoice } from "./kernel_choice.ts";
export {
  type NotebookFigure,
  type NotebookPart,
  notebookParts,
  type NotebookTable,
} from "./notebook_parts.ts";
export {
  cellNumbers,
  isRunParameters,
  PARAMETERS_TAG,
  RUN_PARAMETERS_TAG,
  withParameters,
} from "./parameters.ts";
export { type PageFrame, pageShell } from "./page_shell.ts";
export { type ParsedNotebook, parseNotebook } from "./parse_notebook.ts";
export { readNotebook } from "./read_notebook.ts";
export { runNotebook, type RunOptions } from "./run_notebook.ts";
export {
  type CellProblem,
  RUN_EXIT_CODES,
  type RunProgress,
  type RunResult,
  type RunStatus,
} from "./run_result.ts";
export { pageColours } from "./page_colours.ts";
export { writeNotebook } from "./write_notebook.ts";
