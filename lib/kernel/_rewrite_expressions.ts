import { parseCell } from "../cells/parse_cell.ts";
import { rewriteCell } from "../cells/rewrite_cell.ts";

/** Makes expressions runnable; those that are no TypeScript get their answer. */
export function rewriteExpressions(given: Readonly<Record<string, unknown>>): {
  expressions: Record<string, string>;
  refused: Record<string, Record<string, unknown>>;
} {
  const expressions: Record<string, string> = {};
  const refused: Record<string, Record<string, unknown>> = {};
  for (const [key, source] of Object.entries(given)) {
    const cell = parseCell(String(source));
    const [problem] = cell.problems;
    if (!problem) expressions[key] = rewriteCell(cell).code;
    else {
      refused[key] = {
        status: "error",
        ename: "SyntaxError",
        evalue: problem.message,
        traceback: [`SyntaxError: ${problem.message}`],
      };
    }
  }
  return { expressions, refused };
}
