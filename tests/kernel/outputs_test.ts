import { deepEqual, equal, match, ok } from "node:assert/strict";
import { pause, Session, textOf } from "./_session.ts";

Deno.test("Kernel() gives 20,000 lines and 5 MB complete, in order, before the end and under the right cell", async () => {
  await using session = await Session.start();
  const lines = session.run(
    "for (let i = 0; i < 20_000; i++) console.log('line ' + i)",
  );
  const long = session.run("console.log('x'.repeat(5_000_000))");
  const last = session.run("console.log('done')");
  const expected = Array.from({ length: 20_000 }, (_, i) => `line ${i}\n`);
  const first = await lines;
  equal(first.printed === expected.join(""), true);
  deepEqual(first.late, []);
  const second = await long;
  equal(second.printed.length, 5_000_001);
  deepEqual(second.late, []);
  equal((await last).printed, "done\n");
  await pause(300);
  deepEqual([first.late, second.late], [[], []]);
});

Deno.test("Kernel() keeps the order of both streams, displays and the value", async () => {
  await using session = await Session.start();
  const { outputs } = await session.run(`
    console.log("a"); console.error("b"); console.log("c");
    await Deno.jupyter.display({ "text/plain": "D" }, { raw: true });
    console.info("e"); console.warn("f");
    await Deno.jupyter.broadcast("display_data", { data: { "text/plain": "G" }, metadata: {}, transient: {} });
    console.log("h"); "I"
  `);
  const order = outputs.map((output) =>
    output.output_type === "stream"
      ? `${output.name} ${output.text.trim()}`
      : output.output_type === "clear_output" || output.output_type === "error"
      ? output.output_type
      : `${output.output_type} ${output.data["text/plain"]}`
  );
  deepEqual(order, [
    ...["stdout a", "stderr b", "stdout c", "display_data D"],
    ...["stdout e", "stderr f", "display_data G", "stdout h"],
    'execute_result "I"',
  ]);
});

Deno.test("Kernel() puts what a timer prints under the cell that set it, also while another runs", async () => {
  await using session = await Session.start();
  const first = await session.run(
    "setTimeout(() => console.log('late'), 300); console.log('now')",
  );
  const second = await session.run(
    "await new Promise((d) => setTimeout(d, 700)); console.log('third')",
  );
  equal(first.printed, "now\n");
  equal(textOf(first.late, "stdout"), "late\n");
  equal(second.printed, "third\n");
});

Deno.test("Kernel() shows in order what is written past the console, and before the process ends", async () => {
  await using session = await Session.start();
  const cell = await session.run(`
    import process from "node:process";
    const bytes = (text: string) => new TextEncoder().encode(text);
    console.log("a");
    Deno.stdout.writeSync(bytes("b\\n"));
    await Deno.stdout.write(bytes("c\\n"));
    const writer = Deno.stdout.writable.getWriter();
    await writer.write(bytes("d\\n"));
    process.stdout.write("e\\n");
    Deno.stderr.writeSync(bytes("f\\n"));
    Deno.exit(3);
  `);
  equal(cell.printed, "a\nb\nc\nd\ne\n");
  equal(textOf(cell.outputs, "stderr"), "f\n");
});

Deno.test("Kernel() shows values in every form the runtime knows", async () => {
  await using session = await Session.start();
  const forms = async (code: string) => {
    const { outputs, error } = await session.run(code);
    const [last] = outputs.slice(-1);
    ok(last && "data" in last, `${error?.evalue}`);
    return last.data;
  };
  deepEqual(await forms("Deno.jupyter.html`<b>R</b>`"), {
    "text/html": "<b>R</b>",
  });
  deepEqual(await forms("Deno.jupyter.md`*R*`"), { "text/markdown": "*R*" });
  deepEqual(await forms("Deno.jupyter.svg`<svg></svg>`"), {
    "image/svg+xml": "<svg></svg>",
  });
  deepEqual(
    await forms(
      `({ [Symbol.for("Jupyter.display")]: () => ({ "text/plain": "s" }) })`,
    ),
    { "text/plain": "s" },
  );
  deepEqual(
    await forms(
      `({ async [Deno.jupyter.$display]() { return { "text/latex": "$R$" } } })`,
    ),
    { "text/latex": "$R$" },
  );
  deepEqual(await forms("6 * 7"), { "text/plain": "42" });
  deepEqual(await forms("'text'"), { "text/plain": '"text"' });
  deepEqual(await forms("({ a: [1] })"), { "text/plain": "{ a: [ 1 ] }" });
  deepEqual(await forms("null"), { "text/plain": "null" });
});

Deno.test("Kernel() shows a drawing made on a server DOM as SVG", async () => {
  // Run inside the package, whose deno.json maps both names.
  const folder = new URL("../../", import.meta.url).pathname;
  await using session = await Session.start({ folder });
  const { outputs, error } = await session.run(`
    import * as Plot from "@observablehq/plot";
    import { parseHTML } from "linkedom";
    const { document } = parseHTML("<html></html>");
    Plot.plot({ document, marks: [Plot.dot([[1, 2], [3, 4]])] })
  `);
  const [output] = outputs.slice(-1);
  ok(output && "data" in output, `${error?.evalue}`);
  match(String(output.data["image/svg+xml"]), /^<svg[^]*<circle/);
});

Deno.test("Kernel() changes a display by its id, and clears outputs", async () => {
  await using session = await Session.start();
  const { outputs } = await session.run(`
    await Deno.jupyter.display({ "text/plain": "1" }, { raw: true, display_id: "bar" });
    await Deno.jupyter.display({ "text/plain": "2" }, { raw: true, display_id: "bar", update: true });
    await Deno.jupyter.broadcast("clear_output", { wait: true });
  `);
  deepEqual(outputs, [
    {
      output_type: "display_data",
      data: { "text/plain": "1" },
      metadata: {},
      transient: { display_id: "bar" },
    },
    {
      output_type: "update_display_data",
      data: { "text/plain": "2" },
      metadata: {},
      transient: { display_id: "bar" },
    },
    { output_type: "clear_output", wait: true },
  ]);
});

Deno.test("Kernel() reports a rejection that nobody awaits, with its cell", async () => {
  await using session = await Session.start();
  const at = await session.run(
    "const p = Promise.reject(new Error('ring not found'));",
  );
  equal(at.status, "error");
  equal(at.content.uncaught, true);
  equal(
    at.error?.evalue,
    "ring not found (not caught in cell 1: nothing awaited it)",
  );
  const later = await session.run(
    "setTimeout(() => { throw new RangeError('too late') }, 100); 1",
  );
  equal(later.status, "ok");
  await pause(400);
  const [error] = later.late;
  ok(error?.output_type === "error");
  deepEqual([error.ename, error.evalue], [
    "RangeError",
    "too late (not caught in cell 2: nothing awaited it)",
  ]);
  equal((await session.run("typeof p")).value, '"object"');
});

Deno.test("Kernel() passes comms both ways and lists those that are open", async () => {
  await using session = await Session.start();
  const opened: unknown[] = [];
  session.kernel.client.outputListeners.add(({ header, content }) => {
    if (header.msg_type === "comm_open") opened.push(content.comm_id);
  });
  await session.run(
    `await Deno.jupyter.broadcast("comm_open", { comm_id: "c1", target_name: "slider", data: {} })`,
  );
  deepEqual(opened, ["c1"]);
  deepEqual(await session.ask("comm_info_request", {}), {
    status: "ok",
    comms: { c1: { target_name: "slider" } },
  });
  deepEqual(
    await session.ask("comm_info_request", { target_name: "other" }),
    { status: "ok", comms: {} },
  );
});

Deno.test("Kernel() evaluates expressions beside the cell, each with its own outcome", async () => {
  await using session = await Session.start();
  const { content } = await session.run("const R = 2520", {
    userExpressions: { good: "R / 2", bad: "none.x", wrong: "1 +" },
  });
  const { good, bad, wrong } = content.user_expressions as Record<
    string,
    Record<string, unknown>
  >;
  deepEqual(good, {
    status: "ok",
    data: { "text/plain": "1260" },
    metadata: {},
  });
  equal(bad.ename, "ReferenceError");
  equal(wrong.ename, "SyntaxError");
});

Deno.test("Kernel() honours silent, store_history and empty code", async () => {
  await using session = await Session.start();
  equal((await session.run("1")).executionCount, 1);
  const silent = await session.run("2", { silent: true });
  deepEqual([silent.executionCount, silent.outputs], [1, []]);
  equal((await session.run("3", { storeHistory: false })).executionCount, 1);
  equal((await session.run("   ")).executionCount, 1);
  equal((await session.run("4")).executionCount, 2);
});
