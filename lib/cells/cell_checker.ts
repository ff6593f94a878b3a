/**
 * Checking, completing and explaining cells before they run.
 *
 * @module
 */
import { positionAt, readCompletions, readHover } from "./_server_answers.ts";
import { diagnose } from "./_diagnose.ts";
import { CellChain, type ChainedCell } from "./cell_chain.ts";
import type { CellCompletion } from "./cell_completion.ts";
import type { CellDiagnostic } from "./cell_diagnostic.ts";
import {
  LanguageServer,
  type LanguageServerSettings,
} from "./language_server.ts";
import { parseCell, type ParsedCell } from "./parse_cell.ts";

/** The outcome of a check. */
export interface CheckedCell {
  /** What is wrong; empty if nothing is. */
  readonly diagnostics: readonly CellDiagnostic[];
  /** The cell's module, to be committed once it has run. */
  readonly module: ChainedCell;
}

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
  #server: LanguageServer | undefined;
  #opened = new Set<string>();
  #stopped = false;

  /**
   * Begins with no cells.
   *
   * @param settings Folder, deno.json and program.
   * @param warm Starts the language server now and lets it load its libraries;
   * else the first question starts it. True unless told.
   */
  constructor(settings: LanguageServerSettings, warm = true) {
    this.#settings = settings;
    this.#chain = new CellChain(settings.folder);
    if (warm) this.#warmUp();
  }

  /** Process id of the language server, once it has been started. */
  get pid(): number | undefined {
    return this.#server?.pid;
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
    const diagnostics = await this.#steadily(
      module,
      (server) => diagnose(server, module),
    );
    return { diagnostics, module };
  }

  /** Asks the server; once more where it died over the first question. */
  async #steadily<T>(
    module: ChainedCell,
    ask: (server: LanguageServer) => Promise<T>,
  ): Promise<T> {
    const server = await this.#open(module);
    try {
      return await ask(server);
    } catch (error) {
      if (!server.gone || this.#stopped) throw error;
      return await ask(await this.#open(module));
    }
  }

  /** Makes the module of a cell that is not checked. */
  compose(cell: ParsedCell): ChainedCell {
    return this.#chain.compose(cell);
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
    if (!this.#server) return;
    await this.#open(module);
    this.#close(superfluous);
  }

  /** Takes the new text of files that have changed on disk. */
  async filesChanged(uris: readonly string[]): Promise<void> {
    await this.#server?.filesChanged(uris).catch(() => {});
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
    const method = "textDocument/completion";
    return readCompletions(await this.#ask(source, offset, method), prefix);
  }

  /**
   * Explains the name at a place.
   *
   * @param source Text of the cell.
   * @param offset Place in UTF-16 units.
   * @returns Markdown, or undefined where there is nothing to say.
   */
  async hover(source: string, offset: number): Promise<string | undefined> {
    return readHover(await this.#ask(source, offset, "textDocument/hover"));
  }

  /** Ends the language server. */
  async stop(): Promise<void> {
    this.#stopped = true;
    await this.#server?.stop();
  }

  /** Asks about a place in a text that is opened for this question alone. */
  async #ask(source: string, offset: number, method: string): Promise<unknown> {
    const module = this.#chain.compose(parseCell(source), /* all */ true);
    try {
      return await this.#steadily(module, (server) =>
        server.request(method, {
          textDocument: { uri: module.uri },
          position: positionAt(source, offset),
        }));
    } finally {
      this.#close([module.uri]);
    }
  }

  /** Opens a module, on a server that is started first where there is none. */
  async #open(module: ChainedCell): Promise<LanguageServer> {
    const server = this.#live();
    if (!this.#opened.has(module.uri)) {
      this.#opened.add(module.uri);
      await server.open(module.uri, module.text);
    }
    return server;
  }

  #close(uris: readonly string[]): void {
    for (const uri of uris) {
      if (this.#opened.delete(uri)) this.#server?.close(uri).catch(() => {});
    }
  }

  /** The server; a new one, with all modules, where there is none or it died. */
  #live(): LanguageServer {
    if (this.#stopped) throw new Error("the type checker was stopped");
    if (this.#server && !this.#server.gone) return this.#server;
    const server = new LanguageServer(this.#settings);
    this.#server = server;
    this.#opened.clear();
    for (const module of this.#chain.modules) {
      this.#opened.add(module.uri);
      server.open(module.uri, module.text).catch(() => {});
    }
    return server;
  }

  async #warmUp(): Promise<void> {
    const uri = `${this.#settings.folder}__cell_0.ts`;
    try {
      const server = this.#live();
      await server.open(uri, "\nexport {};");
      await server.request("textDocument/diagnostic", {
        textDocument: { uri },
      });
      await server.close(uri);
    } catch {
      // The first real question will tell.
    }
  }
}
