import { deepEqual, equal, match } from "node:assert/strict";
import { fileURLToPath } from "node:url";
import { kernelCommand } from "sagbook/kernel/kernel_command.ts";
import { type Cell, readNotebook, runNotebook } from "sagbook/notebook/mod.ts";
import { casePath } from "./_case.ts";
import { codeNotebook, outputsOf, textOf } from "./_notebook.ts";

const root = new URL("../../", import.meta.url);
const kernel = kernelCommand({
  main: new URL("lib/tasks/kernel.ts", root).href,
  config: fileURLToPath(new URL("deno.json", root)),
});
const title: Cell = {
  cell_type: "markdown",
  id: "title",
  metadata: {},
  source: "# Title",
};
const titled = (...sources: string[]) => {
  const notebook = codeNotebook(...sources);
  return { ...notebook, cells: [title, ...notebook.cells] };
};

Deno.test("runNotebook() names the notebook's cell and line with the project's own kernel", async () => {
  const thrown = await runNotebook(
    titled(
      "function f(): never {\n  throw new Error('deep');\n}",
      "const n = 1;\n\nf(); // line 3",
      "2",
    ),
    { kernel },
  );
  deepEqual(thrown.problems, [{
    cell: 3,
    id: "c2",
    line: 3,
    kind: "error",
    message: "cell 3, line 3: Error: deep",
  }]);
  match(
    JSON.stringify(outputsOf(thrown.notebook.cells[2])),
    /at f \(?.*cell 2, line 2, .*at .*cell 3, line 3, /,
  );
  const refused = await runNotebook(
    titled("const a = 1;", "const b = 2;\nconst c: string = a;"),
    { kernel },
  );
  match(
    refused.problems[0].message,
    /^cell 3, line 2: TypeCheckError: (?!cell)/,
  );
  equal(refused.exitCode, 1);
});

Deno.test("runNotebook() takes an evaluator that ended for the kernel's end", async () => {
  const { notebook } = await readNotebook(casePath("D03-kernel-dies.ipynb"));
  const { exitCode, problems, notebook: left } = await runNotebook(notebook, {
    kernel,
  });
  equal(exitCode, 3);
  deepEqual(problems.map(({ message }) => message), [
    "the kernel ended (exit code 3) while running cell 2",
  ]);
  equal(textOf(left.cells[0]), "first\n");
  deepEqual(outputsOf(left.cells[2]), []);
});

Deno.test("runNotebook() gives with the project's own kernel the outputs it gives with Deno's", async () => {
  const notebook = codeNotebook(
    "const r = 60;\nconsole.log(r, { s: 0.72 });\nr * 2",
    "await Deno.jupyter.display({ 'text/html': '<b>R</b>' }, { raw: true });\n({ list: [1, 'two', null] })",
    "for (let i = 0; i < 2000; i++) console.log(i);",
    "Deno.jupyter.svg`<svg xmlns='http://www.w3.org/2000/svg'></svg>`",
    "const r = 61;\nr",
  );
  const [own, deno] = [
    await runNotebook(notebook, { kernel }),
    await runNotebook(notebook, { kernel: "deno" }),
  ];
  equal(own.status, "complete");
  deepEqual(own.notebook.cells, deno.notebook.cells);
});

Deno.test("runNotebook() reports with the project's own kernel a failure that nobody awaited, and goes on", async () => {
  const rejected = await runNotebook(
    titled("const p = Promise.reject(new Error('ring not found'));", "6 * 7"),
    { kernel },
  );
  deepEqual([rejected.status, rejected.exitCode], ["failed", 1]);
  deepEqual(rejected.problems, [{
    cell: 2,
    id: "c1",
    line: 1,
    kind: "unawaited",
    message: "cell 2, line 1: Error: ring not found (nothing awaited it)",
  }]);
  const [error, ...more] = outputsOf(rejected.notebook.cells[1]);
  deepEqual(more, []);
  match(
    JSON.stringify(error),
    /"evalue":"ring not found \(not caught in cell 2/,
  );
  match(JSON.stringify(outputsOf(rejected.notebook.cells[2])), /"42"/);

  const late = await runNotebook(
    titled(
      "1;\nsetTimeout(() => { throw new Error('late'); }, 20);\n0",
      "await new Promise((done) => setTimeout(done, 200));",
      "setTimeout(() => { throw new Error('last'); });",
    ),
    { kernel },
  );
  equal(late.exitCode, 1);
  deepEqual(late.problems.map(({ cell, line, kind }) => [cell, line, kind]), [
    [2, 2, "unawaited"],
    [4, 1, "unawaited"],
  ]);
  match(late.problems[0].message, /late \(nothing awaited it\)$/);
  equal(outputsOf(late.notebook.cells[1]).at(-1)?.output_type, "error");
  deepEqual(outputsOf(late.notebook.cells[2]), []);

  const meant = titled("Promise.reject(new Error('meant'));");
  const [, cell] = meant.cells;
  const { status } = await runNotebook({
    ...meant,
    cells: [{ ...cell, metadata: { tags: ["raises-exception"] } }],
  }, { kernel });
  equal(status, "complete");
});

Deno.test("runNotebook() leaves out that a kernel checks no types where its caller does", async () => {
  const unchecked = [...kernel];
  unchecked.splice(unchecked.indexOf("--connection-file"), 0, "--no-check");
  const notebook = codeNotebook("console.log(1)");
  const [told, checked] = [
    await runNotebook(notebook, { kernel: unchecked }),
    await runNotebook(notebook, { kernel: unchecked, isChecked: true }),
  ];
  match(JSON.stringify(told.notebook), /Cells are not type-checked/);
  deepEqual(checked.notebook.cells.map(textOf), ["1\n"]);
});
