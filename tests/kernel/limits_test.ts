import { deepEqual, equal, match } from "node:assert/strict";
import { isAllowed } from "../../lib/kernel/permission_broker.ts";
import { Session } from "./_session.ts";

Deno.test("isAllowed() grants what is named and what lies below it, and nothing else", async () => {
  const folder = await Deno.realPath(await Deno.makeTempDir());
  await Deno.symlink("/etc", `${folder}/link`);
  const limits = {
    read: [folder],
    net: ["example.org", "h:80"],
    env: true,
    run: ["git"],
  } as const;
  const cases = [
    ["read", folder, true],
    ["read", `${folder}/a/b.csv`, true],
    ["read", `${folder}x`, false],
    ["read", `${folder}/../other`, false],
    ["read", `${folder}/link/hostname`, false],
    ["read", null, false],
    ["write", folder, false],
    ["net", "example.org:443", true],
    ["net", "h:80", true],
    ["net", "h:81", false],
    ["env", "HOME", true],
    ["env", null, true],
    ["run", "git", true],
    ["run", "sh", false],
    ["ffi", "x", false],
  ] as const;
  for (const [permission, value, expected] of cases) {
    equal(
      isAllowed(limits, permission, value),
      expected,
      `${permission} ${value}`,
    );
  }
  await Deno.remove(folder, { recursive: true });
});

Deno.test("Kernel() lets a notebook do no more than it was granted, and its own work all the same", async () => {
  if (Deno.build.os === "windows") return;
  const folder = await Deno.realPath(await Deno.makeTempDir());
  await Deno.writeTextFile(`${folder}/readings.csv`, "0.715");
  await Deno.writeTextFile(`${folder}/own.ts`, "export const ring = 60;");
  {
    await using session = await Session.start({
      check: true,
      folder,
      limits: { read: [folder], write: [`${folder}/report`] },
    });
    const granted = await session.run(`
      import { ring } from "./own.ts";
      import { millimetres } from "sagbook/units/length.ts";
      Deno.mkdirSync("report"); Deno.writeTextFileSync("report/x", "1");
      [ring, millimetres(Number(Deno.readTextFileSync("readings.csv")))]`);
    equal(granted.value, "[ 60, 0.715 ]", `${granted.error?.evalue}`);
    const refused = {
      "Deno.readTextFileSync('/etc/hostname')": /not allowed to read/,
      "Deno.writeTextFileSync('x', '')": /not allowed to write/,
      "new Deno.Command('true').outputSync()": /not allowed to run/,
      "await fetch('http://127.0.0.1:8123')": /not allowed to reach/,
      "await Deno.connect({ hostname: 'example.org', port: 80 })":
        /not allowed to reach/,
      "Deno.env.get('PATH')": /not allowed to use the variable/,
      "Deno.hostname()": /not allowed to ask the system/,
      "Deno.symlinkSync('/etc', 'report/etc')": /not allowed/,
    };
    for (const [code, words] of Object.entries(refused)) {
      match((await session.run(code)).error!.evalue, words, code);
    }
    const { result } = await session.interrupted("while (true);");
    equal(result.error?.ename, "Interrupted");
    equal((await session.run("ring")).value, "60");
  }
  deepEqual([...Deno.readDirSync(folder)].map(({ name }) => name).sort(), [
    "own.ts",
    "readings.csv",
    "report",
  ]);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("Kernel() outlives messages that a cell forges in the host's name, and its own changes to what all code shares", async () => {
  await using session = await Session.start();
  const { pid } = session.kernel;
  const send = (mime: string, value: string) =>
    `await Deno.jupyter.broadcast("display_data", { data: { "application/vnd.sagbook.${mime}+json": ${value} }, metadata: {}, transient: {} })`;
  const forged = [
    ...["5", "[]", "{}", '{ cell: "x" }', "{ cell: 1, error: null }"].flatMap(
      (value) => [send("outcome", value), send("uncaught", value)],
    ),
    send("uncaught", "{ error: { name: {}, message: [], stack: 5 } }"),
    'await Deno.jupyter.broadcast("stream", { name: 5, text: {} })',
    'await Deno.jupyter.broadcast("display_data", { data: 5 })',
    'await Deno.jupyter.broadcast("comm_open", { comm_id: 5 })',
    "Map.prototype.get = () => { throw 5; };",
    'Object.prototype.status = "ok"; Object.prototype.cell = 1;',
    'JSON.stringify = () => "{}"; queueMicrotask = () => {}; setTimeout = () => {};',
  ];
  for (const code of forged) await session.run(code);
  const own = "+import.meta.url.match(/cell-(\\d+)/)[1]";
  for (
    const outcome of [
      '{ status: "ok", assigned: 5, pages: "x", expressions: 7, data: 9 }',
      '{ status: "error", error: 5 }',
      '{ status: "huh" }',
    ]
  ) await session.run(send("outcome", `{ cell: ${own}, ...${outcome} }`));
  equal((await session.run("6 * 7")).value, "42");
  equal(session.kernel.pid, pid);
});
