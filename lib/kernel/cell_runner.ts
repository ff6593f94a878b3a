/**
 * The way of a cell from its text to its outcome.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import type { ChainedCell } from "../cells/cell_chain.ts";
import type { JsonObject } from "../protocol/message.ts";
import { CellChecker } from "../cells/cell_checker.ts";
import type { CellDiagnostic, Explainer } from "../cells/cell_diagnostic.ts";
import { parseCell, type ParsedCell } from "../cells/parse_cell.ts";
import { rewriteCell } from "../cells/rewrite_cell.ts";
import { INTERRUPTED, lostError, refusal } from "./_cell_errors.ts";
import { rewriteExpressions } from "./_rewrite_expressions.ts";
import { ImportedFiles } from "./_imported_files.ts";
import {
  type ShownError,
  trace,
  tracedBundle,
  tracedOutput,
  type TracedRun,
} from "./_trace.ts";
import type { CellRequest, CellResult } from "./cell_result.ts";
import type { Evaluator, ThrownError } from "./evaluator.ts";

/** Settings of the way. */
export interface CellRunnerSettings {
  /** Folder of the notebook as a file URL, ending in a slash. */
  readonly folder: string;
  /** The deno.json under which modules are found. */
  readonly config?: string;
  /** Whether cells are type-checked. */
  readonly check: boolean;
  /** True if the checker must not fetch what cells name; false unless told. */
  readonly isOffline?: boolean;
  /** Put complaints into words. */
  readonly explainers: readonly Explainer[];
  /** Runs the code. */
  readonly evaluator: Evaluator;
}

const REMEMBERED = 10_000;

/** Reads, checks, rewrites and runs cells, and traces their errors back. */
export class CellRunner {
  #settings: CellRunnerSettings;
  #checker: CellChecker;
  #files: ImportedFiles;
  #runs = new Map<number, TracedRun>();
  readonly #find = (id: number) => this.#runs.get(id);
  #saidUnchecked = false;
  #stopped = false;

  /** Starts the checker, unless cells are not checked. */
  constructor(settings: CellRunnerSettings) {
    this.#settings = settings;
    const { folder, config, check, isOffline } = settings;
    this.#checker = new CellChecker({ folder, config, isOffline }, check);
    this.#files = new ImportedFiles(folder);
  }

  /** The checker, for completion and hover. */
  get checker(): CellChecker {
    return this.#checker;
  }

  /**
   * Runs a cell.
   *
   * @param request Its text and name.
   * @param stopped Kept when the cell is interrupted before it runs.
   * @returns What became of it; never rejects.
   */
  async run(
    request: CellRequest,
    stopped: Promise<void>,
  ): Promise<CellResult> {
    const { source, name } = request;
    const { explainers } = this.#settings;
    const cell = parseCell(source);
    if (cell.problems.length > 0) {
      return failed(
        refusal("SyntaxError", source, cell.problems, name, explainers),
      );
    }
    await this.#tellChanges(cell, request);
    const checked = await Promise.race([
      this.#check(cell, request),
      stopped.then(() => "stopped" as const),
    ]);
    if (checked === "stopped") return failed(INTERRUPTED);
    if (checked.diagnostics.length > 0) {
      if (checked.module) this.#checker.discard(checked.module);
      return failed(
        refusal(
          "TypeCheckError",
          source,
          checked.diagnostics,
          name,
          explainers,
        ),
      );
    }
    return await this.#evaluate(request, cell, checked.module);
  }

  /** An error that no cell waited for, as a notebook shows it. */
  traceUncaught(error: ThrownError, cell: number | undefined): ShownError {
    const name = cell === undefined
      ? "an earlier cell"
      : this.#runs.get(cell)?.name ?? "an earlier cell";
    const shown = this.#trace(error);
    return {
      ename: shown.ename,
      evalue: `${shown.evalue} (not caught in ${name}: nothing awaited it)`,
      traceback: [
        ...shown.traceback,
        `Not caught in ${name}: nothing awaited the promise or timer that failed.`,
      ],
    };
  }

  /** An output as a notebook shows it: stacks lead to the cells' own lines. */
  traceOutput(content: JsonObject): JsonObject {
    return tracedOutput(content, this.#find);
  }

  /** Forgets all names, after the variables were lost. */
  reset(): void {
    this.#files.reset();
    this.#checker.reset();
  }

  /** Ends the checker. */
  async stop(): Promise<void> {
    this.#stopped = true;
    await this.#checker.stop();
  }

  /** The runtime keeps a module as it first read it; that must be said. */
  async #tellChanges(cell: ParsedCell, { say }: CellRequest): Promise<void> {
    const changed = await this.#files.changed(cell.imports);
    if (changed.length === 0) return;
    await this.#checker.filesChanged(changed);
    for (const url of changed) {
      say(
        `${
          fileURLToPath(url)
        } has changed since it was first imported: the kernel keeps the old text until it is restarted.\n`,
      );
    }
  }

  async #check(
    cell: ParsedCell,
    { say }: CellRequest,
  ): Promise<{ diagnostics: readonly CellDiagnostic[]; module?: ChainedCell }> {
    const { check } = this.#settings;
    if (cell.unchecked) {
      say("This cell is not type-checked (// @ts-nocheck).\n");
    } else if (!check && !this.#saidUnchecked) {
      this.#saidUnchecked = true;
      say("Cells are not type-checked (--no-check).\n");
    }
    if (!check) return { diagnostics: [], module: this.checker.compose(cell) };
    const slow = setTimeout(
      () => say("Waiting for the type checker …\n"),
      5_000,
    );
    try {
      const checked = await this.checker.check(cell);
      return cell.unchecked ? { ...checked, diagnostics: [] } : checked;
    } catch (error) {
      if (!this.#stopped) {
        say(
          `This cell is not type-checked: ${
            error instanceof Error ? error.message : error
          }.\n`,
        );
      }
      return { diagnostics: [] };
    } finally {
      clearTimeout(slow);
    }
  }

  async #evaluate(
    request: CellRequest,
    cell: ParsedCell,
    module: ChainedCell | undefined,
  ): Promise<CellResult> {
    const { id, name, source } = request;
    const code = rewriteCell(cell);
    this.#runs.set(id, { name, source, code });
    if (this.#runs.size > REMEMBERED) {
      this.#runs.delete(this.#runs.keys().next().value!);
    }
    const { expressions, refused } = rewriteExpressions(request.expressions);
    const outcome = await this.#settings.evaluator.run({
      id,
      code: code.code,
      expressions,
    });
    if (outcome.status === "lost") {
      this.reset();
      return failed(lostError(outcome.reason));
    }
    if (module) {
      await this.#checker.commit(module, new Set(outcome.assigned))
        .catch(() => {});
    }
    const values: Record<string, Record<string, unknown>> = { ...refused };
    for (const [key, value] of Object.entries(outcome.expressions)) {
      values[key] = value.status === "ok"
        ? { status: "ok", data: value.data, metadata: {} }
        : { status: "error", ...this.#trace(value.error) };
    }
    switch (outcome.status) {
      case "ok":
        return {
          status: "ok",
          data: outcome.data && tracedBundle(outcome.data, this.#find),
          pages: outcome.pages,
          expressions: values,
        };
      case "interrupted":
        return failed(INTERRUPTED);
      case "error":
        return failed(this.#trace(outcome.error));
    }
  }

  #trace(error: ThrownError): ShownError {
    return trace(error, this.#find);
  }
}

function failed(error: ShownError): CellResult {
  return { status: "error", error, expressions: {} };
}
