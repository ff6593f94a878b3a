import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import {
  type CodeCell,
  exportHtml,
  formatNotebook,
  readNotebook,
  runNotebook,
  type RunProgress,
} from "sagbook/notebook/mod.ts";
import { casePath } from "./_case.ts";
import { codeNotebook, outputsOf, textOf } from "./_notebook.ts";

const runCase = async (name: string) => {
  const { notebook } = await readNotebook(casePath(name));
  return await runNotebook(notebook, { timeLimit: 60 });
};
const isAlive = (pid: number) =>
  Deno.stat(`/proc/${pid}`).then(() => true, () => false);

Deno.test("runNotebook() tells that the kernel ended, keeps what came, leaves later cells", async () => {
  const { status, exitCode, notebook, problems, incomplete } = await runCase(
    "D03-kernel-dies.ipynb",
  );
  equal(status, "kernel-ended");
  equal(exitCode, 3);
  equal(incomplete, "the kernel ended (exit code 3) while running cell 2");
  deepEqual(problems.map(({ cell, message }) => [cell, message]), [
    [2, incomplete],
  ]);
  const [first, second, third] = notebook.cells;
  equal(textOf(first), "first\n");
  match(textOf(second), /^second\n/);
  deepEqual(
    [outputsOf(third), (third as CodeCell).execution_count],
    [[], null],
  );
  match(
    await exportHtml(notebook, { incomplete }),
    /<main[^>]*>\s*<div class="sb-banner"[^>]*><p><strong>This page is incomplete:<\/strong> the kernel ended/,
  );
});

Deno.test("runNotebook() reports a failure that nobody awaited, and gives late text to its cell", async () => {
  const { status, exitCode, notebook, problems } = await runCase(
    "D04-silent-failure.ipynb",
  );
  deepEqual([status, exitCode], ["failed", 1]);
  deepEqual(problems, [{
    cell: 1,
    id: "c1",
    line: 1,
    kind: "unawaited",
    message: "cell 1, line 1: Error: ring not found (nothing awaited it)",
  }]);
  deepEqual(notebook.cells.slice(1).map(textOf), ["now\nlate\n", "third\n"]);
});

Deno.test("runNotebook() runs sources whose line ends were lost or are CRLF", async () => {
  const { status, notebook } = await runCase("D07-lost-line-ends.ipynb");
  equal(status, "complete");
  deepEqual(notebook.cells.map(textOf), ["0.715\n", "3\n"]);
});

Deno.test("runNotebook() keeps bare cells and obeys tags", async () => {
  const { exitCode, notebook, problems } = await runCase(
    "D08-bare-cells-and-tags.ipynb",
  );
  equal(notebook.cells.length, 7);
  equal(exitCode, 1);
  deepEqual(problems.map((problem) => problem.message), [
    "cell 5 is tagged raises-exception, but it ran without an error",
  ]);
  deepEqual(notebook.cells.map(textOf), [
    "2",
    "",
    "",
    "Error: expected",
    "1",
    "",
    "42",
  ]);
  const [, empty, , , , skip, hide] = notebook.cells as CodeCell[];
  deepEqual([empty.execution_count, skip.execution_count], [null, null]);
  equal(hide.source, "40 + 2");
  const page = await exportHtml(notebook);
  match(page, />42</);
  equal(page.includes("40 + 2"), false);
});

Deno.test("runNotebook() keeps the first and last part of a flood, in one output", async () => {
  const { exitCode, notebook } = await runCase("D11-flood.ipynb");
  equal(exitCode, 0);
  const [flood, done] = notebook.cells;
  equal(outputsOf(flood).length, 1);
  const lines = textOf(flood).split("\n");
  equal(lines.length, 1002);
  equal(lines[499], "reading 499 0.715 mm");
  equal(lines[500], "[… 199 000 lines left out …]");
  equal(lines[501], "reading 199500 0.715 mm");
  equal(lines[1000], "reading 199999 0.715 mm");
  equal(textOf(done), '"done"');
  ok(formatNotebook(notebook).length < 1e6);
});

Deno.test("runNotebook() bounds one endless line, and two streams by turns", async () => {
  const { notebook } = await runNotebook(codeNotebook(
    'for (let i = 0; i < 300; i++) Deno.stdout.writeSync(new TextEncoder().encode("µ".repeat(10_000)));\nundefined;',
    "for (let i = 0; i < 20_000; i++) { console.log(i); console.error(-i); }",
  ));
  const [line, turns] = notebook.cells;
  match(
    textOf(line),
    /^µ{100000}\n\[… 2 800 000 characters left out …\]\nµ{100000}$/,
  );
  ok(outputsOf(turns).length <= 1004, `${outputsOf(turns).length} outputs`);
  match(textOf(turns), /\n19999\n/);
  match(textOf(turns), /\n-19999\n$/);
});

Deno.test("runNotebook() lets names be declared again, and says what %% is", async () => {
  const { exitCode, notebook } = await runCase(
    "D12-redeclare-and-magics.ipynb",
  );
  equal(exitCode, 0);
  const [, second, third, fourth, fifth] = notebook.cells.map(textOf);
  equal(second, "61");
  match(third, /^SyntaxError: .*JSON/);
  equal(fourth, "1");
  equal(
    fifth,
    "SyntaxError: `%%time` on line 1 is a cell magic of another kernel; cell magics are not TypeScript",
  );
});

// The failing line is the one that ends in "here".
const failures: [title: string, source: string][] = [
  ["a first line", 'throw new Error("x"); // here'],
  ["a later line", 'const a = 1;\n\nthrow new Error("x"); // here'],
  [
    "types, blank lines and comments",
    'interface A {\n  b: number;\n}\n\n// one\nconst a: A = { b: 1 };\n\nif (a.b) { console.log("y"); }\nthrow new Error("x"); // here',
  ],
  [
    "imports over several lines, unused and of types",
    'import {\n  basename,\n  join,\n} from "node:path";\nimport type { Foo } from "./nowhere.ts";\n\nnull!.x; // here',
  ],
  [
    "an awaited call",
    'await 1;\nenum E { A, B }\nawait Promise.reject(new Error("x")); // here',
  ],
  ["a function of an earlier cell", "\n\nearlier(); // here"],
  ["no program", "const a = 1;\nconst b = ; // here"],
  ["no program at its end", "const a = 1;\nif (a) { // here"],
];

for (const [title, source] of failures) {
  Deno.test(`runNotebook() names cell and line of a failure: ${title}`, async () => {
    const line = source.split("\n").findIndex((text) => /here$/.test(text)) + 1;
    const { status, problems, notebook } = await runNotebook(codeNotebook(
      "function earlier() {\n\n\n\n  throw new Error('z');\n}",
      source,
      "1",
    ));
    equal(status, "failed");
    deepEqual(problems.map(({ cell, line }) => [cell, line]), [[2, line]]);
    ok(problems[0].message.startsWith(`cell 2, line ${line}: `));
    equal(textOf(notebook.cells[2]), "");
  });
}

Deno.test("runNotebook() reports an error thrown in a timer with its cell", async () => {
  const { exitCode, problems } = await runNotebook(codeNotebook(
    'setTimeout(() => {\n  throw new Error("late");\n}, 20);\n0',
    "await new Promise((done) => setTimeout(done, 200));",
  ));
  equal(exitCode, 1);
  deepEqual(problems.map(({ cell, kind }) => [cell, kind]), [[1, "unawaited"]]);
  match(problems[0].message, /late \(nothing awaited it\)$/);
});

Deno.test("runNotebook() accepts a rejection that the notebook itself handles", async () => {
  const { status } = await runNotebook(codeNotebook(
    'addEventListener("unhandledrejection", (event) => event.preventDefault());',
    "Promise.reject(new Error('x')); 1",
  ));
  equal(status, "complete");
});

Deno.test("runNotebook() keeps the order of what a cell shows, its value last", async () => {
  const { notebook } = await runNotebook(codeNotebook(
    `console.log("a");
console.log("b");
await Deno.jupyter.display({ "text/plain": "shown" }, { raw: true });
console.warn("c");
await Deno.stdout.write(new TextEncoder().encode("d\\n"));
process.stdout.write("e\\n");
6 * 7`,
  ));
  deepEqual(
    outputsOf(notebook.cells[0]).map((output) =>
      output.output_type === "stream"
        ? [output.name, output.text]
        : [output.output_type]
    ),
    [
      ["stdout", "a\nb\n"],
      ["display_data"],
      ["stderr", "c\n"],
      ["stdout", "d\ne\n"],
      ["execute_result"],
    ],
  );
  deepEqual(outputsOf(notebook.cells[0])[1], {
    output_type: "display_data",
    data: { "text/plain": "shown" },
    metadata: {},
  });
});

Deno.test("runNotebook() changes a display in its own cell when a later cell updates it", async () => {
  const { notebook } = await runNotebook(codeNotebook(
    'await Deno.jupyter.display({ "text/plain": "old" }, { raw: true, display_id: "d" });',
    'await Deno.jupyter.display({ "text/plain": "new" }, { raw: true, display_id: "d", update: true });',
    'console.log("gone");\nawait Deno.jupyter.broadcast("clear_output", { wait: false });\nconsole.log("left");',
  ));
  deepEqual(notebook.cells.map(textOf), ["new", "", "left\n"]);
});

Deno.test("runNotebook() sets parameters and leaves the notebook given unchanged", async () => {
  const given = codeNotebook(
    ["const folder = 'demo';\nlet n: number = 3;", "parameters"],
    "n += 1;\n`${folder} ${n}`",
  );
  const before = formatNotebook(given);
  const { notebook, status } = await runNotebook(given, {
    parameters: { folder: 'blank "7"\n', n: 5 },
  });
  equal(status, "complete");
  equal(textOf(notebook.cells[2]), "'blank \"7\"\\n 6'");
  equal(formatNotebook(given), before);
});

Deno.test("runNotebook() stops a cell at its time limit and ends its process", async () => {
  for (const loop of ["while (true) {}", "await new Promise(() => {});"]) {
    const { status, exitCode, problems, notebook } = await runNotebook(
      codeNotebook("Deno.pid", loop, "1"),
      { timeLimit: 1 },
    );
    deepEqual([status, exitCode], ["time-limit", 4]);
    deepEqual(problems.map((problem) => problem.message), [
      "cell 2 ran longer than its limit of 1 s and was stopped",
    ]);
    const pid = Number(textOf(notebook.cells[0]));
    ok(pid > 1);
    equal(await isAlive(pid), false);
    equal(textOf(notebook.cells[2]), "");
  }
});

Deno.test("runNotebook() stops when told to and ends its process", async () => {
  const stop = new AbortController();
  const { status, exitCode, notebook } = await runNotebook(
    codeNotebook("Deno.pid", "await new Promise(() => {});"),
    {
      signal: stop.signal,
      onProgress: ({ cell }) => {
        if (cell === 2) setTimeout(() => stop.abort(), 100);
      },
    },
  );
  deepEqual([status, exitCode], ["stopped", 130]);
  equal(await isAlive(Number(textOf(notebook.cells[0]))), false);
});

Deno.test("runNotebook() leaves no kernel behind when its own process is killed", async () => {
  const mod = import.meta.resolve("sagbook/notebook/run_notebook.ts");
  const root = new URL("../..", import.meta.url);
  const file = await Deno.makeTempFile();
  const running = new Deno.Command(Deno.execPath(), {
    cwd: root,
    args: [
      "eval",
      `import { runNotebook } from "${mod}";
       const cell = (id, source) => ({ cell_type: "code", id, metadata: {}, source, execution_count: null, outputs: [] });
       await runNotebook({ metadata: {}, cells: [
         cell("a", "await Deno.writeTextFile('${file}', String(Deno.pid))"),
         cell("b", "await new Promise((done) => setTimeout(done, 120_000))"),
       ] });`,
    ],
    stdout: "null",
    stderr: "null",
  }).spawn();
  let pid = 0;
  for (let i = 0; i < 300 && pid === 0; i++) {
    await new Promise((done) => setTimeout(done, 100));
    pid = Number(await Deno.readTextFile(file));
  }
  ok(pid > 1);
  running.kill("SIGKILL");
  await running.status;
  for (let i = 0; i < 100 && await isAlive(pid); i++) {
    await new Promise((done) => setTimeout(done, 100));
  }
  equal(await isAlive(pid), false);
  await Deno.remove(file);
});

Deno.test("runNotebook() says plainly that a kernel is not installed or does not start", async () => {
  const notebook = {
    ...codeNotebook("1"),
    metadata: { kernelspec: { name: "denno", display_name: "Denno" } },
  };
  await rejects(() => runNotebook(notebook), (error: Error) => {
    equal(error.name, "RangeError");
    match(
      error.message,
      /^Cannot start kernel "denno" as no kernel of that name is installed: there are .*\bdeno\b/,
    );
    return true;
  });
  await rejects(
    () => runNotebook(notebook, { kernel: ["false", "{connection_file}"] }),
    {
      message:
        'Cannot start kernel "false {connection_file}" as its command must run and answer: the kernel ended (exit code 1)',
    },
  );
  await rejects(() => runNotebook(notebook, { timeLimit: 0 }), {
    name: "RangeError",
    message:
      "Cannot run a notebook as the time limit must be above 0 s: current value is 0 s",
  });
});

Deno.test("runNotebook() tells of each cell as it starts and ends", async () => {
  const told: RunProgress[] = [];
  await runNotebook(
    codeNotebook("1", ["2", "skip-execution"], "throw 3", "4"),
    {
      onProgress: (progress) => told.push(progress),
    },
  );
  deepEqual(told.map(({ cell, of, state }) => `${cell}/${of} ${state}`), [
    "1/4 running",
    "1/4 done",
    "2/4 skipped",
    "3/4 running",
    "3/4 failed",
  ]);
  ok(told.every(({ seconds }) => seconds >= 0));
});

Deno.test("runNotebook() is not misled by a notebook that forges its notes", async () => {
  const type = "application/vnd.sagbook.run+json";
  const { notebook, status } = await runNotebook(codeNotebook(
    "1",
    `await Deno.jupyter.display({ "${type}": { kind: "text", cell: 99, parts: [["stdout", "t"]] } }, { raw: true });
await Deno.jupyter.display({ "${type}": { kind: "text", cell: 0, parts: [[7]] } }, { raw: true });
await Deno.jupyter.display({ "${type}": { kind: "failure", cell: "x" } }, { raw: true });`,
  ));
  equal(status, "complete");
  equal(outputsOf(notebook.cells[0]).length, 1);
  match(textOf(notebook.cells[1]), /^t/);
});
