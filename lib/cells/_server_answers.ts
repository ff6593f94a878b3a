import type { CellCompletion } from "./cell_completion.ts";
import type { CellDiagnostic } from "./cell_diagnostic.ts";
import type { ServerPosition } from "./language_server.ts";

/** A complaint as the server sends it. */
interface ServerDiagnostic {
  readonly severity?: number;
  readonly code?: number | string;
  readonly message: string;
  readonly range: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
}

/** A completion as the server sends it. */
interface ServerItem {
  readonly label: string;
  readonly kind?: number;
  readonly sortText?: string;
  readonly insertText?: string;
  readonly additionalTextEdits?: readonly unknown[];
  readonly data?: { readonly tsJs?: { readonly source?: string } };
}

/** Names for the protocol's kinds of completion. */
const ITEM_KINDS: Record<number, string> = {
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
function compare(a: string, b: string): number {
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
function offsetAt(
  source: string,
  { line, character }: ServerPosition,
): number {
  const starts = lineStarts(source);
  const start = starts[line - 1] ?? source.length;
  return Math.min(start + character, source.length);
}

/** Takes the names of the generated modules out of a message. */
function withoutPaths(message: string): string {
  return message.replace(/import\("[^"]*__cell_\d+(?:\.ts)?"\)\./g, "")
    .replace(/ from "file:[^"]*__cell_\d+\.ts"/g, "");
}

/** 7016: a package without types is taken as `any`, as the runtime does. */
const PASSED_OVER = new Set<number | string>([7016]);

/** What is wrong with a cell; complaints about generated lines are left out. */
export function readDiagnostics(
  result: unknown,
  source: string,
): CellDiagnostic[] {
  const { items = [] } = result as { items?: ServerDiagnostic[] } ?? {};
  const lines = source.split(/\r\n|\n|\r/).length;
  return items
    .filter(({ severity, code }) =>
      (severity ?? 1) === 1 && !PASSED_OVER.has(code ?? 0)
    )
    .filter(({ range: { start } }) => start.line >= 1 && start.line <= lines)
    .map(({ code, message, range }): CellDiagnostic => ({
      code: code ?? 0,
      message: withoutPaths(message),
      start: offsetAt(source, range.start),
      end: offsetAt(source, range.end),
      kind: "type",
    }))
    .toSorted((a, b) => a.start - b.start);
}

/** The names that begin with a prefix, in the server's order. */
export function readCompletions(
  result: unknown,
  prefix: string,
): CellCompletion[] {
  const { items = [] } = result as { items?: ServerItem[] } ?? {};
  const wanted = prefix.toLowerCase();
  const fitting = items
    .filter(({ label }) => label.toLowerCase().startsWith(wanted))
    .filter(({ label }) => !/^__cell_\d+/.test(label))
    .filter(({ additionalTextEdits, data }) =>
      !additionalTextEdits?.length && !data?.tsJs?.source
    );
  const exact = fitting.filter(({ label }) => label.startsWith(prefix));
  return (exact.length > 0 ? exact : fitting)
    .toSorted((a, b) =>
      compare(a.sortText ?? a.label, b.sortText ?? b.label) ||
      compare(a.label, b.label)
    )
    .map(({ label, kind, insertText }) => ({
      text: insertText?.startsWith(label) ? insertText : label,
      kind: ITEM_KINDS[kind ?? 0] ?? "text",
    }));
}

/** The words about a name as Markdown; undefined where there are none. */
export function readHover(result: unknown): string | undefined {
  const { contents } = result as { contents?: { value?: string } | string } ??
    {};
  const text = typeof contents === "string" ? contents : contents?.value;
  const bare = text?.replace(/^```\w*\s*any\s*```\s*$/, "").trim();
  return bare || undefined;
}
