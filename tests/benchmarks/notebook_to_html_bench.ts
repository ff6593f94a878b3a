/**
 * Notebook to page, with the project's own kernel and by
 * `jupyter nbconvert --execute --to html` with Deno's own.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import type {
  BenchReport,
  BenchRow,
  GrowthPoint,
} from "sagbook/tasks/_benchmark.ts";
import type { CodeCell, Notebook } from "sagbook/notebook/mod.ts";
import { writeNotebook } from "sagbook/notebook/write_notebook.ts";
import { writeRuntimeKernel } from "../jupyter/_runtime_kernel.ts";
import { benchProgram, type BenchSize } from "./_program.ts";
import { median } from "./_side_by_side.ts";
import { versionOf } from "./_version_of.ts";
import { wholeProgram, type WholeRun } from "./_whole_program.ts";

const HEADING =
  "# Blank 7\n\n$R = \\frac{r^2 + s^2}{2s} + b$\n\n| zone | R / mm |\n|---|---:|\n| centre | 2520 |";
const SOURCES = [
  "const r = 60, b = 3;",
  "const sags = [0.715, 0.716, 0.714];\nsags.map((s) => (r * r + s * s) / (2 * s) + b)",
  "for (const s of sags) console.log(s);",
  'await Deno.jupyter.display({ "image/svg+xml": \'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><circle r="4"/></svg>\' }, { raw: true });',
  'Deno.jupyter.html`<table><tr><th scope="col">R</th></tr><tr><td>2520</td></tr></table>`',
];

/** Cells of the notebook that the limits are about. */
const SHORT = 5;

/** A notebook of `count` code cells: the five again and again. */
function notebookOf(count: number): Notebook {
  const cells = Array.from({ length: count }, (_, k): CodeCell => ({
    cell_type: "code",
    id: `c${k}`,
    metadata: {},
    // What is declared once is used by all cells below.
    source: k < 5 ? SOURCES[k] : SOURCES[2 + k % 3],
    execution_count: null,
    outputs: [],
  }));
  return {
    metadata: {
      kernelspec: {
        name: "deno",
        display_name: "Deno",
        language: "typescript",
      },
      language_info: { name: "typescript" },
    },
    cells: [
      { cell_type: "markdown", id: "m", metadata: {}, source: HEADING },
      ...cells,
    ],
  };
}

/** Runs of one way, as they come by turns. */
class Way {
  readonly runs: WholeRun[] = [];

  get ms(): number {
    return median(this.runs.map(({ ms }) => ms));
  }

  get peak(): number {
    return Math.max(...this.runs.map(({ peak }) => peak));
  }
}

/** One size: ours checked and not, nbconvert, and ours for the first time. */
async function measure(
  folder: string,
  cells: number,
  runs: number,
  isTiny: boolean,
) {
  const path = `${folder}/${cells}.ipynb`;
  await writeNotebook(path, notebookOf(cells));
  const env = { JUPYTER_PATH: folder };
  const script = fileURLToPath(import.meta.resolve("./_notebook_to_html.ts"));
  const page = `${folder}/ours-${cells}.html`;
  const ours = (...flags: string[]) =>
    wholeProgram([Deno.execPath(), "run", "-A", script, path, page, ...flags]);
  const theirs = async (): Promise<WholeRun | undefined> => {
    try {
      // deno-fmt-ignore
      return await wholeProgram(["jupyter", "nbconvert", "--execute", "--to", "html", "--output", `theirs-${cells}.html`, path], env);
    } catch (error) {
      if (error instanceof Deno.errors.NotFound) return undefined;
      throw error;
    }
  };
  const first = await ours();
  const [checked, loose, peer] = [new Way(), new Way(), new Way()];
  for (let run = 0; run < runs; run++) {
    checked.runs.push(isTiny ? first : await ours());
    loose.runs.push(await ours("--no-check"));
    const one = await theirs();
    if (one !== undefined) peer.runs.push(one);
  }
  console.error(`notebook to page: ${cells} cells`);
  const hasPeer = peer.runs.length === runs;
  const kilobytes = async (name: string): Promise<string> =>
    `${Math.round((await Deno.stat(`${folder}/${name}`)).size / 1000)} kB`;
  const pages = hasPeer
    ? `${await kilobytes(`ours-${cells}.html`)} / ${await kilobytes(
      `theirs-${cells}.html`,
    )}`
    : await kilobytes(`ours-${cells}.html`);
  const point = ({ ms, peak }: WholeRun): GrowthPoint => ({
    n: cells,
    ours: ms,
    ourMemory: peak,
    ...(hasPeer ? { peer: peer.ms, peerMemory: peer.peak } : {}),
  });
  const [once, again, never] = [first, checked, loose].map(point);
  return { cells, once, checked: again, loose: never, pages };
}

async function run(size: BenchSize): Promise<BenchReport> {
  const isTiny = size === "tiny";
  const folder = await Deno.makeTempDir({ prefix: "to-html-" });
  try {
    await writeRuntimeKernel(folder);
    const version = await versionOf("jupyter", "nbconvert", "--version");
    const found: Awaited<ReturnType<typeof measure>>[] = [];
    for (const cells of isTiny ? [SHORT] : [2, SHORT, 20, 200]) {
      const runs = isTiny || cells === 200 ? 1 : cells === SHORT ? 7 : 3;
      found.push(await measure(folder, cells, runs, isTiny));
    }
    const row = (
      what: string,
      point: GrowthPoint,
      limit?: BenchRow["limit"],
      growth?: GrowthPoint[],
    ): BenchRow => ({
      what,
      ours: point.ours,
      peer: {
        name: "nbconvert with Deno's kernel",
        ...(version === undefined ? {} : { version }),
        ...(point.peer === undefined
          ? { missing: "jupyter nbconvert" }
          : { value: point.peer }),
      },
      memory: { ours: point.ourMemory, peer: point.peerMemory },
      ...(growth === undefined ? {} : { growth, grows: "cells" }),
      ...(limit === undefined ? {} : { limit }),
    });
    const short = found.find(({ cells }) => cells === SHORT)!;
    const last = found[found.length - 1];
    const all = (key: "once" | "checked" | "loose") =>
      found.filter(({ cells }) => isTiny || cells !== SHORT)
        .map((one) => one[key]);
    return {
      title: "Notebook to page",
      about:
        "From an .ipynb file to an HTML page, each a whole program from its start to its end: markdown with mathematics and a table, then code cells that print, show a value or a picture. A check that has passed is remembered; the first one is told apart. The memory counts shared pages once for each process. nbconvert does not check types.",
      rows: [
        row("Notebook of 5 cells to page, types checked", short.checked, {
          of: "ratio",
          atMost: 0.5,
        }),
        row("Notebook of 5 cells to page, --no-check", short.loose, {
          of: "ratio",
          atMost: 0.4,
        }),
        row(
          "Notebook of 200 cells to page, types checked",
          last.checked,
          undefined,
          all("checked"),
        ),
        row(
          "Notebook of 200 cells to page, --no-check",
          last.loose,
          undefined,
          all("loose"),
        ),
        row(
          "Notebook of 200 cells to page, checked for the first time",
          last.once,
          undefined,
          all("once"),
        ),
      ],
      details: [
        "| cells | checked for the first time, s (one run) | page, ours / nbconvert |",
        "| ---: | ---: | ---: |",
        ...found.map(({ cells, once, pages }) =>
          `| ${cells} | ${(once.ours / 1000).toFixed(2)} | ${pages} |`
        ),
      ].join("\n"),
    };
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

if (import.meta.main) await benchProgram({ run });
