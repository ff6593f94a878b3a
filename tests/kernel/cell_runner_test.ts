import { deepEqual, equal } from "node:assert/strict";
import { CellRunner } from "sagbook/kernel/cell_runner.ts";
import type {
  Evaluator,
  EvaluatorCell,
  Outcome,
} from "sagbook/kernel/evaluator.ts";

/** An evaluator that does as it is told, to show that any other fits. */
class ToldEvaluator implements Evaluator {
  readonly ready = Promise.resolve();
  readonly cells: EvaluatorCell[] = [];
  constructor(readonly answer: (cell: EvaluatorCell) => Partial<Outcome>) {}
  run(cell: EvaluatorCell): Promise<Outcome> {
    this.cells.push(cell);
    const rest = { assigned: [], pages: [], expressions: {} };
    return Promise.resolve(
      { status: "ok", ...rest, ...this.answer(cell) } as Outcome,
    );
  }
  interrupt = () => Promise.resolve();
  forward = () => Promise.resolve(undefined);
  stop = () => Promise.resolve();
}

const never = new Promise<void>(() => {});

function runnerOf(evaluator: Evaluator, check = false) {
  const said: string[] = [];
  const runner = new CellRunner({
    folder: import.meta.resolve("./"),
    check,
    explainers: [({ code }) => code === 2322 ? "wrong unit" : undefined],
    evaluator,
  });
  let id = 0;
  const run = (source: string, stopped = never) =>
    runner.run({
      id: ++id,
      source,
      name: `cell ${id}`,
      expressions: {},
      say: (text) => said.push(text),
    }, stopped);
  return { runner, run, said };
}

Deno.test("CellRunner.run() does not evaluate what is no TypeScript or has a wrong type", async () => {
  const evaluator = new ToldEvaluator(() => ({}));
  const { run, runner } = runnerOf(evaluator, true);
  const syntax = await run("const = 1");
  const type = await run("\nconst a: number = 'x'; const b: number = 'y'");
  equal(evaluator.cells.length, 0);
  deepEqual(
    [syntax, type].map((one) => one.status === "error" && one.error.ename),
    ["SyntaxError", "TypeCheckError"],
  );
  equal(
    type.status === "error" && type.error.evalue,
    "cell 2, line 2, column 7: wrong unit (and 1 more)",
  );
  await runner.stop();
});

Deno.test("CellRunner.run() leads a stack back to the lines of the cells it passed", async () => {
  const evaluator = new ToldEvaluator(({ id }) => ({
    status: "error",
    error: {
      name: "RangeError",
      message: "sag",
      // Line 2 is the cell's first: the code begins with a line of its own.
      stack: `RangeError: sag
    at f (cell-1, <anonymous>:3:7)
    at g (file:///x/lib/radius.ts:40:11)
    at eval (cell-${id}, <anonymous>:2:1)
    at run (file:///x/lib/kernel/_host_start.ts:1:1)`,
    },
  }));
  const { run, runner } = runnerOf(evaluator);
  await run("function f() {\n  throw 1\n}");
  const result = await run("f()");
  deepEqual(result.status === "error" && result.error.traceback, [
    "RangeError: sag",
    "cell 1, line 2, column 7",
    "  2 |   throw 1",
    "    |       ~",
    "    at f (cell 1, line 2, column 7)",
    "    at g (file:///x/lib/radius.ts:40:11)",
    "    at cell 2, line 1, column 1",
  ]);
  await runner.stop();
});

Deno.test("CellRunner.run() knows only what got a value, forgets all that is lost, and stops before it runs", async () => {
  const outcomes: Partial<Outcome>[] = [
    {
      status: "error",
      error: { name: "E", message: "", stack: "" },
      assigned: ["a"],
    },
    { status: "ok" },
    { status: "lost", reason: "exit code 3" },
  ];
  const evaluator = new ToldEvaluator(() => outcomes.shift() ?? {});
  const { run, runner } = runnerOf(evaluator, true);
  await run("const a = 1, b = 2;");
  const ename = async (source: string, stopped?: Promise<void>) => {
    const result = await run(source, stopped);
    return result.status === "error" ? result.error.ename : "ok";
  };
  equal(await ename("b"), "TypeCheckError");
  equal(await ename("a"), "ok");
  equal(await ename("1"), "EvaluatorRestarted");
  equal(await ename("a"), "TypeCheckError");
  equal(await ename("1", Promise.resolve()), "Interrupted");
  equal(evaluator.cells.length, 3);
  await runner.stop();
});
