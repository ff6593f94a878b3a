/**
 * Notebooks run on the project's own kernel, their types checked beside it.
 *
 * @module
 */
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { type CellDiagnostic, placeAt } from "../cells/cell_diagnostic.ts";
import { describeDiagnostic, explain } from "../cells/describe_diagnostic.ts";
import { kernelCommand } from "../kernel/kernel_command.ts";
import {
  mayFetch,
  type PermissionLimits,
} from "../kernel/permission_limits.ts";
import type { Cell, CodeCell, Notebook } from "../notebook/document.ts";
import { cellNumbers } from "../notebook/parameters.ts";
import { chooseKernel } from "../notebook/kernel_choice.ts";
import { runNotebook, type RunOptions } from "../notebook/run_notebook.ts";
import {
  type CellProblem,
  RUN_EXIT_CODES,
  type RunResult,
} from "../notebook/run_result.ts";
import { userCacheFolder } from "../protocol/system.ts";
import { explainUnitMixUp } from "../units/explain_unit_mix_up.ts";
import { fetchPackages } from "./_fetch_packages.ts";
import { ROOT } from "./_root.ts";

const EXPLAINERS = [explainUnitMixUp];

/** How a notebook is run and checked. */
export interface CheckedRunOptions extends RunOptions {
  /**
   * What the notebook's code may do beside reading the project and the
   * runtime's cache; nothing unless told, and anything if `"unlimited"`.
   */
  readonly limits?: PermissionLimits | "unlimited";
  /** False if types are not to be checked; true unless told. */
  readonly check?: boolean;
  /** Takes the sentence that says why types were not checked. */
  readonly onUnchecked?: (why: string) => void;
  /** Folder that remembers passed checks; the user's cache unless told. */
  readonly memory?: string;
}

/**
 * Runs a notebook on the project's own kernel, and checks the types of all its
 * cells at the same time, so that a notebook which has passed before costs no
 * more than its run.
 *
 * A type error makes the run count as failed, even where every cell ran: each
 * is entered with its cell, line and a mark, before what failed in the run, and
 * stands with its cell. With a kernel named by the caller that kernel alone
 * decides what it checks.
 *
 * Before the first cell the code gives away all it was not granted. A kernel
 * named by the caller cannot be limited, and is refused unless the code may do
 * anything.
 *
 * @param notebook What to run; it is not changed.
 * @param options As of `runNotebook`, and whether types are checked.
 * @returns As `runNotebook` does.
 * @throws {RangeError} If a kernel is named and the code is to be limited.
 */
export async function runChecked(
  notebook: Notebook,
  options: CheckedRunOptions = {},
): Promise<RunResult> {
  const { check = true, onUnchecked, memory, limits = {}, ...given } = options;
  if (given.kernel !== undefined) {
    return await runOnNamed(given.kernel, notebook, given, limits);
  }
  if (!check) onUnchecked?.("Cells are not type-checked (--no-check).");
  if (isOffline(limits)) await fetchPackages(given.signal);
  const checking = check
    ? checkTypes(notebook, given.cwd, memory, limits).catch(
      (error: Error) => {
        onUnchecked?.(`Cells are not type-checked: ${error.message}`);
        return undefined;
      },
    )
    : undefined;
  const run = await runNotebook(notebook, {
    ...given,
    kernel: kernelCommand({
      main: join(ROOT, "lib/tasks/kernel.ts"),
      config: join(ROOT, "deno.json"),
      check: false,
      ...(limits === "unlimited" ? {} : { limits }),
    }),
    isChecked: check,
  });
  if (run.status === "stopped" || given.signal?.aborted) return run;
  const found = await checking;
  return found === undefined ? run : withTypeErrors(run, notebook, found);
}

function isOffline(limits: PermissionLimits | "unlimited"): boolean {
  return limits !== "unlimited" && !mayFetch(limits);
}

/** Runs a notebook on the kernel that the caller has named. */
async function runOnNamed(
  kernel: string | readonly string[],
  notebook: Notebook,
  options: RunOptions,
  limits: PermissionLimits | "unlimited",
): Promise<RunResult> {
  if (limits === "unlimited") return await runNotebook(notebook, options);
  const { name } = await chooseKernel(kernel);
  throw new RangeError(
    `Cannot run the notebook on kernel "${name}" as what its code may do cannot be limited there: add --allow-all if you trust the notebook with all that you may do yourself, or leave --kernel out`,
  );
}

/** What is wrong with each cell of a notebook, by its id. */
type Found = ReadonlyMap<string, readonly CellDiagnostic[]>;

const isCode = (cell: Cell): cell is CodeCell => cell.cell_type === "code";

async function checkTypes(
  { cells }: Notebook,
  cwd = Deno.cwd(),
  memory = join(userCacheFolder(), "checks"),
  limits: PermissionLimits | "unlimited",
): Promise<Found> {
  // With it comes the compiler, which a run without a check need not load.
  const { checkCellsOnce } = await import("../cells/check_cells_once.ts");
  const code = cells.filter(isCode);
  if (limits !== "unlimited" && limits.read !== true) {
    await refuseOwnFiles(code);
  }
  const found = await checkCellsOnce(code.map(({ source }) => source), {
    folder: pathToFileURL(resolve(cwd) + "/").href,
    config: join(ROOT, "deno.json"),
    isOffline: isOffline(limits),
  }, {
    folder: memory,
    dependsOn: [join(ROOT, "lib"), join(ROOT, "deno.lock")],
  });
  return new Map(code.map(({ id }, index) => [id, found[index]]));
}

/** A check reads with all rights what a cell names, and quotes it. */
async function refuseOwnFiles(cells: readonly CodeCell[]): Promise<void> {
  const { ownFileOf } = await import("../cells/own_file_of.ts");
  for (const { source } of cells) {
    const own = ownFileOf(source);
    if (own === undefined) continue;
    throw new Error(
      `the notebook takes in “${own}”, which a check would read without limits (--allow-read lets it)`,
    );
  }
}

/** Enters type errors before what failed in the run, and with their cells. */
function withTypeErrors(
  run: RunResult,
  { cells }: Notebook,
  found: Found,
): RunResult {
  const numbers = cellNumbers(cells);
  const problems: CellProblem[] = [];
  const sentences: string[] = [];
  const lines = new Map<string, string[]>();
  for (const [index, { id, source }] of cells.entries()) {
    for (const one of found.get(id) ?? []) {
      const [cell, name] = [numbers[index], `cell ${numbers[index]}`];
      const { line } = placeAt(source, one.start);
      const text = describeDiagnostic(one, source, name, EXPLAINERS);
      const words = explain(one, EXPLAINERS) ?? one.message.split("\n")[0];
      problems.push({ cell, id, line, kind: "type", message: text.join("\n") });
      sentences.push(`${name}, line ${line}: ${words}`);
      lines.set(id, [...lines.get(id) ?? [], ...text]);
    }
  }
  const [first] = sentences;
  if (first === undefined) return run;
  const status = run.status === "complete" ? "failed" : run.status;
  const more = sentences.length - 1;
  return {
    status,
    exitCode: RUN_EXIT_CODES[status],
    problems: [...problems, ...run.problems],
    incomplete: more > 0 ? `${first} (and ${more} more)` : first,
    notebook: {
      ...run.notebook,
      cells: run.notebook.cells.map((cell) => {
        const traceback = lines.get(cell.id);
        if (traceback === undefined || !isCode(cell)) return cell;
        const [evalue] = traceback;
        return {
          ...cell,
          outputs: [...cell.outputs, {
            output_type: "error",
            ename: "TypeCheckError",
            evalue,
            traceback,
          }],
        };
      }),
    },
  };
}
