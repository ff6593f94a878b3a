import type { ServerPosition } from "./language_server.ts";

/** A complaint as the server sends it. */
export interface ServerDiagnostic {
  readonly severity?: number;
  readonly code?: number | string;
  readonly message: string;
  readonly range: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
}

/** A completion as the server sends it. */
export interface ServerItem {
  readonly label: string;
  readonly kind?: number;
  readonly sortText?: string;
  readonly insertText?: string;
  readonly additionalTextEdits?: readonly unknown[];
  readonly data?: { readonly tsJs?: { readonly source?: string } };
}

/** Names for the protocol's kinds of completion. */
export const ITEM_KINDS: Record<number, string> = {
  2: "method",
  3: "function",
  4: "constructor",
  5: "field",
  6: "variable",
  7: "class",
  8: "interface",
  9: "module",
  10: "property",
  13: "enum",
  14: "keyword",
  17: "file",
  19: "folder",
  20: "enum member",
  21: "constant",
  25: "type parameter",
};

/** Orders texts by their code units. */
export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function lineStarts(source: string): number[] {
  const starts = [0];
  for (const match of source.matchAll(/\r\n|\n|\r/g)) {
    starts.push(match.index + match[0].length);
  }
  return starts;
}

/** Where an offset of the cell is in its module, below the generated line. */
export function positionAt(source: string, offset: number): ServerPosition {
  const starts = lineStarts(source);
  const line = starts.findLastIndex((start) => start <= offset);
  return { line: line + 1, character: offset - starts[line] };
}

/** Where a place of the module is in the cell. */
export function offsetAt(
  source: string,
  { line, character }: ServerPosition,
): number {
  const starts = lineStarts(source);
  const start = starts[line - 1] ?? source.length;
  return Math.min(start + character, source.length);
}

/** Takes the names of the generated modules out of a message. */
export function withoutPaths(message: string): string {
  return message.replace(/import\("[^"]*__cell_\d+(?:\.ts)?"\)\./g, "")
    .replace(/ from "file:[^"]*__cell_\d+\.ts"/g, "");
}
