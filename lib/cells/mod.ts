/**
 * The cells of a notebook as text: read, rewritten so that they can be run and
 * stopped, type-checked in a chain, completed and explained.
 *
 * @example Find what is wrong with a notebook before anything runs
 * ```ts
 * import { checkCells, describeDiagnostic } from "sagbook/cells/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const cells = ["const sag = 0.715;", "sag.toUpperCase()"];
 * const [, second] = await checkCells(cells, { folder: "file:///notebook/" });
 * equal(
 *   describeDiagnostic(second[0], cells[1], "cell 2")[0],
 *   "cell 2, line 1, column 5 (TS2339)",
 * );
 * ```
 *
 * @module
 */
export { CellChain, type ChainedCell } from "./cell_chain.ts";
export { CellChecker, type CheckedCell } from "./cell_checker.ts";
export type { CellCompletion } from "./cell_completion.ts";
export {
  type CellDiagnostic,
  type CellPlace,
  type Explainer,
  placeAt,
} from "./cell_diagnostic.ts";
export { checkCells } from "./check_cells.ts";
export { checkCellsOnce, type CheckMemory } from "./check_cells_once.ts";
export { describeDiagnostic, excerpt, explain } from "./describe_diagnostic.ts";
export { findForeignLine } from "./find_foreign_line.ts";
export { type Completeness, isComplete } from "./is_complete.ts";
export {
  LanguageServer,
  type LanguageServerSettings,
  type ServerPosition,
} from "./language_server.ts";
export { offlineEnvironment } from "./offline_environment.ts";
export { ownFileOf } from "./own_file_of.ts";
export {
  type CellName,
  type NameKind,
  parseCell,
  type ParsedCell,
} from "./parse_cell.ts";
export { rewriteCell, type RunnableCell } from "./rewrite_cell.ts";
