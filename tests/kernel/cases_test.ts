import { deepEqual, equal, match, ok } from "node:assert/strict";
import { fileURLToPath } from "node:url";
import type { CodeCell, Notebook } from "sagbook/notebook/document.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";
import { runNotebook } from "sagbook/notebook/run_notebook.ts";
import { inFolder } from "../files/_in_folder.ts";
import { command } from "./_session.ts";

/** Runs a hard notebook on this kernel. */
async function run(name: string) {
  const path = fileURLToPath(new URL(`../cases/${name}`, import.meta.url));
  const { notebook } = await readNotebook(path);
  return await inFolder((cwd) =>
    runNotebook(notebook, { kernel: command(true), cwd })
  );
}

function cells({ cells }: Notebook): CodeCell[] {
  return cells.filter((cell) => cell.cell_type === "code");
}

const printed = (cell: CodeCell): string =>
  cell.outputs.map((o) => o.output_type === "stream" ? o.text : "").join("");

Deno.test("Kernel() and runNotebook() tell that the evaluator ended in D03, and keep what was printed", async () => {
  const { notebook, exitCode, problems } = await run("D03-kernel-dies.ipynb");
  const [first, second, third] = cells(notebook);
  equal(printed(first), "first\n");
  equal(printed(second), "second\n");
  deepEqual([third.outputs, third.execution_count], [[], null]);
  ok(exitCode !== 0);
  match(problems[0].message, /ended \(exit code 3\) while running cell 2/);
});

Deno.test("Kernel() and runNotebook() report the silent failure of D04 with its cell, and keep late text there", async () => {
  const { notebook, exitCode, problems } = await run(
    "D04-silent-failure.ipynb",
  );
  ok(exitCode !== 0);
  const [first, second, third] = cells(notebook);
  match(
    problems.map(({ message }) => message).join("\n"),
    /cell 1[^]*ring not found|ring not found[^]*cell 1/,
  );
  ok(first.outputs.some((o) => o.output_type === "error"));
  deepEqual(problems.map(({ kind }) => kind), ["unawaited"]);
  equal(printed(second), "now\nlate\n");
  equal(printed(third), "third\n");
});

Deno.test("Kernel() and runNotebook() redeclare, keep a name clean after a failure, and quote a magic in D12", async () => {
  const { notebook, problems } = await run("D12-redeclare-and-magics.ipynb");
  const [, second, third, fourth, fifth] = cells(notebook);
  const value = (cell: CodeCell) =>
    cell.outputs.map((o) =>
      o.output_type === "execute_result" ? o.data["text/plain"] : ""
    ).join("");
  equal(value(second), "61");
  const [error] = third.outputs;
  ok(error.output_type === "error" && error.ename === "SyntaxError");
  match(error.evalue, /JSON/);
  equal(value(fourth), "1");
  const words = JSON.stringify([problems, fifth.outputs]);
  match(words, /%%time/);
  match(words, /line 1/);
  match(words, /cell magics are not TypeScript/);
});
