/**
 * Checking a whole notebook without running it.
 *
 * @module
 */
import { CellChecker } from "./cell_checker.ts";
import type { CellDiagnostic } from "./cell_diagnostic.ts";
import type { LanguageServerSettings } from "./language_server.ts";
import { parseCell } from "./parse_cell.ts";

/**
 * Checks cells in order, as if each had run, and reports all complaints at once.
 *
 * @param sources Texts of the code cells, in order.
 * @param settings Folder, deno.json and program of the checker.
 * @returns For each cell what is wrong with it; none for a cell that asks not
 * to be checked.
 *
 * @example
 * ```ts
 * import { checkCells } from "sagbook/cells/check_cells.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const found = await checkCells(
 *   ["const sag = 0.7;", "sag.length", "// @ts-nocheck\nsag.length"],
 *   { folder: "file:///notebook/" },
 * );
 * deepEqual(found.map((cell) => cell.map(({ code }) => code)), [[], [2339], []]);
 * ```
 */
export async function checkCells(
  sources: readonly string[],
  settings: LanguageServerSettings,
): Promise<CellDiagnostic[][]> {
  const checker = new CellChecker(settings);
  try {
    const found: CellDiagnostic[][] = [];
    for (const source of sources) {
      const cell = parseCell(source);
      const { diagnostics, module } = await checker.check(cell);
      const heard = cell.unchecked
        ? diagnostics.filter(({ kind }) => kind === "syntax")
        : diagnostics;
      found.push([...heard]);
      await checker.commit(module);
    }
    return found;
  } finally {
    await checker.stop();
  }
}
