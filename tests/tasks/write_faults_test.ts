/** What a task that writes leaves when the disk, a key or another stops it. */
import { deepEqual, equal, match, ok } from "node:assert/strict";
import { canMount, contents, onDisk } from "../files/_disks.ts";
import { MARK, processesMarked } from "../protocol/_marked_processes.ts";
import { asUser, makeOdd, ODD_KINDS } from "./_odd_files.ts";
import { makeFolder, Recording, rowsOf } from "./_record_folder.ts";
import { copyPiece, ROOT, runTask } from "./_run_task.ts";

const DISC = ["--form", "concave", "--diameter", "210 mm"];
const POSIX = Deno.build.os !== "windows";

const command = (name: string, ...args: readonly string[]) => [
  Deno.execPath(),
  "run",
  "-A",
  "--no-prompt",
  `${ROOT}lib/tasks/${name}.ts`,
  ...args,
];

/** Runs a shell's line, the words after it as "$@". */
async function shell(line: string, words: readonly string[]) {
  const mark = crypto.randomUUID();
  const { code, stdout, stderr } = await new Deno.Command("bash", {
    args: ["-c", line, "bash", ...words],
    cwd: ROOT,
    env: { NO_COLOR: "1", [MARK]: mark },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  if (Deno.build.os === "linux") deepEqual(await processesMarked(mark), []);
  const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
  const err = text(stderr);
  ok(!/\n\s+at /.test(err), err);
  return { code, out: text(stdout), err };
}

const names = (folder: string) =>
  [...Deno.readDirSync(folder)].map(({ name }) => name).sort();

const remove = (path: string) => Deno.remove(path, { recursive: true });

/** An older kernel of this package, as it was installed. */
async function oldKernel(prefix: string): Promise<void> {
  const folder = `${prefix}/share/jupyter/kernels/sagbook`;
  await Deno.mkdir(folder, { recursive: true });
  const spec = { argv: ["old"], metadata: { sagbook: true } };
  await Deno.writeTextFile(`${folder}/kernel.json`, JSON.stringify(spec));
}

/** An older class, which cannot be mistaken for a new one. */
async function oldClass(folder: string): Promise<void> {
  for (const ending of ["html", "ipynb"]) {
    const file = `${folder}/teaching-the-geometry.${ending}`;
    await Deno.writeTextFile(file, "old");
  }
}

/** Tasks by what they are called with, in a folder on such a disk. */
const WRITERS: Record<string, {
  readonly args: (folder: string) => string[];
  readonly prepare?: (folder: string) => Promise<void>;
  /** Free room in kB, so that some of it fits. */
  readonly free: number;
}> = {
  "new in a new folder": { args: (at) => [`${at}/a/disc`, ...DISC], free: 12 },
  "new in a folder that is there": { args: (at) => [at, ...DISC], free: 12 },
  "exercise": {
    args: (at) => ["--seed", "1", "--students", "1", "--out", `${at}/class`],
    free: 16,
  },
  "teach": {
    args: (at) => ["--out", at, "--no-check"],
    prepare: oldClass,
    // Nothing fits, which is found before the class is run for long.
    free: 0,
  },
  "handout": {
    args: (at) => [`${ROOT}data/metric-250`, "--out", at],
    prepare: (at) => Deno.writeTextFile(`${at}/handout.html`, "old"),
    free: 16,
  },
  "kernel": {
    args: (at) => ["--prefix", at, "--no-check"],
    prepare: oldKernel,
    free: 0,
  },
};

for (const [title, { args, prepare, free }] of Object.entries(WRITERS)) {
  Deno.test({
    name:
      `task ${title} on a full or read-only disk leaves all that stood there and nothing new, exits with 1 and says what to do`,
    ignore: !canMount,
    fn: async () => {
      const folder = await Deno.makeTempDir();
      await prepare?.(folder);
      const before = await contents(folder);
      const [name] = title.split(" ");
      for (
        const [kind, words] of [
          ["full", /there is no space left on its disk .*Free some space/],
          ["read-only", /its disk is read-only .*(?:Nothing was|unchanged)/],
        ] as const
      ) {
        const { code, err, after } = await onDisk(
          kind,
          folder,
          command(name, ...args(folder)),
          { free, cwd: ROOT },
        );
        equal(code, 1, err);
        match(err, words);
        ok(!/\n\s+at /.test(err), err);
        deepEqual(await contents(after), before, kind);
        deepEqual(names(after), names(folder), kind);
        await remove(after);
      }
      await remove(folder);
    },
  });
}

Deno.test({
  name:
    "task report on a folder of pieces whose disk is full keeps the older page of all, and says so",
  ignore: !canMount,
  fn: async () => {
    const group = await Deno.makeTempDir();
    await Deno.rename(await copyPiece("coarse-display-180"), `${group}/disc`);
    await Deno.mkdir(`${group}/report`);
    await Deno.writeTextFile(`${group}/report/index.html`, "old");
    const { code, err, after } = await onDisk(
      "full",
      `${group}/report`,
      command("report", group, "--no-check"),
      { cwd: ROOT },
    );
    equal(code, 1, err);
    match(err, /Cannot write \S+index\.html as there is no space left/);
    deepEqual(await contents(after), { "index.html": "old" });
    await remove(after);
    await remove(group);
  },
});

Deno.test({
  name:
    "task record on a full disk holds what it cannot save, ends with 1 and writes the readings out to be noted down",
  ignore: !canMount,
  fn: async () => {
    const folder = await makeFolder();
    const one = command(
      "record",
      folder,
      "--zones",
      "centre",
      "--session",
      "S",
    );
    equal((await shell('echo 0.715 | "$@"', one)).code, 0);
    const before = await contents(folder);
    const { code, out, err, after } = await onDisk("full", folder, [
      "bash",
      "-c",
      // The last page of the file has room, and is filled with a line.
      'f="$1/readings.csv"; shift; n=$((4096 - $(stat -c %s "$f") % 4096)); ' +
      'printf "%0$((n - 1))d\\n" 0 >> "$f"; printf "0.716\\n0.717\\n" | "$@"',
      "bash",
      folder,
      ...one,
    ], { cwd: ROOT });
    equal(code, 1, out + err);
    match(out, /could not be saved: there is no room left on the disk|no room/);
    match(err, /NOT SAVED; write these down:\n.*0\.716/);
    const kept = (await contents(after))["readings.csv"];
    ok(kept.startsWith(before["readings.csv"]), kept);
    ok(!kept.includes("0.716") && kept.endsWith("0\n"), kept.slice(-90));
    await remove(after);
    await remove(folder);
  },
});

Deno.test("task record whose folder vanishes holds all readings of the run, and writes them out to be noted down", async () => {
  const folder = await makeFolder();
  const recording = new Recording(folder, ["--zones", "centre"]);
  await recording.until(/centre:\n$/);
  await recording.ask("0.715");
  await remove(folder);
  await recording.type("0.716");
  await recording.until(/the folder is gone.*\n.*NOT SAVED: /);
  const { code, out, err } = await recording.end();
  equal(code, 1, out + err);
  match(err, /NOT SAVED; write these down:\n.*0\.715.*\n.*0\.716/);
  await Deno.mkdir(folder);
  await remove(folder);
});

Deno.test({
  name:
    "tasks check, record and report refuse at once a pipe, a device, a folder, a loop and a dead link named readings.csv, and leave it",
  ignore: !POSIX,
  fn: async () => {
    for (const kind of ODD_KINDS) {
      const folder = await makeFolder();
      await makeOdd(kind, `${folder}/readings.csv`);
      await Deno.mkdir(`${folder}/report`);
      await Deno.writeTextFile(`${folder}/report/session.html`, "old");
      const tasks = [
        command("check", folder),
        command("record", folder, "--zones", "centre"),
        command("report", folder, "--no-check"),
      ];
      for (const task of tasks) {
        const { code, out, err } = await shell('echo 0.715 | "$@"', task);
        equal(code, 1, `${kind}: ${task.at(-1)}\n${out}${err}`);
        match(out + err, /readings\.csv/);
        match(out + err, /mend: |Rename it|Bring back|Take that link away/);
      }
      equal(await Deno.readTextFile(`${folder}/report/session.html`), "old");
      deepEqual(names(`${folder}/report`), ["session.html"]);
      ok(!(await Deno.lstat(`${folder}/readings.csv`)).isFile);
      await remove(folder);
    }
  },
});

Deno.test({
  name:
    "tasks check, report and kernel wait for no pipe named worklog.csv, piece.json, a notebook or deno.json",
  ignore: !POSIX,
  fn: async () => {
    const folder = await copyPiece("coarse-display-180");
    await makeOdd("pipe", `${folder}/worklog.csv`);
    const checked = await runTask("check", [folder]);
    equal(checked.code, 1);
    match(checked.out, /worklog\.csv: this is not an ordinary file/);
    await makeOdd("pipe", `${folder}/own.ipynb`);
    const notebook = ["--no-check", "--notebook", `${folder}/own.ipynb`];
    const own = await runTask("report", [folder, ...notebook]);
    equal(own.code, 1);
    match(own.err, /own\.ipynb as it must be an ordinary file: it is a pipe/);
    await makeOdd("pipe", `${folder}/piece.json`);
    equal((await runTask("report", [folder, "--no-check"])).code, 1);
    await remove(folder);
  },
});

Deno.test({
  name:
    "tasks report, record and new, where a file or folder is not the user's to read or write, say so, exit with 1 and change nothing",
  ignore: asUser === undefined,
  fn: async () => {
    const folder = await copyPiece("coarse-display-180");
    await Deno.mkdir(`${folder}/report`);
    await Deno.writeTextFile(`${folder}/report/session.html`, "old");
    const before = await contents(folder);
    const cases: [string, number, string[], RegExp][] = [
      ["readings.csv", 0, ["report", folder], /the file may not be read/],
      ["piece.json", 0, ["report", folder], /the file may not be read/],
      ["report", 0o555, ["report", folder], /you may not write there/],
      ["readings.csv", 0o444, ["record", folder], /may not be written to/],
      [".", 0o555, ["new", `${folder}/disc`, ...DISC], /you may not write/],
    ];
    for (const [file, mode, [name, ...args], words] of cases) {
      const path = `${folder}/${file}`;
      const old = (await Deno.stat(path)).mode! & 0o777;
      await Deno.chmod(path, mode);
      const { code, err } = await shell('echo 0.715 | "$@"', [
        ...asUser!,
        ...command(name, ...args),
      ]);
      await Deno.chmod(path, old);
      equal(code, 1, `${file}: ${err}`);
      match(err, words, file);
      deepEqual(await contents(folder), before, file);
    }
    await remove(folder);
  },
});

Deno.test("two tasks new with one name make one whole folder, and the other says that there is one", async () => {
  const folder = await Deno.makeTempDir();
  const runs = await Promise.all(
    [1, 2].map(() => runTask("new", [`${folder}/disc`, ...DISC])),
  );
  deepEqual(runs.map(({ code }) => code).sort(), [0, 1]);
  const { err } = runs.find(({ code }) => code === 1)!;
  match(err, /there is something|holds piece\.json|something of that name/);
  deepEqual(names(folder), ["disc"]);
  equal((await runTask("check", [`${folder}/disc`])).code, 0);
  await remove(folder);
});

Deno.test("two tasks record on one file lose no line of each other, also where both take readings back, and a report meanwhile reads whole lines", async () => {
  const folder = await makeFolder();
  const begin = (session: string) =>
    new Recording(folder, ["--zones", "centre", "--session", session]);
  const [one, other] = [begin("S1"), begin("S2")];
  await Promise.all([one.until(/centre:\n$/), other.until(/centre:\n$/)]);
  const typed = (tens: number) =>
    Array.from({ length: 60 }, (_, k) => {
      const value = (0.7 + (tens + k) / 100_000).toFixed(5);
      return k % 5 === 4 ? `${value}\n-` : value;
    });
  const feed = async (recording: Recording, lines: string[]) => {
    for (const line of lines) await recording.type(line);
    return await recording.end();
  };
  const [first, second, report] = await Promise.all([
    feed(one, typed(0)),
    feed(other, typed(1000)),
    runTask("report", [folder, "--no-check"]),
  ]);
  equal(first.code + second.code, 0, first.err + second.err);
  equal(report.code, 0, report.err);
  const rows = await rowsOf(folder);
  for (const session of ["S1", "S2"]) {
    const own = rows.filter((row) => row.session === session);
    const tens = session === "S1" ? 0 : 1000;
    deepEqual(
      own.map(({ reading, withdrawn }) =>
        withdrawn === "x" ? `${reading}\n-` : reading
      ),
      typed(tens),
    );
  }
  deepEqual(names(folder), [
    "bench.json",
    "piece.json",
    "readings.csv",
    "report",
  ]);
  await remove(folder);
});

Deno.test({
  name:
    "tasks exercise and teach, stopped or killed in any phase, leave nothing half made, no process, and the older class whole",
  ignore: Deno.build.os !== "linux",
  fn: async () => {
    const folder = await Deno.makeTempDir();
    await Deno.mkdir(`${folder}/old`);
    await oldClass(`${folder}/old`);
    const before = await contents(folder);
    const temporary = await Deno.makeTempDir();
    const tasks = [
      ["exercise", ["--seed", "1", "--students", "60", "--out", `${folder}/a`]],
      ["teach", ["--out", `${folder}/old`, "--no-check"]],
    ] as const;
    for (const [name, args] of tasks) {
      for (
        const [signal, wait] of [
          ["SIGINT", 600],
          ["SIGTERM", 1200],
          ["SIGKILL", 900],
        ] as const
      ) {
        const mark = crypto.randomUUID();
        const [program, ...words] = command(name, ...args);
        const child = new Deno.Command(program, {
          args: words,
          cwd: ROOT,
          env: { NO_COLOR: "1", TMPDIR: temporary, [MARK]: mark },
          detached: true,
          stdin: "null",
          stdout: "null",
          stderr: "piped",
        }).spawn();
        await new Promise((done) => setTimeout(done, wait));
        const whom = signal === "SIGINT" ? -child.pid : child.pid;
        Deno.kill(whom, signal);
        const { code, stderr } = await child.output();
        const said = new TextDecoder().decode(stderr);
        const place = `${name} ${signal}: ${code} ${said}`;
        // A slow machine may not have come to listen yet.
        const fits = signal === "SIGKILL" ? [137] : [130, 143];
        ok(fits.includes(code), place);
        if (code === 130 && said !== "") {
          match(said, /stopped; nothing was written/, place);
        }
        ok(!/\n\s+at /.test(said), place);
        deepEqual(await processesMarked(mark), [], place);
        const now = await contents(folder);
        for (const left of Object.keys(now)) {
          if (!(left in before)) {
            match(left, /^\.[0-9a-f]{4}-\d+\..*\.making\//);
          }
        }
        for (const [path, text] of Object.entries(before)) {
          equal(now[path], text, place);
        }
      }
    }
    // What the killed one had to leave goes with the next.
    const made = await runTask("exercise", [
      ...["--seed", "1", "--students", "1", "--out", `${folder}/b`],
    ]);
    equal(made.code, 0, made.err);
    deepEqual(names(folder), ["b", "old"]);
    await remove(folder);
    await remove(temporary);
  },
});

Deno.test({
  name:
    "tasks go on where nobody reads what they say, and where it cannot be written say so with 1, their files whole",
  ignore: !POSIX,
  fn: async () => {
    const folder = await copyPiece("coarse-display-180");
    const piped = await shell(
      '"$@" | head -c 1; exit ${PIPESTATUS[0]}',
      command("report", folder, "--no-check"),
    );
    equal(piped.code, 0, piped.err);
    match(
      await Deno.readTextFile(`${folder}/report/session.html`),
      /<\/html>\s*$/,
    );
    for (const closed of ["<&-", ">&-", "<&- >&- 2>&-"]) {
      equal((await shell(`"$@" ${closed}`, command("check", folder))).code, 0);
    }
    if (Deno.build.os === "linux") {
      const tasks = [
        command("new", `${folder}/disc`, ...DISC),
        command("check", folder),
      ];
      for (const task of tasks) {
        const { code, err } = await shell('"$@" >/dev/full', task);
        equal(code, 1);
        match(err, /^Cannot say more as the standard output takes no more: No/);
        equal((await shell('"$@" >/dev/full 2>&1', task)).code, 1);
      }
      equal((await runTask("check", [`${folder}/disc`])).code, 0);
    }
    await remove(folder);
  },
});

Deno.test({
  name:
    "task report runs under a temporary folder whose path is too long for a socket, and where there is none says what to set",
  ignore: !POSIX,
  fn: async () => {
    const folder = await copyPiece("coarse-display-180");
    const root = await Deno.makeTempDir();
    const long = `${root}/${"x".repeat(90)}/${"y".repeat(90)}`;
    await Deno.mkdir(long, { recursive: true });
    const args = [folder, "--no-check"];
    const made = await runTask("report", args, { TMPDIR: long });
    equal(made.code, 0, made.err);
    deepEqual(names(long), []);
    const none = { TMPDIR: `${root}/none` };
    const refused = await runTask("report", args, none);
    equal(refused.code, 1);
    match(
      refused.err,
      /^Cannot make a temporary folder as TMPDIR must name a folder that can be written: .* Set TMPDIR to a folder of yours/m,
    );
    const kernel = await runTask("kernel", ["--prefix", root], none);
    equal(kernel.code, 1);
    match(kernel.err, /^Cannot make a temporary folder as TMPDIR/m);
    await remove(folder);
    await remove(root);
  },
});

Deno.test({
  name:
    "task record whose reader has gone keeps what it has answered, and ends with 1",
  ignore: !POSIX,
  fn: async () => {
    const folder = await makeFolder();
    const { code, err } = await shell(
      '(echo 0.715; sleep 2; echo 0.716; echo 0.717) | "$@" | head -n 3 >/dev/null; exit ${PIPESTATUS[1]}',
      command("record", folder, "--zones", "centre"),
    );
    equal(code, 1, err);
    match(err, /can be read by nobody any more, so recording has ended/);
    const rows = await rowsOf(folder);
    equal(rows[0].reading, "0.715");
    ok(rows.length < 3);
    await remove(folder);
  },
});

Deno.test({
  name:
    "tasks new, check, record and report take a folder whose name has quotes, blanks, a line end, %, #, ?, a dash in front, a point behind and letters of two parts",
  ignore: !POSIX,
  fn: async () => {
    const above = await Deno.makeTempDir();
    const name = '- it\'s "100%41" #1?\n<b>cafe\u0301 \\ ${x} `y`.';
    const folder = `${above}/${name}`;
    const made = await runTask("new", [
      folder,
      ...DISC,
      "--ring-radius=60",
      "--ball-diameter=6",
    ]);
    equal(made.code, 0, made.err);
    // The command that comes next can be copied: a shell reads it as one word.
    const next = /deno task check ([\s\S]*)\n$/.exec(made.out)![1];
    equal((await shell(`printf %s ${next}`, [])).out, folder);
    const { code, err } = await shell(
      'printf "0.715\\n0.714\\n0.713\\n" | "$@"',
      command("record", folder, "--zones", "centre,edge", "--foot", "foot out"),
    );
    equal(code, 0, err);
    equal((await runTask("check", [folder])).code, 0);
    const report = await runTask("report", [above, "--no-check"]);
    equal(report.code, 0, report.err);
    const page = await Deno.readTextFile(`${above}/report/index.html`);
    const [, address] = /<h2><a href="([^"]*)"/.exec(page)!;
    const found = new URL(
      address.replaceAll("&#39;", "'"),
      `file://${above}/report/`,
    );
    match(await Deno.readTextFile(found), /<\/html>\s*$/);
    deepEqual(names(above), [name, "report"]);
    await remove(above);
  },
});
