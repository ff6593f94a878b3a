/**
 * Showing a complaint with the line it is about.
 *
 * @module
 */
import {
  type CellDiagnostic,
  type CellPlace,
  type Explainer,
  placeAt,
} from "./cell_diagnostic.ts";

/**
 * Writes a complaint as lines of text: the place, the source line, a mark under
 * the text that is meant, and what is wrong, first in plain words where an
 * explainer has some.
 *
 * @param diagnostic The complaint.
 * @param source Text of the cell.
 * @param cell Name of the cell, such as "cell 3".
 * @param explainers Asked in order; the first that has a sentence is heard.
 * @returns The lines.
 *
 * @example
 * ```ts
 * import { describeDiagnostic } from "sagbook/cells/describe_diagnostic.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const diagnostic = {
 *   code: 2304,
 *   message: "Cannot find name 'sga'.",
 *   start: 8,
 *   end: 11,
 *   kind: "type",
 * } as const;
 * deepEqual(describeDiagnostic(diagnostic, "1;\nR1 = sga;", "cell 3"), [
 *   "cell 3, line 2, column 6 (TS2304)",
 *   "  2 | R1 = sga;",
 *   "    |      ~~~",
 *   "Cannot find name 'sga'.",
 * ]);
 * ```
 */
export function describeDiagnostic(
  diagnostic: CellDiagnostic,
  source: string,
  cell: string,
  explainers: readonly Explainer[] = [],
): string[] {
  const { code, message, start, end } = diagnostic;
  const place = placeAt(source, start);
  const plain = explain(diagnostic, explainers);
  const name = typeof code === "number" ? (code ? ` (TS${code})` : "") : "";
  return [
    `${cell}, line ${place.line}, column ${place.column}${name}`,
    ...excerpt(source, place, end - start),
    ...(plain ? [plain] : []),
    ...message.split("\n"),
  ];
}

/**
 * Puts a complaint into one sentence.
 *
 * @param diagnostic The complaint.
 * @param explainers Asked in order.
 * @returns The first sentence an explainer has, or undefined.
 */
export function explain(
  diagnostic: CellDiagnostic,
  explainers: readonly Explainer[],
): string | undefined {
  const { code, message } = diagnostic;
  for (const explainer of explainers) {
    const sentence = explainer({
      code: typeof code === "number" ? code : 0,
      message,
    });
    if (sentence !== undefined) return sentence;
  }
}

/**
 * The source line of a place, with a mark under the text that is meant.
 *
 * @param source Text of the cell.
 * @param place Line and column from 1.
 * @param length How many characters to mark; at least one is.
 * @returns Two lines; none if there is no such line.
 */
export function excerpt(
  source: string,
  place: CellPlace,
  length: number,
): string[] {
  const line = source.split(/\r\n|\n|\r/)[place.line - 1];
  if (line === undefined) return [];
  const shown = line.replaceAll("\t", " ");
  const room = Math.max(1, shown.length - place.column + 1);
  const mark = "~".repeat(Math.min(Math.max(1, length), room));
  const number = String(place.line);
  return [
    `  ${number} | ${shown}`,
    `  ${" ".repeat(number.length)} | ${" ".repeat(place.column - 1)}${mark}`,
  ];
}
