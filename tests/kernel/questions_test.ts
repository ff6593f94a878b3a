import { deepEqual, equal, match, ok } from "node:assert/strict";
import { pause, Session } from "./_session.ts";

Deno.test("Kernel() completes and explains names of earlier cells and of imports while a cell runs", async () => {
  // Run inside the package, whose deno.json maps the library's name.
  const folder = new URL("../../", import.meta.url).pathname;
  await using session = await Session.start({ check: true, folder });
  await session.run(
    "import * as path from 'node:path'; import * as stats from 'simple-statistics'; const sagitta: number = 0.7;",
  );
  const busy = session.run("await new Promise((d) => setTimeout(d, 5_000))");
  await pause(200);
  const complete = async (code: string) => {
    const cursor_pos = [...code].length;
    return await session.ask("complete_request", { code, cursor_pos }) as {
      matches: string[];
      cursor_start: number;
      cursor_end: number;
    };
  };
  const own = await complete("1 + sagi");
  deepEqual([own.matches, own.cursor_start, own.cursor_end], [
    ["sagitta"],
    4,
    8,
  ]);
  ok((await complete("path.bas")).matches.includes("basename"));
  ok((await complete("stats.medi")).matches.includes("median"));
  const hover = await session.ask("inspect_request", {
    code: "sagitta",
    cursor_pos: 3,
    detail_level: 0,
  });
  equal(hover.found, true);
  const { "text/plain": plain, "text/markdown": markdown } = hover
    .data as Record<string, string>;
  match(plain, /^const sagitta: number$|\(alias\) const sagitta: number/m);
  match(markdown, /```/);
  await session.kernel.interrupt();
  await busy;
});

Deno.test("Kernel() counts the cursor in characters, also after an emoji", async () => {
  await using session = await Session.start({ check: true });
  const code = "const s = '🔭🔭'; Math.floo";
  const { matches, cursor_start, cursor_end } = await session.ask(
    "complete_request",
    { code, cursor_pos: [...code].length },
  );
  deepEqual(matches, ["floor"]);
  deepEqual([cursor_start, cursor_end], [
    [...code].length - 4,
    [...code].length,
  ]);
});

Deno.test("Kernel() runs code with text outside ASCII and gives it back", async () => {
  await using session = await Session.start({ check: true });
  const { value, printed } = await session.run(
    "const Öse = 'R ≈ 2520 mm 🔭'; console.log(Öse); Öse",
  );
  equal(value, '"R ≈ 2520 mm 🔭"');
  equal(printed, "R ≈ 2520 mm 🔭\n");
  const { error } = await session.run("'🔭'; const x: string = 5");
  match(error!.evalue, /line 1, column 13/); // the emoji is two UTF-16 units
});

Deno.test("Kernel() answers history by tail, range and search", async () => {
  await using session = await Session.start();
  for (const code of ["1 + 1", "2", "1 + 1"]) await session.run(code);
  const ask = async (content: Record<string, unknown>) =>
    (await session.ask("history_request", content)).history;
  deepEqual(await ask({ hist_access_type: "tail", n: 2, output: true }), [
    [1, 2, ["2", "2"]],
    [1, 3, ["1 + 1", "2"]],
  ]);
});

Deno.test("Kernel() tells whether code is complete, and who it is", async () => {
  await using session = await Session.start();
  deepEqual(await session.ask("is_complete_request", { code: "if (a) {" }), {
    status: "incomplete",
    indent: "  ",
  });
  const info = session.kernel.info as Record<string, unknown>;
  equal(info.implementation, "sagbook");
  equal(info.protocol_version, "5.3");
  equal(
    (info.language_info as { file_extension: string }).file_extension,
    ".ts",
  );
  equal("debugger" in info, false);
});

Deno.test("Kernel() answers what it does not know with an error, and is not silent", async () => {
  await using session = await Session.start();
  const { client } = session.kernel;
  const { content, header } = await client.request("control", "debug_request", {
    command: "initialize",
  });
  equal(header.msg_type, "debug_reply");
  equal(content.status, "error");
  equal(
    content.evalue,
    'Cannot answer the message as its type must be known here: current value is "debug_request"',
  );
});

Deno.test("Kernel() answers the heartbeat and who it is while a cell blocks the evaluator", async () => {
  await using session = await Session.start();
  const busy = session.run("while (true);");
  await pause(200);
  const { client } = session.kernel;
  const { content } = await client.request(
    "control",
    "kernel_info_request",
    {},
  );
  equal(content.status, "ok");
  await session.kernel.interrupt();
  await busy;
});
