/**
 * Noticing a line meant for another kernel.
 *
 * @module
 */
import type { CellDiagnostic } from "./cell_diagnostic.ts";

/**
 * Finds a cell magic, line magic or shell escape on the cell's first line.
 *
 * Only the first line of text is looked at: further down, `%` and `!` are
 * operators.
 *
 * @param source Text of the cell.
 * @returns The complaint with the line quoted, or undefined.
 *
 * @example
 * ```ts
 * import { findForeignLine } from "sagbook/cells/find_foreign_line.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(
 *   findForeignLine("%%time\n1 + 1")?.message,
 *   'Cannot read "%%time" on line 1: cell magics are not TypeScript. Remove the line, or choose the kernel it was written for.',
 * );
 * equal(findForeignLine("!true"), undefined);
 * ```
 */
export function findForeignLine(source: string): CellDiagnostic | undefined {
  const lines = source.split(/\r\n|\n|\r/);
  const at = lines.findIndex((line) => line.trim() !== "");
  if (at < 0) return;
  const line = lines[at].trim();
  const kind = /^%%\w/.test(line)
    ? "cell magics"
    : /^%\w/.test(line)
    ? "line magics"
    : /^!\w+(\s+[\w./~-]|$)/.test(line) && !/^!\w+\s*($|;|[&|=?.(])/.test(line)
    ? "shell commands"
    : undefined;
  if (!kind) return;
  const start = source.indexOf(line);
  return {
    code: 0,
    message: `Cannot read ${JSON.stringify(line)} on line ${
      at + 1
    }: ${kind} are not TypeScript. Remove the line, or choose the kernel it was written for.`,
    start,
    end: start + line.length,
    kind: "syntax",
  };
}
