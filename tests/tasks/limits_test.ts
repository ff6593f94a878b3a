import { deepEqual, equal, match, ok } from "node:assert/strict";
import { formatNotebook } from "sagbook/notebook/format_notebook.ts";
import { parseNotebook } from "sagbook/notebook/parse_notebook.ts";
import type { CodeCell } from "sagbook/notebook/mod.ts";
import { copyPiece, ROOT, runTask } from "./_run_task.ts";

/** A stranger's notebook: a parameters cell, then these, as they stand. */
async function strangers(
  folder: string,
  sources: readonly string[],
  tags: readonly string[] = [],
): Promise<string> {
  const cell = (source: string, at: number): CodeCell => ({
    cell_type: "code",
    id: `c${at}`,
    metadata: at === 0 ? { tags: ["parameters"] } : { tags: [...tags] },
    source,
    execution_count: null,
    outputs: [],
  });
  const path = `${folder}/stranger.ipynb`;
  const cells = ['const folder = "";', ...sources].map(cell);
  await Deno.writeTextFile(path, formatNotebook({ metadata: {}, cells }));
  return path;
}

/** Values and errors of the cells as run, after parameters and injected ones. */
async function answers(folder: string): Promise<string[]> {
  const path = `${folder}/report/session.ipynb`;
  const text = await Deno.readTextFile(path);
  const { notebook } = await parseNotebook(text, path);
  return notebook.cells.slice(2).map((cell) => {
    const [output] = (cell as CodeCell).outputs.slice(-1);
    if (output?.output_type === "error") return output.evalue;
    return output !== undefined && "data" in output
      ? String(output.data["text/plain"])
      : "";
  });
}

/** Counts who connects. */
function listener() {
  const server = Deno.listen({ hostname: "127.0.0.1", port: 0 });
  const seen: string[] = [];
  const done = (async () => {
    for await (const connection of server) {
      const chunk = new Uint8Array(4096);
      const count = await connection.read(chunk).catch(() => null);
      seen.push(new TextDecoder().decode(chunk.subarray(0, count ?? 0)));
      connection.close();
    }
  })().catch(() => {});
  return {
    port: server.addr.port,
    seen,
    async close() {
      server.close();
      await done;
    },
  };
}

const NO_WORKER = /not allowed to start a worker \(that needs --allow-all\)/;

const POSIX = Deno.build.os !== "windows";

Deno.test("task report refuses network, environment, program, write and foreign read, each with its cell, and does none of it", async () => {
  const folder = await copyPiece("coarse-display-180");
  const outside = await Deno.makeTempDir();
  const secret = `${outside}/secret.txt`;
  await Deno.writeTextFile(secret, "hidden words");
  const { port, seen, close } = listener();
  const tries: [string, RegExp][] = [
    [`await fetch("http://127.0.0.1:${port}/");`, /not allowed to reach/],
    ['Deno.env.get("HOME");', /not allowed to use the variable HOME/],
    [
      `await new Deno.Command("touch", { args: ["${outside}/ran"] }).output();`,
      /not allowed to run/,
    ],
    [
      `await Deno.writeTextFile("${outside}/written", "");`,
      /not allowed to write/,
    ],
    [
      'await Deno.writeTextFile(`${folder}/readings.csv`, "gone");',
      /not allowed to write/,
    ],
    [`await Deno.readTextFile("${secret}");`, /not allowed to read/],
  ];
  const before = await Deno.readTextFile(`${folder}/readings.csv`);
  for (const [source, words] of tries) {
    const notebook = await strangers(folder, ["const harmless = 1;", source]);
    const { code, err, out } = await runTask("report", [
      folder,
      "--no-check",
      "--notebook",
      notebook,
    ]);
    equal(code, 1, `${source}\n${err}`);
    const said = err.split("\n").find((line) => line.startsWith("cell "));
    match(said ?? err, /^cell 3, line 1: NotCapable: /, source);
    match(said!, words);
    match(out, /Incomplete page/);
    const page = await Deno.readTextFile(`${folder}/report/session.html`);
    match(page, /cell 3, line 1: NotCapable/, source);
  }
  await close();
  equal(seen.length, 0, seen.join());
  deepEqual([...Deno.readDirSync(outside)].map(({ name }) => name), [
    "secret.txt",
  ]);
  equal(await Deno.readTextFile(`${folder}/readings.csv`), before);
  await Deno.remove(outside, { recursive: true });
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report leaves a notebook no side door: workers, require, packages, stores, native code, its own permissions", async () => {
  if (!POSIX) return;
  const folder = await copyPiece("coarse-display-180");
  const outside = await Deno.makeTempDir();
  await Deno.writeTextFile(`${outside}/secret.json`, '{"word":"hidden"}');
  await Deno.symlink(outside, `${folder}/link`);
  const tries: [string, RegExp][] = [
    // A worker's world is a new one, with doors of its own.
    ['new Worker("data:text/javascript,1", { type: "module" })', NO_WORKER],
    [
      'new Worker("data:text/javascript,1", { type: "module", deno: { permissions: { read: true } } });',
      NO_WORKER,
    ],
    [
      'new (Object.getPrototypeOf(Worker))("data:,", { type: "module" })',
      /not a constructor/,
    ],
    [
      'import { Worker as Thread } from "node:worker_threads"; new Thread("1", { eval: true })',
      NO_WORKER,
    ],
    [
      'const { Worker: W } = process.getBuiltinModule("worker_threads"); new W("1", { eval: true })',
      NO_WORKER,
    ],
    [
      `import module from "node:module"; module.createRequire("file:///x.js")("${outside}/secret.json")`,
      /not allowed to read/,
    ],
    [
      `await import("${outside}/secret.json", { with: { type: "json" } })`,
      /not allowed to read/,
    ],
    ["Deno.readTextFileSync(`${folder}/link/secret.json`)", /not allowed to/],
    ['Deno.readTextFileSync("/proc/self/environ")', /not allowed to read/],
    ['Deno.readTextFileSync("/etc/passwd")', /not allowed to read/],
    ['await (await fetch("file:///etc/passwd")).text()', /not allowed to read/],
    // The project's own folder may hold more than the project.
    [`Deno.readTextFileSync("${ROOT}.git/config")`, /not allowed to read/],
    [`[...Deno.readDirSync("${ROOT}")]`, /not allowed to read/],
    [
      'import vm from "node:vm"; vm.runInNewContext("this.constructor.constructor(\'return Deno\')()").readTextFileSync("/etc/passwd")',
      /not allowed to read/,
    ],
    [
      'await import(URL.createObjectURL(new Blob(["Deno.readTextFileSync(\'/etc/passwd\')"], { type: "text/javascript" })))',
      /not allowed to read/,
    ],
    [
      'import { WASI } from "node:wasi"; new WASI({ version: "preview1", preopens: { "/": folder } }).getImportObject(); await new Promise((done) => setTimeout(done, 50))',
      /not allowed to write|^$/,
    ],
    [
      'await import("https://example.org/module.ts")',
      /not allowed to import from example\.org/,
    ],
    ['await import("npm:is-thirteen@2.0.0")', /not allowed to fetch npm:/],
    [
      'import { createConnection } from "node:net"; await new Promise((_, fail) => createConnection(80, "127.0.0.1").on("error", fail))',
      /not allowed to reach/,
    ],
    ['await Deno.resolveDns("example.org", "A")', /not allowed to reach/],
    ["Deno.listen({ port: 0 })", /not allowed to reach/],
    [
      'import { execSync } from "node:child_process"; execSync("id")',
      /not allowed to/,
    ],
    ['Deno.kill(Deno.ppid, "SIGTERM")', /not allowed to run/],
    ['Deno.dlopen("libc.so.6", {})', /not allowed to load/],
    ["process.env.HOME", /not allowed to use the variable/],
    ["process.report.getReport()", /not allowed to ask the system/],
    [
      'import * as inspector from "node:inspector"; inspector.open(9229)',
      /not allowed to ask the system for inspector/,
    ],
    ['new WebSocket("ws://127.0.0.1:9/")', /not allowed to reach/],
    [
      'let seen = "nothing"; Deno.test({ name: "t", permissions: { read: true }, fn: () => { seen = Deno.readTextFileSync("/etc/passwd"); } }); await new Promise((done) => setTimeout(done, 200)); seen',
      /^"?nothing"?$/,
    ],
    ["Deno.env.toObject()", /not allowed to use the variable/],
    ["Object.keys(process.env).length", /^0$/],
    ["Deno.hostname()", /not allowed to ask the system for hostname/],
    ['localStorage.setItem("a", "b")', /not allowed to keep anything/],
    ['await caches.open("a")', /not allowed to keep anything/],
    ["typeof CacheStorage + typeof Storage", /^"undefinedundefined"$/],
    ["await Deno.makeTempFile()", /not allowed to write/],
    [
      'import { DatabaseSync } from "node:sqlite"; new DatabaseSync(`${folder}/x.db`)',
      /not allowed to write|not allowed to read/,
    ],
    [`Deno.symlinkSync("/etc", "${outside}/etc")`, /not allowed to/],
    [
      '(await Deno.permissions.request({ name: "read" })).state',
      /^"?denied"?$/,
    ],
    ['(await Deno.permissions.query({ name: "net" })).state', /^"?prompt"?$/],
  ];
  const notebook = await strangers(
    folder,
    tries.map(([source]) => source),
    ["raises-exception"],
  );
  await runTask("report", [folder, "--no-check", "--notebook", notebook]);
  const given = await answers(folder);
  for (const [at, [source, words]] of tries.entries()) {
    match(given[at], words, source);
  }
  deepEqual([...Deno.readDirSync(outside)].map(({ name }) => name), [
    "secret.json",
  ]);
  await Deno.remove(outside, { recursive: true });
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report lets a notebook change neither rights nor owner nor times of a file it may read, by whatever name it finds the function", async () => {
  if (!POSIX) return;
  const folder = await copyPiece("coarse-display-180");
  const file = `${folder}/readings.csv`;
  // A stranger's folder may bring settings of its own for finding modules.
  await Deno.writeTextFile(
    `${folder}/deno.json`,
    JSON.stringify({
      imports: { alias: "node:fs", "node:fs": "node:fs", fs: "node:fs" },
      scopes: { "data:": { "node:fs": "node:fs" } },
    }),
  );
  await Deno.writeTextFile(`${folder}/m.mjs`, 'export * from "node:fs";');
  const use = (fs: string) =>
    `const fs_ = await (async () => ${fs})(); fs_.fchmodSync(fs_.openSync(\`\${folder}/readings.csv\`, "r"), 0)`
      .replaceAll("fs_", `fs_${crypto.randomUUID().slice(0, 8)}`);
  const tries = [
    use('await import("node:fs")'),
    use('await import("alias")'),
    use("await import(\"data:text/javascript,export * from 'node:fs'\")"),
    use("await import(\"data:text/javascript,export * from 'fs'\")"),
    use('await import("./m.mjs")'),
    use('process.getBuiltinModule("fs")'),
    use('(await import("node:module")).createRequire("file:///x.js")("fs")'),
    use("eval(\"import('node:fs')\")"),
    'import { futimesSync, openSync } from "node:fs"; futimesSync(openSync(`${folder}/readings.csv`), 0, 0)',
    'import { fchownSync, openSync as open } from "node:fs"; fchownSync(open(`${folder}/readings.csv`), 1, 1)',
    'import files from "node:fs/promises"; const handle = await files.open(`${folder}/readings.csv`); await handle.chmod(0)',
    "await handle.utimes(0, 0)",
    "await handle.chown(1, 1)",
    "await handle.constructor.prototype.chmod.call(handle, 0)",
    "Deno.utimeSync(`${folder}/readings.csv`, 0, 0)",
    "Deno.chmodSync(`${folder}/readings.csv`, 0)",
  ];
  const notebook = await strangers(folder, tries, ["raises-exception"]);
  const { mode, uid, mtime } = await Deno.stat(file);
  await runTask("report", [folder, "--no-check", "--notebook", notebook]);
  for (const [at, answer] of (await answers(folder)).entries()) {
    match(
      answer,
      /not allowed to (?:change the rights or times of a file|write)/,
      tries[at],
    );
  }
  const after = await Deno.stat(file);
  deepEqual([after.mode, after.uid, after.mtime], [mode, uid, mtime]);
  await Deno.remove(folder, { recursive: true });
});

/** All below a folder: kind, rights, owner, time of change, content. */
async function stateOf(folder: string): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for await (const { name } of Deno.readDir(folder)) {
    const path = `${folder}/${name}`;
    const { mode, uid, mtime, isFile, isDirectory } = await Deno.lstat(path);
    const text = isFile ? await Deno.readTextFile(path) : "";
    found[path] = `${mode} ${uid} ${mtime?.getTime()} ${text}`;
    if (isDirectory && name !== "report") {
      Object.assign(found, await stateOf(path));
    }
  }
  return found;
}

Deno.test("task report leaves the disk as it was though a notebook calls every function of node:fs and of Deno on it, and reads nothing from outside", async () => {
  if (!POSIX) return;
  const folder = await copyPiece("coarse-display-180");
  const outside = await Deno.realPath(await Deno.makeTempDir());
  await Deno.writeTextFile(`${outside}/secret`, "hidden words");
  const source = `
    import fs from "node:fs";
    const inside = folder + "/readings.csv", secret = "${outside}/secret";
    const said = [], later = [];
    const skip = /^(?:exit|abort|kill|watch|unwatch|serve|listen|test|bench|promises|constants|add|remove.*Listener)/;
    const fd = fs.openSync(inside, "r");
    const handle = await fs.promises.open(inside);
    const sets = [
      [secret], [secret, "utf8"], [secret, "${outside}/copy"], [secret, folder + "/copy"],
      [inside], [inside, 0o600], [inside, 1, 1], [inside, "X"], [inside, folder + "/copy"], [inside, "${outside}/copy"],
      ["${outside}"], ["${outside}/new"], [folder + "/new"], [folder, { recursive: true }], [{ dir: "${outside}" }], [{ dir: folder }],
      [fd], [fd, 0], [fd, 1, 1], [fd, "X"], [fd, new Uint8Array(3)], [],
    ];
    const call = (name, self, args) => {
      try {
        const value = self[name](...args);
        if (typeof value?.then === "function") later.push(value.then((one) => said.push(one), () => {}));
        else said.push(value);
      } catch { /* refused */ }
    };
    for (const self of [fs, fs.promises, Deno]) {
      for (const name of Object.getOwnPropertyNames(self)) {
        if (typeof self[name] !== "function" || skip.test(name) || /^[A-Z]/.test(name)) continue;
        // Streams and callbacks fail later, with nobody to hear it.
        if (self === fs && !/Sync$/.test(name)) continue;
        for (const args of sets) call(name, self, args);
      }
    }
    for (const name of Object.getOwnPropertyNames(Object.getPrototypeOf(handle))) {
      if (!/^(?:constructor|fd|close|create|read)/.test(name)) for (const args of [[0], [0, 0], ["X"]]) call(name, handle, args);
    }
    await Promise.race([Promise.allSettled(later), new Promise((done) => setTimeout(done, 3000))]);
    const text = said.map((one) => {
      try {
        return typeof one === "string" ? one : one instanceof Uint8Array ? new TextDecoder().decode(one) : JSON.stringify(one) ?? "";
      } catch {
        return "";
      }
    }).join();
    console.log("seen:", said.length > 50, text.includes("session,taken_at"), text.includes("hidden words"));`;
  const notebook = await strangers(folder, [source], ["raises-exception"]);
  const before = await stateOf(folder);
  const away = await stateOf(outside);
  await runTask("report", [folder, "--no-check", "--notebook", notebook]);
  // What fails with nobody to hear it takes the place of the cell's value.
  match(
    await Deno.readTextFile(`${folder}/report/session.ipynb`),
    /"seen: true true false\\n"/,
  );
  const { [`${folder}/report`]: _, ...after } = await stateOf(folder);
  deepEqual(after, before);
  deepEqual(await stateOf(outside), away);
  await Deno.remove(outside, { recursive: true });
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report checks no notebook that would make the checker read and quote a foreign file, and says so", async () => {
  const folder = await copyPiece("coarse-display-180");
  const outside = await Deno.realPath(await Deno.makeTempDir());
  await Deno.writeTextFile(
    `${outside}/keys.ts`,
    'export const token = "hidden words";',
  );
  const notebook = await strangers(folder, [
    `import { token } from "${outside}/keys.ts"; const n: never = token;`,
  ]);
  const own = ["--notebook", notebook];
  const limited = await runTask("report", [folder, ...own]);
  equal(limited.code, 1);
  match(
    limited.err,
    /Cells are not type-checked: the notebook takes in “\S+keys\.ts”, which a check would read without limits \(--allow-read lets it\)/,
  );
  match(limited.err, /cell 2: .*not allowed to read/);
  const page = await Deno.readTextFile(`${folder}/report/session.html`);
  ok(!(limited.err + page).includes("hidden words"));
  const granted = await runTask("report", [folder, "--allow-read", ...own]);
  match(granted.err, /Type '"hidden words"' is not assignable/);
  await Deno.remove(outside, { recursive: true });
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report asks nobody for the packages and modules that a notebook names, checking its types or running it", async () => {
  const folder = await copyPiece("coarse-display-180");
  const { port, seen, close } = listener();
  const proxy = `http://127.0.0.1:${port}`;
  const env = {
    HTTPS_PROXY: proxy,
    HTTP_PROXY: proxy,
    DENO_NO_UPDATE_CHECK: "1",
  };
  const notebook = await strangers(folder, [
    'await import("npm:no-such-package-of-the-sagbook-tests");',
    'import y from "https://example.org/y.ts";\ny;',
  ], ["raises-exception"]);
  const { code } = await runTask("report", [
    folder,
    "--notebook",
    notebook,
  ], env);
  equal(code, 1);
  equal(seen.length, 0, seen.join());
  // The same with the network granted shows that asking would be seen.
  await runTask("report", [
    folder,
    "--no-check",
    "--allow-net",
    "--notebook",
    notebook,
  ], env);
  ok(seen.some((text) => text.startsWith("CONNECT registry.npmjs.org")));
  await close();
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report grants what a flag names, and no more", async () => {
  const folder = await copyPiece("coarse-display-180");
  const outside = await Deno.realPath(await Deno.makeTempDir());
  await Deno.mkdir(`${outside}/a, b`);
  await Deno.writeTextFile(`${outside}/a, b/x.txt`, "x");
  await Deno.writeTextFile(`${outside}/y.txt`, "y");
  const notebook = await strangers(folder, [
    'Deno.env.get("SAGBOOK_TEST_A");',
    'Deno.env.get("SAGBOOK_TEST_B");',
    `Deno.readTextFileSync("${outside}/y.txt");`,
    `Deno.writeTextFileSync("${outside}/z.txt", "");`,
  ], ["raises-exception"]);
  const env = { SAGBOOK_TEST_A: "a", SAGBOOK_TEST_B: "b" };
  const run = async (...flags: string[]) => {
    await runTask("report", [
      folder,
      "--no-check",
      "--notebook",
      notebook,
      ...flags,
    ], env);
    return (await answers(folder)).map((answer) =>
      /not allowed/.test(answer) ? "refused" : answer
    );
  };
  deepEqual(
    await run("--allow-env=SAGBOOK_TEST_A", `--allow-read=${outside}`),
    ['"a"', "refused", '"y"', "refused"],
  );
  deepEqual(await run("--allow-all"), ['"a"', '"b"', '"y"', ""]);
  equal(await Deno.readTextFile(`${outside}/z.txt`), "");
  await Deno.remove(outside, { recursive: true });
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report runs in a folder whose name has commas and blanks, with a bench kept in another", async () => {
  const shop = await Deno.realPath(await Deno.makeTempDir());
  const copy = await copyPiece("coarse-display-180");
  const folder = `${shop}/disc, the 2nd`;
  await Deno.rename(copy, folder);
  await Deno.rename(`${folder}/bench.json`, `${shop}/our bench.json`);
  const piece = JSON.parse(await Deno.readTextFile(`${folder}/piece.json`));
  piece.bench = "../our bench.json";
  await Deno.writeTextFile(`${folder}/piece.json`, JSON.stringify(piece));
  const { code, err } = await runTask("report", [folder, "--no-check"]);
  equal(code, 0, err);
  await Deno.remove(shop, { recursive: true });
});

Deno.test("task report runs on another kernel only where all is allowed, and says why", async () => {
  const folder = await copyPiece("coarse-display-180");
  const { code, err } = await runTask("report", [folder, "--kernel", "deno"]);
  equal(code, 1);
  match(
    err,
    /Cannot run the notebook on kernel "deno" as what its code may do cannot be limited there: add --allow-all/,
  );
  await Deno.remove(folder, { recursive: true });
});

for (const name of ["report", "gauge", "plan", "history", "focal"]) {
  Deno.test(`task ${name} says in its help what a notebook may do and what each flag grants`, async () => {
    const { code, out } = await runTask(name, ["--help"]);
    equal(code, 0);
    match(out, /A notebook is code\. It may read /);
    for (
      const flag of [
        ...["read", "write", "net", "import", "env", "run", "sys", "ffi"],
        "all",
      ]
    ) {
      match(out, new RegExp(`^ {2}--allow-${flag}\\b.* {2,}\\S`, "m"));
    }
    match(out, /Exit codes: /);
  });
}

Deno.test("every notebook of the project runs within the limits of a report", async () => {
  // Those that read data read it from the project's own folder.
  const { runChecked } = await import("sagbook/tasks/_own_kernel.ts");
  const { readNotebook } = await import("sagbook/notebook/read_notebook.ts");
  const { notebook } = await readNotebook(`${ROOT}notebooks/session.ipynb`);
  const { status, problems } = await runChecked(notebook, {
    cwd: `${ROOT}notebooks`,
    check: false,
  });
  equal(status, "complete", problems.map(({ message }) => message).join());
});
