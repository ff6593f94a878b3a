import { deepEqual, equal, match, ok } from "node:assert/strict";
import { runTool, type Tool } from "sagbook/tasks/_tool.ts";
import { readFlags } from "sagbook/tasks/_read_flags.ts";
import { ROOT } from "./_run_task.ts";

type TaskLine = string | { readonly command?: string };

const config = JSON.parse(Deno.readTextFileSync(`${ROOT}deno.json`));
const commands = Object.entries(config.tasks as Record<string, TaskLine>)
  .map(([name, line]) =>
    [name, typeof line === "string" ? line : line.command ?? ""] as const
  );
const FILE = /^deno run -A (lib\/tasks\/\w+\.ts)$/;
const files = commands.flatMap(([name, command]) => {
  const file = FILE.exec(command)?.[1];
  return file === undefined ? [] : [[name, file] as const];
});

/** Runs a task that may not write, start a program or reach the network. */
async function harmless(file: string, ...args: string[]) {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: [
      "run",
      "--no-prompt",
      "--cached-only",
      ...["read", "env", "sys"].map((one) => `--allow-${one}`),
      ...["write", "run", "net", "ffi"].map((one) => `--deny-${one}`),
      file,
      ...args,
    ],
    cwd: ROOT,
    env: { NO_COLOR: "1" },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
  return { code, out: text(stdout), err: text(stderr) };
}

Deno.test("every task but the one that is the runtime's own has a file in lib/tasks", () => {
  deepEqual(
    commands.filter(([, command]) => !FILE.test(command)).map(([name]) => name),
    ["test"],
  );
});

Deno.test("every task says by --help how it is called, changes nothing and ends with 0", async () => {
  for (const [name, file] of files) {
    const { code, out, err } = await harmless(file, "--help");
    equal(`${name}: ${code} ${err}`, `${name}: 0 `);
    ok(out.startsWith(`deno task ${name}`), `${name}: ${out.slice(0, 80)}`);
    match(out, /--help +this text/, name);
    match(out, /Exit codes: /, name);
  }
});

Deno.test("every task names --help for --hlep in a few lines, changes nothing and ends with 2", async () => {
  for (const [name, file] of files) {
    const { code, out, err } = await harmless(file, "--hlep");
    equal(`${name}: ${code} ${out}`, `${name}: 2 `);
    match(err, /^There is no flag --hlep: did you mean --help\?/, name);
    ok(err.includes(`\n\ndeno task ${name}`), `${name}: how it is called`);
    ok(err.endsWith(`deno task ${name} --help says how.\n`), `${name}: ${err}`);
    // What is wrong must still be on a terminal of 24 lines.
    ok(err.split("\n").length < 20, `${name}: ${err}`);
  }
});

Deno.test("tools that take names refuse an unknown one, list those known and change nothing", async () => {
  const names = {
    bench: "kernel",
    "demo-data": "metric-250",
    goldens: "figures",
    study: "reml_coverage",
  };
  for (const [task, name] of Object.entries(names)) {
    const file = files.find(([one]) => one === task)![1];
    const { code, out, err } = await harmless(file, "no-such-name");
    equal(`${task}: ${code} ${out}`, `${task}: 2 `);
    const known = /Known: (.*)\.$/m.exec(err)?.[1].split(", ") ?? [];
    ok(known.includes(name), err);
    ok(known.every((one) => /^[a-z][\w.-]*$/.test(one)), known.join());
  }
});

Deno.test("a task that is not there is answered with those that are", async () => {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["task", "reprot"],
    cwd: ROOT,
    env: { NO_COLOR: "1" },
    stdout: "piped",
    stderr: "piped",
  }).output();
  const said = new TextDecoder().decode(stdout) +
    new TextDecoder().decode(stderr);
  equal(code, 1);
  match(said, /Task not found: reprot/);
  for (const [name] of commands) ok(said.includes(`- ${name}`), name);
});

function counted(tool: Omit<Tool, "run" | "usage">): {
  calls: string[][];
  run: (...args: string[]) => Promise<number>;
} {
  const calls: string[][] = [];
  return {
    calls,
    run: async (...args) => {
      const { log, error } = console;
      console.log = console.error = () => {};
      try {
        return await runTool({
          ...tool,
          usage: "usage",
          run: ({ chosen }) => {
            calls.push([...chosen]);
            return 0;
          },
        }, args);
      } finally {
        Object.assign(console, { log, error });
      }
    },
  };
}

Deno.test("runTool() does the work for a right call alone", async () => {
  const { calls, run } = counted({ flags: { quick: "switch" } });
  equal(await run("--help"), 0);
  equal(await run("-h"), 0);
  equal(await run("--hlep"), 2);
  equal(await run("word"), 2);
  deepEqual(calls, []);
  equal(await run("--quick"), 0);
  deepEqual(calls, [[]]);
});

Deno.test("runTool() chooses names by words, and all without one", async () => {
  const known = () => ["alpha", "alphabet", "beta"];
  const whole = counted({ names: { what: "letter", known } });
  equal(await whole.run("alpha"), 0);
  equal(await whole.run(), 0);
  equal(await whole.run("alph"), 2);
  deepEqual(whole.calls, [["alpha"], ["alpha", "alphabet", "beta"]]);
  const part = counted({ names: { what: "letter", known, part: true } });
  equal(await part.run("alph"), 0);
  equal(await part.run("alph", "gamma"), 2);
  equal(await part.run(""), 2);
  deepEqual(part.calls, [["alpha", "alphabet"]]);
});

Deno.test("runTool() ends with 1 and plain words when the work fails", async () => {
  const { error } = console;
  const said: string[] = [];
  console.error = (text: string) => said.push(text);
  try {
    const code = await runTool({
      usage: "usage",
      run: () => Promise.reject(new RangeError("no room")),
    }, []);
    equal(code, 1);
  } finally {
    console.error = error;
  }
  deepEqual(said, ["no room"]);
});

Deno.test("readFlags() takes -h for --help, and only where there is help", () => {
  deepEqual(readFlags(["-h"], { help: "switch" }).flags, { help: true });
  match(readFlags(["-h"], { out: "value" }).problem ?? "", /no flag -h/);
  deepEqual(readFlags(["-h"], { h: "switch" }).flags, { h: true });
});
