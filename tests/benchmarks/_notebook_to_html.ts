/**
 * Runs a notebook as the tasks do and writes its page:
 * `NOTEBOOK.ipynb PAGE.html [--no-check]`. Checks are remembered beside the page.
 *
 * @module
 */
import { exportHtml } from "sagbook/notebook/export_html.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";
import { writeAtomically } from "sagbook/files/write_atomically.ts";
import { runChecked } from "sagbook/tasks/_own_kernel.ts";

const [path, page, flag] = Deno.args;
const { notebook } = await readNotebook(path);
const run = await runChecked(notebook, {
  check: flag !== "--no-check",
  memory: `${page}.checks`,
});
await writeAtomically(page, await exportHtml(run.notebook));
Deno.exit(run.exitCode);
