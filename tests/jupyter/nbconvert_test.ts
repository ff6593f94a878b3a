import { deepEqual, equal } from "node:assert/strict";
import { fileURLToPath } from "node:url";
import type { CodeCell, Notebook } from "sagbook/notebook/document.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";
import { runNotebook } from "sagbook/notebook/run_notebook.ts";
import { writeNotebook } from "sagbook/notebook/write_notebook.ts";
import { kernelCommand } from "sagbook/kernel/kernel_command.ts";
import { testWith } from "../browser/_needs.ts";
import { installBoth } from "./_kernels.ts";

const path = (name: string) =>
  fileURLToPath(new URL(`../../${name}`, import.meta.url));

const SOURCES = [
  "const r: number = 60; let count = 0;",
  "const sags = [0.715, 0.716];\nsags.map((s) => (r * r + s * s) / (2 * s))",
  "for (const s of sags) console.log(s);\nconsole.error('to the other stream'); console.log('again'); count++;",
  "await Deno.jupyter.display({ 'text/html': '<b>R</b>' }, { raw: true });\nDeno.jupyter.md`*R*`",
  "import { inches, millimetres } from 'sagbook/units/length.ts';\nmillimetres(25.4) / inches(1)",
  "\nthrow new RangeError('sag below 0')",
  "const wrong: string = r;",
  "console.log('ö ≈ 🔭'.repeat(3)); count",
];

const NOTEBOOK: Notebook = {
  metadata: {
    kernelspec: { name: "sagbook", display_name: "", language: "typescript" },
  },
  cells: SOURCES.map((source, index): CodeCell => ({
    cell_type: "code",
    id: `c${index}`,
    metadata: /throw|wrong/.test(source) ? { tags: ["raises-exception"] } : {},
    source,
    execution_count: null,
    outputs: [],
  })),
};

/** Outputs as they matter: counts, kinds and content. */
function outputsOf(notebook: Notebook): unknown[] {
  return notebook.cells.map((cell) =>
    cell.cell_type === "code" && [cell.execution_count, cell.outputs]
  );
}

testWith(
  "jupyter",
  "nbconvert and runNotebook() give equal outputs for one notebook on this kernel",
  async () => {
    const { folder, env } = await installBoth();
    await writeNotebook(`${folder}/given.ipynb`, NOTEBOOK);
    const { code, stderr } = await new Deno.Command("jupyter", {
      args: [
        ...["nbconvert", "--execute", "--to", "notebook"],
        ...["--output", "theirs.ipynb", `${folder}/given.ipynb`],
      ],
      cwd: folder,
      env,
    }).output();
    equal(code, 0, new TextDecoder().decode(stderr).slice(-3_000));
    const theirs = (await readNotebook(`${folder}/theirs.ipynb`)).notebook;
    const { notebook, status } = await runNotebook(NOTEBOOK, {
      kernel: kernelCommand({
        main: path("lib/tasks/kernel.ts"),
        config: path("deno.json"),
      }),
      cwd: folder,
    });
    equal(status, "complete");
    const expected = outputsOf(theirs);
    for (const [at, own] of outputsOf(notebook).entries()) {
      deepEqual(own, expected[at]);
    }
    await Deno.remove(folder, { recursive: true });
  },
);
