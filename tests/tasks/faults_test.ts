import { deepEqual, equal, match, ok } from "node:assert/strict";
import { canMount, contents, onDisk } from "../files/_disks.ts";
import { MARK, processesMarked } from "../protocol/_marked_processes.ts";
import { copyPiece, ROOT, runTask } from "./_run_task.ts";

const TASKS = {
  report: ["coarse-display-180"],
  gauge: ["gauge-study"],
  plan: ["gauge-study"],
  history: ["history-300"],
  focal: ["history-300", "--shop", `${ROOT}data/shop-twelve`],
} as const;

const command = (name: string, args: readonly string[]) => [
  Deno.execPath(),
  "run",
  "-A",
  "--no-prompt",
  `${ROOT}lib/tasks/${name}.ts`,
  ...args,
];

/** A report that cannot be mistaken for a new one. */
async function oldReport(folder: string): Promise<void> {
  await Deno.mkdir(`${folder}/report`, { recursive: true });
  for (const name of Object.keys(TASKS)) {
    const file = name === "report" ? "session" : name;
    const results = name === "report" ? "results" : name;
    for (const one of [`${file}.html`, `${file}.ipynb`, `${results}.json`]) {
      await Deno.writeTextFile(`${folder}/report/${one}`, `old ${one}`);
    }
  }
}

for (const [name, [piece, ...flags]] of Object.entries(TASKS)) {
  Deno.test({
    name:
      `task ${name} on a full or read-only disk leaves the old report whole, exits with 1 and says what to do`,
    ignore: !canMount,
    fn: async () => {
      const folder = await copyPiece(piece);
      await oldReport(folder);
      const before = await contents(folder);
      for (
        const [kind, words] of [
          [
            "full",
            /no space left[^\n]*\. What stood there before is unchanged/,
          ],
          ["read-only", /Cannot write the report as [^\n]*Nothing was changed/],
        ] as const
      ) {
        const { code, err, after } = await onDisk(
          kind,
          folder,
          command(name, [folder, "--no-check", ...flags]),
          // Enough to begin with, and too little for the report.
          { free: 80, cwd: ROOT },
        );
        equal(code, 1, err);
        match(err, words);
        ok(!/\n\s+at /.test(err), err);
        deepEqual(await contents(after), before);
        await Deno.remove(after, { recursive: true });
      }
      await Deno.remove(folder, { recursive: true });
    },
  });
}

/** Starts a report in a process group of its own, with its own temporary folder. */
function startReport(folder: string, temporary: string, mark: string) {
  const [program, ...args] = command("report", [folder, "--no-check"]);
  return new Deno.Command(program, {
    args,
    cwd: ROOT,
    env: { NO_COLOR: "1", TMPDIR: temporary, [MARK]: mark },
    detached: true,
    stdin: "null",
    stdout: "null",
    stderr: "piped",
  }).spawn();
}

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

Deno.test("task report whose folder vanishes in mid-run says so, exits with 1 and makes no new folder", async () => {
  for (const wait of [250, 700]) {
    const folder = await copyPiece("coarse-display-180");
    const temporary = await Deno.makeTempDir();
    const child = startReport(folder, temporary, "none");
    await pause(wait);
    await Deno.rename(folder, `${folder}-gone`);
    const { code, stderr } = await child.output();
    const err = new TextDecoder().decode(stderr);
    ok(code === 1 || code === 0, `${wait} ms: ${code} ${err}`);
    if (code === 1) match(err, /not there|no report|cannot|Cannot/);
    ok(!/\n\s+at /.test(err), err);
    deepEqual(
      await Deno.stat(folder).then(() => "there", () => "not there"),
      "not there",
    );
    await Deno.remove(`${folder}-gone`, { recursive: true });
    await Deno.remove(temporary, { recursive: true });
  }
});

Deno.test("task report run twice at once on one folder leaves one whole report", async () => {
  const folder = await copyPiece("coarse-display-180");
  const runs = await Promise.all([
    runTask("report", [folder, "--no-check"]),
    runTask("report", [folder, "--no-check"]),
  ]);
  for (const { code, err } of runs) equal(code, 0, err);
  const after = await contents(`${folder}/report`);
  deepEqual(Object.keys(after).sort(), [
    "results.json",
    "session.html",
    "session.ipynb",
  ]);
  match(after["session.html"], /<\/html>\s*$/);
  JSON.parse(after["results.json"]);
  JSON.parse(after["session.ipynb"]);
  await Deno.remove(folder, { recursive: true });
});

Deno.test({
  name:
    "task report, interrupted, told to end or killed in any phase, leaves a whole report, no process and no folder",
  ignore: Deno.build.os !== "linux",
  fn: async () => {
    const folder = await copyPiece("coarse-display-180");
    equal((await runTask("report", [folder, "--no-check"])).code, 0);
    const old = await contents(`${folder}/report`);
    const temporary = await Deno.makeTempDir();
    for (const signal of ["SIGINT", "SIGTERM", "SIGKILL"] as const) {
      for (const wait of [30, 120, 250, 450, 700]) {
        const mark = crypto.randomUUID();
        const child = startReport(folder, temporary, mark);
        await pause(wait);
        try {
          // A terminal's key goes to the whole group.
          Deno.kill(signal === "SIGINT" ? -child.pid : child.pid, signal);
        } catch {
          // It had ended.
        }
        const { code, stderr } = await child.output();
        const said = new TextDecoder().decode(stderr);
        const place = `${signal} after ${wait} ms: ${code} ${said}`;
        const fits = signal === "SIGKILL" ? [0, 137] : [0, 130, 143];
        ok(fits.includes(code), place);
        ok(!/\n\s+at /.test(said), place);
        deepEqual(await processesMarked(mark), [], place);
        for (const [name, text] of Object.entries(old)) {
          const now = await Deno.readTextFile(`${folder}/report/${name}`);
          ok(
            now === text ||
              name.endsWith(".html") && /<\/html>\s*$/.test(now) ||
              name.endsWith("b") && JSON.parse(now) ||
              name.endsWith("n") && JSON.parse(now),
            `${place}: ${name}`,
          );
        }
      }
    }
    // What killed runs had to leave is taken away by the next.
    const last = startReport(folder, temporary, "none");
    equal((await last.output()).code, 0);
    const ours = [...Deno.readDirSync(temporary)].map(({ name }) => name);
    deepEqual(ours.filter((name) => name.startsWith("sagbook-")), []);
    deepEqual(
      Object.keys(await contents(`${folder}/report`)).sort(),
      Object.keys(old).sort(),
    );
    await Deno.remove(temporary, { recursive: true });
    await Deno.remove(folder, { recursive: true });
  },
});
