/**
 * Checking, completing and explaining cells before they run.
 *
 * @module
 */
import { CellChain, type ChainedCell } from "./cell_chain.ts";
import type { CellDiagnostic } from "./cell_diagnostic.ts";
import {
  LanguageServer,
  type LanguageServerSettings,
} from "./language_server.ts";
import type { ParsedCell } from "./parse_cell.ts";
import { parseCell } from "./parse_cell.ts";

/** A name that fits at the cursor. */
export interface CellCompletion {
  /** The text to put in. */
  readonly text: string;
  /** What it is, such as "function". */
  readonly kind: string;
}

/** The outcome of a check. */
export interface CheckedCell {
  /** What is wrong; empty if nothing is. */
  readonly diagnostics: readonly CellDiagnostic[];
  /** The cell's module, to be committed once it has run. */
  readonly module: ChainedCell;
}

const NOT_FETCHED = new Set([
  "not-installed-npm",
  "not-installed-jsr",
  "no-cache",
  "no-cache-npm",
  "no-cache-data",
]);

/** 7016: a package without types is taken as `any`, as Deno itself does. */
const PASSED_OVER = new Set<number | string>([7016]);

/**
 * Keeps a language server and the chain of cells that have run.
 *
 * @example A wrong type is found before the cell runs
 * ```ts
 * import { CellChecker } from "sagbook/cells/cell_checker.ts";
 * import { parseCell } from "sagbook/cells/parse_cell.ts";
 * import { equal } from "node:assert/strict";
 *
 * const checker = new CellChecker({ folder: "file:///notebook/" });
 * const first = await checker.check(parseCell("const sag = 0.715;"));
 * checker.commit(first.module);
 * const second = await checker.check(parseCell("const x: string = sag;"));
 * equal(second.diagnostics[0].code, 2322);
 * await checker.stop();
 * ```
 */
export class CellChecker {
  #settings: LanguageServerSettings;
  #chain: CellChain;
  #server: LanguageServer;
  #opened = new Set<string>();

  /**
   * Starts the language server and lets it load its libraries.
   *
   * @param settings Folder, deno.json and program.
   */
  constructor(settings: LanguageServerSettings) {
    this.#settings = settings;
    this.#chain = new CellChain(settings.folder);
    this.#server = new LanguageServer(settings);
    this.#warmUp();
  }

  /** Process id of the language server. */
  get pid(): number {
    return this.#server.pid;
  }

  /**
   * Finds what is wrong with a cell, given the cells that have run.
   *
   * Packages that are not on this machine yet are fetched first, as running
   * the cell would.
   *
   * @param cell The cell.
   * @returns What is wrong, and the cell's module. A cell that is no
   * TypeScript is not sent to the server.
   */
  async check(cell: ParsedCell): Promise<CheckedCell> {
    const module = this.#chain.compose(cell);
    if (cell.problems.length > 0) return { diagnostics: cell.problems, module };
    await this.#open(module);
    let found = await this.#diagnose(module);
    if (found.some(({ code }) => NOT_FETCHED.has(String(code)))) {
      await this.#server.request("workspace/executeCommand", {
        command: "deno.cache",
        arguments: [[], module.uri],
      }).catch(() => {});
      found = await this.#diagnose(module);
    }
    return { diagnostics: found, module };
  }

  /**
   * Makes a cell's names known to the cells after it.
   *
   * @param module Module of a cell that has run.
   * @param assigned Names that have a value; all unless given.
   */
  async commit(
    module: ChainedCell,
    assigned?: ReadonlySet<string>,
  ): Promise<void> {
    const superfluous = this.#chain.commit(module, assigned);
    await this.#open(module);
    this.#close(superfluous);
  }

  /** Lets go of the module of a cell that was not run. */
  discard(module: ChainedCell): void {
    this.#close([module.uri]);
  }

  /** Forgets all cells, after their variables were lost. */
  reset(): void {
    this.#close(this.#chain.reset());
  }

  /**
   * Lists the names that fit at a place.
   *
   * @param source Text of the cell.
   * @param offset Place in UTF-16 units.
   * @param prefix What has been typed of the name.
   * @returns Names that begin so, the nearest first.
   */
  async complete(
    source: string,
    offset: number,
    prefix: string,
  ): Promise<CellCompletion[]> {
    const result = await this.#ask(
      source,
      offset,
      "textDocument/completion",
    ) as { items?: ServerItem[] } | null;
    const wanted = prefix.toLowerCase();
    const items = (result?.items ?? [])
      .filter(({ label }) => label.toLowerCase().startsWith(wanted))
      .filter(({ label }) => !/^__cell_\d+/.test(label))
      .filter(({ additionalTextEdits, data }) =>
        !additionalTextEdits?.length && !data?.tsJs?.source
      );
    const exact = items.filter(({ label }) => label.startsWith(prefix));
    return (exact.length > 0 ? exact : items)
      .toSorted((a, b) =>
        compare(a.sortText ?? a.label, b.sortText ?? b.label) ||
        compare(a.label, b.label)
      )
      .map(({ label, kind, insertText }) => ({
        text: insertText?.startsWith(label) ? insertText : label,
        kind: ITEM_KINDS[kind ?? 0] ?? "text",
      }));
  }

  /**
   * Explains the name at a place.
   *
   * @param source Text of the cell.
   * @param offset Place in UTF-16 units.
   * @returns Markdown, or undefined where there is nothing to say.
   */
  async hover(source: string, offset: number): Promise<string | undefined> {
    const result = await this.#ask(source, offset, "textDocument/hover") as
      | { contents?: { value?: string } | string }
      | null;
    const { contents } = result ?? {};
    const text = typeof contents === "string" ? contents : contents?.value;
    const bare = text?.replace(/^```\w*\s*any\s*```\s*$/, "").trim();
    return bare || undefined;
  }

  /** Ends the language server. */
  async stop(): Promise<void> {
    await this.#server.stop();
  }

  /** Asks about a place in a text that is opened for this question alone. */
  async #ask(source: string, offset: number, method: string): Promise<unknown> {
    const module = this.#chain.compose(parseCell(source), /* all */ true);
    await this.#open(module);
    try {
      return await this.#server.request(method, {
        textDocument: { uri: module.uri },
        position: positionAt(source, offset),
      });
    } finally {
      this.#close([module.uri]);
    }
  }

  async #diagnose(module: ChainedCell): Promise<CellDiagnostic[]> {
    const result = await this.#server.request("textDocument/diagnostic", {
      textDocument: { uri: module.uri },
    }) as { items?: ServerDiagnostic[] } | null;
    const { source } = module.cell;
    const lines = source.split(/\r\n|\n|\r/).length;
    return (result?.items ?? [])
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

  async #open(module: ChainedCell): Promise<void> {
    if (this.#server.gone) await this.#restart();
    if (this.#opened.has(module.uri)) return;
    this.#opened.add(module.uri);
    await this.#server.open(module.uri, module.text);
  }

  #close(uris: readonly string[]): void {
    for (const uri of uris) {
      if (this.#opened.delete(uri)) this.#server.close(uri).catch(() => {});
    }
  }

  /** Starts a new server where the old one has ended, with all modules. */
  async #restart(): Promise<void> {
    this.#server = new LanguageServer(this.#settings);
    this.#opened.clear();
    for (const module of this.#chain.modules) {
      this.#opened.add(module.uri);
      await this.#server.open(module.uri, module.text);
    }
  }

  async #warmUp(): Promise<void> {
    const uri = `${this.#settings.folder}__cell_0.ts`;
    try {
      await this.#server.open(uri, "\nexport {};");
      await this.#server.request("textDocument/diagnostic", {
        textDocument: { uri },
      });
      await this.#server.close(uri);
    } catch {
      // The first real question will tell.
    }
  }
}

interface ServerDiagnostic {
  readonly severity?: number;
  readonly code?: number | string;
  readonly message: string;
  readonly range: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
}

interface ServerItem {
  readonly label: string;
  readonly kind?: number;
  readonly sortText?: string;
  readonly insertText?: string;
  readonly additionalTextEdits?: readonly unknown[];
  readonly data?: { readonly tsJs?: { readonly source?: string } };
}

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

function positionAt(source: string, offset: number) {
  const starts = lineStarts(source);
  const line = starts.findLastIndex((start) => start <= offset);
  return { line: line + 1, character: offset - starts[line] };
}

function offsetAt(
  source: string,
  { line, character }: { readonly line: number; readonly character: number },
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
