/**
 * Notebook to page, here with the project's own kernel and by
 * `jupyter nbconvert --execute --to html` with Deno's own, side by side in one
 * run. The ratios of the medians are printed: at most 0.5 with types checked as
 * shipped (a check that has passed is remembered; the first takes seconds more
 * and is printed beside), at most 0.4 with `--no-check`.
 *
 * Run with `deno run -A tests/benchmarks/notebook_to_html_bench.ts`, or as one
 * of `deno bench`.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import type { CodeCell, Notebook } from "sagbook/notebook/mod.ts";
import { writeRuntimeKernel } from "../jupyter/_runtime_kernel.ts";

const RUNS = 7;

const cell = (source: string, index: number): CodeCell => ({
  cell_type: "code",
  id: `c${index}`,
  metadata: {},
  source,
  execution_count: null,
  outputs: [],
});

const NOTEBOOK: Notebook = {
  metadata: {
    kernelspec: { name: "deno", display_name: "Deno", language: "typescript" },
    language_info: { name: "typescript" },
  },
  cells: [
    {
      cell_type: "markdown",
      id: "m",
      metadata: {},
      source:
        "# Blank 7\n\n$R = \\frac{r^2 + s^2}{2s} + b$\n\n| zone | R / mm |\n|---|---:|\n| centre | 2520 |",
    },
    ...[
      "const r = 60, b = 3;",
      "const sags = [0.715, 0.716, 0.714];\nsags.map((s) => (r * r + s * s) / (2 * s) + b)",
      "for (const s of sags) console.log(s);",
      'await Deno.jupyter.display({ "image/svg+xml": \'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><circle r="4"/></svg>\' }, { raw: true });',
      'Deno.jupyter.html`<table><tr><th scope="col">R</th></tr><tr><td>2520</td></tr></table>`',
    ].map(cell),
  ],
};

const median = (values: number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

async function seconds(
  program: string,
  args: string[],
  env: Record<string, string>,
): Promise<number> {
  const start = performance.now();
  const { success, stderr } = await new Deno.Command(program, {
    args,
    env,
    stdout: "null",
    stderr: "piped",
  }).output();
  if (!success) throw new Error(new TextDecoder().decode(stderr));
  return (performance.now() - start) / 1000;
}

/** Measures both by turns, each in a fresh process, and prints the ratio. */
async function compare(): Promise<void> {
  const { writeNotebook } = await import("sagbook/notebook/write_notebook.ts");
  const folder = await Deno.makeTempDir();
  await writeRuntimeKernel(folder);
  const path = `${folder}/given.ipynb`;
  await writeNotebook(path, NOTEBOOK);
  const env = { JUPYTER_PATH: folder };
  const ours = (...flags: string[]) =>
    seconds(Deno.execPath(), [
      "run",
      "-A",
      fileURLToPath(import.meta.resolve("./_notebook_to_html.ts")),
      path,
      `${folder}/ours.html`,
      ...flags,
    ], env);
  const theirs = () =>
    seconds("jupyter", [
      "nbconvert",
      "--execute",
      "--to",
      "html",
      "--output",
      "theirs.html",
      path,
    ], env);
  const first = await ours();
  await theirs();
  const times: [number[], number[], number[]] = [[], [], []];
  for (let i = 0; i < RUNS; i++) {
    times[0].push(await ours());
    times[1].push(await ours("--no-check"));
    times[2].push(await theirs());
  }
  const [own, loose, peer] = times.map(median);
  const bytes = async (name: string) =>
    Math.round((await Deno.stat(`${folder}/${name}`)).size / 1000);
  console.log(
    [
      `notebook to page, median of ${RUNS}`,
      `ours, checked: ${own.toFixed(2)} s (${await bytes("ours.html")} kB)`,
      `ours, checked for the first time: ${first.toFixed(2)} s (one run)`,
      `ours with --no-check: ${loose.toFixed(2)} s`,
      `jupyter nbconvert: ${peer.toFixed(2)} s (${await bytes(
        "theirs.html",
      )} kB)`,
      `ratio checked: ${(own / peer).toFixed(2)} (at most 0.5)`,
      `ratio with --no-check: ${(loose / peer).toFixed(2)} (at most 0.4)`,
    ].join("\n"),
  );
  await Deno.remove(folder, { recursive: true });
}

if (import.meta.main) await compare();
else {
  const { runNotebook } = await import("sagbook/notebook/run_notebook.ts");
  const { exportHtml } = await import("sagbook/notebook/export_html.ts");
  const executed = (await runNotebook(NOTEBOOK)).notebook;
  Deno.bench("runNotebook() of five cells", { n: 20, warmup: 2 }, async () => {
    await runNotebook(NOTEBOOK);
  });
  Deno.bench("exportHtml() of five cells", { n: 20, warmup: 2 }, async () => {
    await exportHtml(executed);
  });
}
