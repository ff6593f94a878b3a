/**
 * Making a cell runnable.
 *
 * @module
 */
import { blankTypes } from "./_blank_types.ts";
import { editStatements } from "./_edit_statements.ts";
import { parseModule } from "./_parse_module.ts";
import { TextEdits } from "./_text_edits.ts";
import type { ParsedCell } from "./parse_cell.ts";

/** A cell as JavaScript, with the way back to its text. */
export interface RunnableCell {
  /**
   * One expression: an async function whose only parameter, `__cell`, offers
   * `wait`, `each`, `load`, `meta`, `declare`, `mark` and `keep`.
   */
  readonly code: string;
  /** Names that exist at run time once the cell has run to its end. */
  readonly names: readonly string[];
  /**
   * Leads a place in `code` back to the cell.
   *
   * @param line Line in `code`, from 1.
   * @param column Column in that line, from 1.
   * @returns Offset in the cell's text.
   */
  original(line: number, column: number): number;
}

const OPENING = 'async (__cell) => {"use strict";';

/**
 * Rewrites a cell so that it can be run in a scope that later cells share,
 * stopped at every `await`, and traced back to its own lines.
 *
 * - Types are blanked, so what remains keeps its place.
 * - `const`, functions, classes, enums and imports stay as they are, and are
 *   handed to the shared scope as soon as they have a value. A function keeps
 *   the constants of its own cell, whatever a later cell declares.
 * - `let` and `var` become variables of the shared scope itself, so that a
 *   later cell changes the same variable.
 * - `await x` and `for await` go through `__cell`, which ends them when the
 *   cell is stopped; `import` becomes a call, `export` is dropped.
 * - The value of the last expression is returned.
 *
 * Limits: imported names are constants, not live bindings. A `var` inside a
 * block, and `using`, end with the cell.
 *
 * @param cell A cell without problems.
 * @returns The code and its map.
 *
 * @example
 * ```ts
 * import { parseCell } from "sagbook/cells/parse_cell.ts";
 * import { rewriteCell } from "sagbook/cells/rewrite_cell.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { code } = rewriteCell(parseCell("const sag: number = 0.7;\nsag * 2"));
 * const kept = {};
 * const run = new Function(`return (${code})`)();
 * equal(await run({ keep: (names: object) => Object.assign(kept, names) }), 1.4);
 * equal(JSON.stringify(kept), '{"sag":0.7}');
 * ```
 */
export function rewriteCell(cell: ParsedCell): RunnableCell {
  const edits = new TextEdits(cell.source);
  const opening = editStatements(parseModule(cell.source), edits);
  const edited = edits.apply();
  const blanked = blankTypes(edited.text);
  const map = blanked.map.after(edited.map);
  const head = `${OPENING}${opening}\n`;
  const code = `${head}${blanked.text}\n}`;
  const starts = [0];
  for (const match of code.matchAll(/\r\n|\n|\r|\u2028|\u2029/g)) {
    starts.push(match.index + match[0].length);
  }
  return {
    code,
    names: cell.names.filter((one) => !one.typeOnly).map(({ name }) => name),
    original(line, column) {
      const start = starts[Math.min(line, starts.length) - 1] ?? 0;
      const offset = start + column - 1 - head.length;
      const found = offset < 0 ? 0 : map.original(offset);
      return Math.min(Math.max(found, 0), cell.source.length);
    },
  };
}
