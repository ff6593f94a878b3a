/**
 * What is wrong with a cell before it is run.
 *
 * @module
 */

/** One complaint about a cell's text, at a place in it. */
export interface CellDiagnostic {
  /** The compiler's number, or the word of the module resolver. */
  readonly code: number | string;
  /** What is wrong, with all its lines. */
  readonly message: string;
  /** First character, as offset in the cell in UTF-16 units. */
  readonly start: number;
  /** End of the marked text, exclusive. */
  readonly end: number;
  /** Whether the text is no TypeScript at all, or has a type that does not fit. */
  readonly kind: "syntax" | "type";
}

/**
 * Puts a compiler's complaint into words for a reader of the bench.
 *
 * @param diagnostic The compiler's number (0 where it has none) and its text.
 * @returns A sentence, or undefined if it has nothing better to say.
 */
export type Explainer = (
  diagnostic: { readonly code: number; readonly message: string },
) => string | undefined;

/** A place in a cell, counted from 1 as editors do. */
export interface CellPlace {
  /** Line, from 1. */
  readonly line: number;
  /** Column, from 1, in UTF-16 units. */
  readonly column: number;
}

/**
 * Finds line and column of an offset.
 *
 * @param source Text of the cell.
 * @param offset Offset in UTF-16 units, 0 to the length of the text.
 * @returns Line and column, both from 1.
 *
 * @example
 * ```ts
 * import { placeAt } from "sagbook/cells/cell_diagnostic.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(placeAt("a;\nb;", 3), { line: 2, column: 1 });
 * ```
 */
export function placeAt(source: string, offset: number): CellPlace {
  const before = source.slice(0, offset).split(/\r\n|\n|\r/);
  return { line: before.length, column: before.at(-1)!.length + 1 };
}
