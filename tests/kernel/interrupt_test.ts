import { deepEqual, equal, ok } from "node:assert/strict";
import { startKernel } from "sagbook/protocol/start_kernel.ts";
import { ENDLESS, SPIN } from "./_endless.ts";
import { command, pause, Session } from "./_session.ts";

async function started(): Promise<Session> {
  const session = await Session.start();
  await Deno.writeTextFile(`${session.folder}/spin.ts`, SPIN);
  await session.run("const keep = { v: 7 };");
  return session;
}

Deno.test("Kernel() stops every endless cell, keeps the variables and goes on, five times running", async () => {
  await using session = await started();
  for (let round = 1; round <= 5; round++) {
    for (const [name, code] of Object.entries(ENDLESS)) {
      const { result, took } = await session.interrupted(code);
      equal(result.error?.ename, "Interrupted", `${name}, round ${round}`);
      ok(took < 10_000, `${name}: ${took} ms`); // the usual time is in the study
      const { value } = await session.run("keep.v");
      equal(value, "7", `${name}, round ${round}`);
    }
  }
});

/** Cells that show more than anyone can take. */
const FLOODS = {
  "long lines": "while (true) console.log('x'.repeat(1000));",
  "lines after an await":
    "while (true) { console.log('x'.repeat(1000)); await 0; }",
  "displays":
    "while (true) await Deno.jupyter.display({ 'text/plain': 'x' }, { raw: true });",
  "displays that nobody awaits":
    "while (true) Deno.jupyter.display({ 'text/plain': 'x' }, { raw: true });",
};

Deno.test("Kernel() keeps the variables when a cell is stopped that shows things without end", async () => {
  await using session = await started();
  for (const [name, code] of Object.entries(FLOODS)) {
    const { result } = await session.interrupted(code, undefined, 500);
    equal(result.error?.ename, "Interrupted", name);
    const { value, outputs } = await session.run("keep.v");
    equal(value, "7", name);
    equal(outputs.length, 1, `${name}: nothing of the cell before`);
  }
});

Deno.test("Kernel() stops every endless cell at SIGINT as well", async () => {
  if (Deno.build.os === "windows") return;
  await using session = await started();
  const signal = () => {
    Deno.kill(session.kernel.pid, "SIGINT");
    return Promise.resolve();
  };
  for (const [name, code] of Object.entries(ENDLESS)) {
    const { result } = await session.interrupted(code, signal);
    equal(result.error?.ename, "Interrupted", name);
    equal((await session.run("keep.v")).value, "7", name);
  }
});

Deno.test("Kernel() keeps its variables when SIGINT goes to its whole process group", async () => {
  if (Deno.build.os === "windows") return;
  const kernel = await startKernel(command(false), { ownGroup: true });
  await kernel.execute("const keep = 7");
  const running = kernel.execute("while (true) {}", { timeLimit: 60_000 });
  await pause(300);
  // As a terminal does it, and a front end that interrupts by signal.
  const group = `kill -INT -- -${kernel.pid}`;
  await new Deno.Command("bash", { args: ["-c", group] }).output();
  equal((await running).error?.ename, "Interrupted");
  equal((await kernel.execute("keep + 1")).status, "ok");
  await kernel.shutdown();
});

Deno.test("Kernel() does not let an interrupted cell go on behind the user's back", async () => {
  await using session = await Session.start();
  await session.run("let x: number | undefined; let tidy = 0;");
  const { result } = await session.interrupted(
    "try { await new Promise((d) => setTimeout(d, 500)); x = 1 } finally { tidy = 1 }",
  );
  equal(result.status, "error");
  await pause(1_000);
  equal((await session.run("[x, tidy]")).value, "[ undefined, 1 ]");
});

Deno.test("Kernel() ends the awaits of functions from earlier cells too", async () => {
  await using session = await Session.start();
  await session.run(
    "let total = 0; async function measure() { while (true) { await new Promise((d) => setTimeout(d, 20)); total++ } }",
  );
  const { result } = await session.interrupted("await measure()");
  equal(result.error?.ename, "Interrupted");
  const before = (await session.run("total")).value;
  await pause(300);
  equal((await session.run("total")).value, before);
});

Deno.test("Kernel() abandons the cells that wait behind an interrupted or failed one", async () => {
  await using session = await Session.start();
  const running = session.run("await new Promise((d) => setTimeout(d, 1e9))");
  const waiting = [session.run("globalThis.ran = 1"), session.run("2")];
  await pause(200);
  await session.kernel.interrupt();
  equal((await running).status, "error");
  for (const one of waiting) equal((await one).status, "aborted");
  const failing = session.run("throw new Error()");
  equal((await session.run("globalThis.ran = 2")).status, "aborted");
  equal((await failing).status, "error");
  const kept = session.run("throw new Error()", { stopOnError: false });
  const next = session.run("typeof globalThis.ran");
  equal((await kept).status, "error");
  equal((await next).value, '"undefined"');
});

Deno.test("Kernel() takes an interrupt without a running cell for nothing", async () => {
  await using session = await Session.start();
  await session.run("const keep = 7");
  for (let i = 0; i < 5; i++) await session.kernel.interrupt();
  deepEqual((await session.run("keep")).value, "7");
});

Deno.test("Kernel() shows what a busy cell prints while it runs", async () => {
  await using session = await Session.start();
  const times: number[] = [];
  const begun = performance.now();
  await session.run(
    "for (let i = 0; i < 5; i++) { console.log(i); const t = Date.now(); while (Date.now() - t < 150); } console.log('end')",
    {
      onOutput: () => {
        times.push(performance.now() - begun);
      },
    },
  );
  ok(times.length >= 4, `${times.length} messages`);
  ok(times.at(-1)! - times[0] > 300, `${times}`);
});
