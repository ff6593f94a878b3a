import { deepEqual, equal, rejects } from "node:assert/strict";
import { parseCell } from "sagbook/cells/parse_cell.ts";
import { rewriteCell } from "sagbook/cells/rewrite_cell.ts";
import { ChildEvaluator } from "sagbook/kernel/child_evaluator.ts";
import type { EvaluatorEvents } from "sagbook/kernel/evaluator.ts";

/** An evaluator in an empty folder, with what it told. */
async function started() {
  const folder = await Deno.makeTempDir();
  await Deno.writeTextFile(`${folder}/deno.json`, "{}");
  const told: unknown[] = [];
  const events: EvaluatorEvents = {
    output: (type, content, cell) => told.push([type, content.text, cell]),
    uncaught: ({ message }, cell) => told.push(["uncaught", message, cell]),
    question: (prompt) => Promise.resolve(`${prompt.trim()}!`),
    lost: (reason) => told.push(["lost", reason]),
  };
  const evaluator = new ChildEvaluator({ folder, workspace: folder }, events);
  let id = 0;
  return {
    evaluator,
    told,
    run: (source: string, expressions: Record<string, string> = {}) =>
      evaluator.run({
        id: ++id,
        code: rewriteCell(parseCell(source)).code,
        expressions,
      }),
    async stop() {
      await evaluator.stop();
      await Deno.remove(folder, { recursive: true });
    },
  };
}

Deno.test("ChildEvaluator.run() tells value, names that got one, pages and expressions", async () => {
  const { evaluator, run, stop } = await started();
  await evaluator.ready;
  const { code } = rewriteCell(parseCell("a * 2"));
  deepEqual(await run("const a = 2; let b; b = 3; a + b", { double: code }), {
    status: "ok",
    data: { "text/plain": "5" },
    assigned: ["a", "b"],
    pages: [],
    expressions: { double: { status: "ok", data: { "text/plain": "4" } } },
  });
  const failed = await run(
    "const c = 1; throw new TypeError('x'); const d = 2",
  );
  deepEqual([failed.status, failed.assigned], ["error", ["c"]]);
  const paged = await run(
    "await Deno.jupyter.broadcast('page', { data: { 'text/plain': 'help' } })",
  );
  deepEqual(paged.pages, [{ "text/plain": "help" }]);
  await stop();
});

Deno.test("ChildEvaluator() tells outputs with the number of their run, and asks questions", async () => {
  const { run, told, stop } = await started();
  const { status } = await run(
    "console.log('a'); if (prompt('b') !== 'b!') throw 1;",
  );
  equal(status, "ok");
  await run(
    "setTimeout(() => { throw new Error('late') }, 0); await new Promise((d) => setTimeout(d, 100))",
  );
  deepEqual(told, [["stream", "a\n", 1], ["uncaught", "late", 2]]);
  await stop();
});

Deno.test("ChildEvaluator.run() tells that all is lost, and runs the next cell on a new child", async () => {
  const { evaluator, run, told, stop } = await started();
  const before = await evaluator.pid();
  await run("const keep = 1");
  const lost = await run("Deno.exit(7)");
  deepEqual([lost.status, lost.status === "lost" && lost.reason], [
    "lost",
    "exit code 7",
  ]);
  const { status, data } = await run("typeof keep") as {
    status: string;
    data: unknown;
  };
  deepEqual([status, data], ["ok", { "text/plain": '"undefined"' }]);
  equal(await evaluator.pid() === before, false);
  deepEqual(told, []);
  await stop();
});

Deno.test("ChildEvaluator.interrupt() gives up on a cell that nothing stops, and says that all is lost", async () => {
  const { evaluator, run, stop } = await started();
  // Every end of the loop by the engine is followed by the next one.
  const running = run(
    "const spin = () => { setTimeout(spin, 0); while (true); }; for (let i = 0; i < 1e4; i++) setTimeout(spin, 0); await new Promise(() => {})",
  );
  await new Promise((done) => setTimeout(done, 300));
  await evaluator.interrupt();
  const outcome = await running;
  equal(["lost", "interrupted"].includes(outcome.status), true);
  const next = await run("1 + 1");
  equal(next.status, "ok");
  await stop();
});

Deno.test("ChildEvaluator.run() says why the child does not start", async () => {
  const evaluator = new ChildEvaluator(
    { folder: "/no/such/folder", workspace: "/no/such/folder" },
    {
      output() {},
      uncaught() {},
      question: () => Promise.resolve(undefined),
      lost() {},
    },
  );
  await rejects(evaluator.ready);
  const cell = { id: 1, code: "async () => {}", expressions: {} };
  const outcome = await evaluator.run(cell);
  equal(outcome.status, "error");
  await evaluator.stop();
});

Deno.test("ChildEvaluator.interrupt() of a cell whose evaluator is still starting stops that cell and nothing else", async () => {
  const { evaluator, run, told, stop } = await started();
  const first = run("const never = 1");
  await evaluator.interrupt();
  equal((await first).status, "interrupted");
  const pid = await evaluator.pid();
  equal((await run("const keep = 7")).status, "ok");
  // Longer than the ladder takes until it replaces an evaluator.
  await new Promise((done) => setTimeout(done, 2_800));
  const seen = await run("[typeof never, keep].join()");
  deepEqual(seen.status === "ok" && seen.data, {
    "text/plain": '"undefined,7"',
  });
  equal(await evaluator.pid(), pid);
  deepEqual(told, []);
  await stop();
});
