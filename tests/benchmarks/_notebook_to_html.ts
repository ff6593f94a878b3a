/**
 * Runs a notebook and writes its page: `NOTEBOOK.ipynb PAGE.html`.
 *
 * @module
 */
import { exportHtml } from "sagbook/notebook/export_html.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";
import { runNotebook } from "sagbook/notebook/run_notebook.ts";
import { writeTextAtomically } from "sagbook/notebook/write_text_atomically.ts";

const [path, page] = Deno.args;
const { notebook } = await readNotebook(path);
const run = await runNotebook(notebook);
await writeTextAtomically(page, await exportHtml(run.notebook));
Deno.exit(run.exitCode);
