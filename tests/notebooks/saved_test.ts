import { deepEqual, equal } from "node:assert/strict";
import type { Notebook } from "sagbook/notebook/document.ts";
import { formatNotebook } from "sagbook/notebook/format_notebook.ts";
import { parseNotebook } from "sagbook/notebook/parse_notebook.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";
import { runChecked } from "sagbook/tasks/_own_kernel.ts";
import { ROOT } from "../tasks/_run_task.ts";

const names = [...Deno.readDirSync(`${ROOT}notebooks`)]
  .map(({ name }) => name)
  .filter((name) => name.endsWith(".ipynb"))
  .sort();

/** Numbers to five figures, so that another processor's last bit is no change. */
function rounded(text: string): string {
  return text.replace(
    /-?\d+\.\d{4,}(?:e[+-]?\d+)?/g,
    (number) => String(Number(Number(number).toPrecision(5))),
  );
}

/** Ids made from content change with its last bit: number them in order. */
function renumbered(text: string): string {
  const seen = new Map<string, number>();
  return text.replace(/\b[a-z]+-[0-9a-z]{6,12}(?=-)/g, (id) => {
    if (!seen.has(id)) seen.set(id, seen.size);
    return `id${seen.get(id)}`;
  });
}

function outputs(notebook: Notebook): string[] {
  return notebook.cells.map((cell) =>
    cell.cell_type === "code"
      ? renumbered(rounded(JSON.stringify(cell.outputs)))
      : ""
  );
}

for (const name of names) {
  Deno.test(`${name} gives the outputs it was saved with`, async () => {
    const folder = `${ROOT}notebooks`;
    const { notebook } = await readNotebook(`${folder}/${name}`);
    const run = await runChecked(notebook, { cwd: folder });
    equal(
      run.status,
      "complete",
      run.problems.map((p) => p.message).join("\n"),
    );
    // Writing sorts keys, so both are compared as a file would hold them.
    const written = await parseNotebook(formatNotebook(run.notebook), name);
    const [saved, fresh] = [outputs(notebook), outputs(written.notebook)];
    for (const [index, { id }] of notebook.cells.entries()) {
      if (fresh[index] === saved[index]) continue;
      deepEqual(
        fresh[index].slice(0, 2000),
        saved[index].slice(0, 2000),
        `cell ${id} of ${name} changed; if that is right, run deno task goldens`,
      );
    }
  });
}
