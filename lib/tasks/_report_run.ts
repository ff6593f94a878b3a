/**
 * One folder to one report: run the notebook, write page, notebook and results.
 *
 * @module
 */
import { ringName } from "../records/ring_name.ts";
import { basename, dirname, join, resolve } from "node:path";
import {
  joinLimits,
  type PermissionLimits,
} from "../kernel/permission_limits.ts";
import {
  cellTags,
  type JsonObject,
  type Notebook,
} from "../notebook/document.ts";
import { exportHtml } from "../notebook/export_html.ts";
import { formatNotebook } from "../notebook/format_notebook.ts";
import { readNotebook } from "../notebook/read_notebook.ts";
import type { RunProgress, RunResult } from "../notebook/run_result.ts";
import { expectWritable } from "../files/expect_writable.ts";
import { writeAllAtomically } from "../files/write_atomically.ts";
import { wordsIn } from "../narrative/glossary.ts";
import { RESULTS_TYPE } from "../narrative/show.ts";
import { VERSION } from "../version.ts";
import { runChecked } from "./_own_kernel.ts";
import { ROOT } from "./_root.ts";
import { settingsFiles } from "./_settings_files.ts";

/** What a finished report is. */
export interface ReportFiles {
  /** Path of the page. */
  readonly page: string;
  /** The answer, sentence by sentence; empty when the notebook gave none. */
  readonly answer: readonly string[];
  /** The piece's own name, where the notebook gave it. */
  readonly name?: string;
  /** Which session, when and how much of it; empty when the notebook gave none. */
  readonly about: string;
  /** How the run ended. */
  readonly run: RunResult;
  /** False when it was stopped before anything was written. */
  readonly written: boolean;
}

/** Which notebook makes a report, and what its files are called. */
export interface ReportKind {
  /** Name of the notebook in `notebooks/`, without its ending. */
  readonly notebook: string;
  /** Start of the names of the files it makes. */
  readonly file: string;
  /** Name of the file of results. */
  readonly results: string;
  /** What its page is about, in a line under the title. */
  readonly about?: string;
  /** True when the results may hold a sheet to fill in, kept as `plan.csv`. */
  readonly hasPlan?: boolean;
  /** Parameters of the notebook besides `folder`. */
  readonly parameters?: Readonly<Record<string, string | number>>;
  /** Other folders that it reads. */
  readonly folders?: readonly string[];
}

/** The report of the last session of a piece. */
export const SESSION_REPORT: ReportKind = {
  notebook: "session",
  file: "session",
  results: "results.json",
};

/** How a report is made. */
export interface ReportSettings {
  /** Which report; that of the session unless told. */
  readonly kind?: ReportKind;
  /** Kernel to run on; the project's own unless told. */
  readonly kernel?: string;
  /** False if the notebook's types are not to be checked. */
  readonly check?: boolean;
  /** Takes the sentence that says why types were not checked. */
  readonly onUnchecked?: (why: string) => void;
  /** Path of a notebook to run in place of the project's own. */
  readonly notebook?: string;
  /**
   * What the notebook may do beside reading the folders it is given, the
   * project and the runtime's cache; anything if `"unlimited"`.
   */
  readonly limits?: PermissionLimits | "unlimited";
  /** Told how far the run is. */
  readonly onProgress?: (progress: RunProgress) => void;
  /** Ends the run when aborted. */
  readonly signal?: AbortSignal;
}

/**
 * Runs a notebook on a folder and writes `report/` in it: the page, the
 * notebook as run and the results, all of them or none.
 *
 * A run that did not end well writes a page that says so in its first line, in
 * place of any older one, and no results. A run that was stopped writes
 * nothing: an older report stays as it was.
 *
 * @param folder The piece's folder.
 * @param settings Kernel, progress, abort.
 * @returns Where the page is, the answer, and how the run ended.
 */
export async function reportOn(
  folder: string,
  settings: ReportSettings = {},
): Promise<ReportFiles> {
  const { kernel, check, onUnchecked, onProgress, signal } = settings;
  const { kind = SESSION_REPORT, limits = {} } = settings;
  const out = join(folder, "report");
  await expectWritable(out, "the report");
  const { notebook = join(ROOT, "notebooks", `${kind.notebook}.ipynb`) } =
    settings;
  const template = await readNotebook(notebook);
  const run = await runChecked(withoutOutputs(template.notebook), {
    cwd: dirname(resolve(notebook)),
    limits: limits === "unlimited" ? limits : joinLimits(limits, {
      read: [
        folder,
        ...kind.folders ?? [],
        ...await settingsFiles(folder),
      ].map((one) => resolve(one)),
    }),
    parameters: { folder: resolve(folder), ...kind.parameters },
    ...(kernel === undefined ? {} : { kernel }),
    ...(check === undefined ? {} : { check }),
    ...(onUnchecked === undefined ? {} : { onUnchecked }),
    ...(onProgress === undefined ? {} : { onProgress }),
    ...(signal === undefined ? {} : { signal }),
  });
  // A signal ends the kernel as well, and its end may be noticed first.
  if (run.status === "kernel-ended") {
    await new Promise((done) => setTimeout(done, 100));
  }
  if (run.status === "stopped" || signal?.aborted) {
    // Whatever report stood there is whole, and stays.
    return {
      page: join(out, `${kind.file}.html`),
      answer: [],
      about: "",
      run,
      written: false,
    };
  }
  const results = resultsOf(run.notebook);
  const piece = results?.piece as JsonObject | undefined;
  const shown = withoutResults(run.notebook);
  const name = typeof piece?.name === "string" ? piece.name : undefined;
  const about = subtitleOf(results);
  const html = await exportHtml(shown, {
    title: name ?? basename(folder),
    subtitle: about || kind.about || "",
    footer: `Made by sagbook ${VERSION} from ${basename(resolve(folder))}.`,
    layout: "reader",
    words: wordsIn,
    ...(run.incomplete === undefined ? {} : { incomplete: run.incomplete }),
  });
  const page = join(out, `${kind.file}.html`);
  const { sheet_csv: sheet, ...figures } = results ?? {};
  const good = run.exitCode === 0 && results !== undefined;
  const plan = good && typeof sheet === "string" ? sheet : undefined;
  await writeAllAtomically([
    { path: page, content: html },
    {
      path: join(out, `${kind.file}.ipynb`),
      content: formatNotebook(run.notebook),
    },
    {
      path: join(out, kind.results),
      content: good ? JSON.stringify(figures, null, 2) + "\n" : undefined,
    },
    ...(kind.hasPlan ? [{ path: join(out, "plan.csv"), content: plan }] : []),
  ]);
  const answer = Array.isArray(results?.answer)
    ? results.answer.map(String)
    : [];
  return {
    page,
    answer,
    ...(name === undefined ? {} : { name }),
    about,
    run,
    written: true,
  };
}

/** The notebook as it would be before its first run. */
function withoutOutputs(notebook: Notebook): Notebook {
  return {
    ...notebook,
    cells: notebook.cells.map((cell) =>
      cell.cell_type === "code"
        ? { ...cell, outputs: [], execution_count: null }
        : cell
    ),
  };
}

/** The results that the notebook handed over with its answer. */
function resultsOf(notebook: Notebook): JsonObject | undefined {
  for (const cell of notebook.cells) {
    if (cell.cell_type !== "code") continue;
    for (const output of cell.outputs) {
      if (!("data" in output)) continue;
      const found = output.data[RESULTS_TYPE];
      if (typeof found === "object" && found !== null) {
        return found as JsonObject;
      }
    }
  }
  return undefined;
}

/** The page needs no second copy of the results. */
function withoutResults(notebook: Notebook): Notebook {
  return {
    ...notebook,
    cells: notebook.cells.map((cell) =>
      cell.cell_type !== "code" || cellTags(cell).includes("remove-output")
        ? cell
        : {
          ...cell,
          outputs: cell.outputs.map((output) => {
            if (!("data" in output) || !(RESULTS_TYPE in output.data)) {
              return output;
            }
            const { [RESULTS_TYPE]: _, ...data } = output.data;
            return { ...output, data };
          }),
        }
    ),
  };
}

/** Which session results are about, when it was and how much of it. */
export function subtitleOf(results: JsonObject | undefined): string {
  const session = results?.session as JsonObject | undefined;
  if (!session) return "";
  const date = typeof session.taken_at === "string"
    ? `, ${session.taken_at.slice(0, 10)}`
    : "";
  const sets = session.sets === 1 ? "1 set" : `${session.sets} sets`;
  return `Session ${session.session}${date}: ${sets} with ${
    ringName(String(session.ring))
  }`;
}
