import { deepEqual, equal, match, notEqual, ok } from "node:assert/strict";
import { MARK, processesMarked } from "../protocol/_marked_processes.ts";
import { copyPiece, ROOT, runTask } from "./_run_task.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");

Deno.test("task report writes page, notebook and results, and prints the answer and the path", async () => {
  const folder = await copyPiece("inch-200");
  const { code, out, err } = await runTask("report", [folder]);
  equal(code, 0, err);
  match(plain(out), /It is not a sphere within 0\.10 thou of sag/);
  ok(out.includes(`Page: ${folder}/report/session.html`), out);
  const names = [...Deno.readDirSync(`${folder}/report`)].map(({ name }) =>
    name
  );
  deepEqual(names.sort(), ["results.json", "session.html", "session.ipynb"]);
  const results = JSON.parse(
    Deno.readTextFileSync(`${folder}/report/results.json`),
  );
  equal(
    results.version,
    JSON.parse(Deno.readTextFileSync(`${ROOT}deno.json`)).version,
  );
  equal(results.units.length, "mm");
  equal(results.session.sphericity.verdict, "outside");
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report shows a changed reading and a changed cell in the page", async () => {
  const folder = await copyPiece("metric-250");
  const before = await runTask("report", [folder]);
  equal(before.code, 0, before.err);
  const page = `${folder}/report/session.html`;
  const first = Deno.readTextFileSync(page);
  const path = `${folder}/readings.csv`;
  const lines = Deno.readTextFileSync(path).split("\n");
  const last = lines.findLastIndex((line) => /,centre,0\.\d+,mm,/.test(line));
  lines[last] = lines[last].replace(/,centre,0\.\d+,mm,/, ",centre,0.4321,mm,");
  Deno.writeTextFileSync(path, lines.join("\n"));
  const notebook = `${folder}/own.ipynb`;
  const text = Deno.readTextFileSync(`${ROOT}notebooks/session.ipynb`);
  Deno.writeTextFileSync(
    notebook,
    text.replace("sentences(report.safety);", "`a cell of mine: ${6 * 7}`"),
  );
  const after = await runTask("report", [folder, "--notebook", notebook]);
  equal(after.code, 0, after.err);
  const second = Deno.readTextFileSync(page);
  match(second, /a cell of mine: 42/);
  notEqual(
    plain(first).match(/radius of curvature[^<]*/)![0],
    plain(second).match(/(radius of curvature|no one radius)[^<]*/)![0],
  );
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report leaves its own notebook as it was", async () => {
  const path = `${ROOT}notebooks/session.ipynb`;
  const before = Deno.readTextFileSync(path);
  const folder = await copyPiece("coarse-display-180");
  equal((await runTask("report", [folder])).code, 0);
  equal(Deno.readTextFileSync(path), before);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report refuses a wrong kernel name in plain words", async () => {
  const folder = await copyPiece("coarse-display-180");
  const { code, err } = await runTask("report", [
    folder,
    "--kernel",
    "fortran",
  ]);
  equal(code, 1);
  match(err, /fortran/);
  match(err, /deno/);
  ok(!/\n\s+at /.test(err), err);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report refuses a folder that cannot be read in plain words, all problems at once", async () => {
  const folder = await copyPiece("coarse-display-180");
  const piece = JSON.parse(Deno.readTextFileSync(`${folder}/piece.json`));
  piece.diameter = "one foot";
  piece.form = "concav";
  Deno.writeTextFileSync(
    `${folder}/piece.json`,
    JSON.stringify(piece, null, 2),
  );
  const { code, err } = await runTask("report", [folder]);
  equal(code, 1);
  match(err, /one foot/);
  match(err, /concav/);
  ok(!/\n\s+at /.test(err), err);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report says what is wrong with a folder that is not there, and with a flag it does not know", async () => {
  const missing = await runTask("report", ["/nowhere/at/all"]);
  equal(missing.code, 1);
  match(missing.err, /\/nowhere\/at\/all|nowhere/);
  ok(!/\n\s+at /.test(missing.err), missing.err);
  const flag = await runTask("report", ["--folder", "x"]);
  equal(flag.code, 2);
  match(flag.err, /There is no flag --folder/);
  const help = await runTask("report", ["--help"]);
  equal(help.code, 0);
  match(help.out, /Exit codes/);
});

Deno.test("task report marks a page incomplete when a cell fails, and leaves no results of an older run", async () => {
  const folder = await copyPiece("coarse-display-180");
  equal((await runTask("report", [folder])).code, 0);
  const notebook = `${folder}/own.ipynb`;
  const text = Deno.readTextFileSync(`${ROOT}notebooks/session.ipynb`);
  Deno.writeTextFileSync(
    notebook,
    text.replace("sentences(report.safety);", "throw new Error('no more');"),
  );
  const { code, err, out } = await runTask("report", [
    folder,
    "--notebook",
    notebook,
  ]);
  equal(code, 1);
  match(err, /no more/);
  match(out, /Incomplete page/);
  match(Deno.readTextFileSync(`${folder}/report/session.html`), /incomplete/i);
  const names = [...Deno.readDirSync(`${folder}/report`)].map(({ name }) =>
    name
  );
  ok(!names.includes("results.json"), names.join());
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report leaves an older report whole when it is stopped, says so and exits with 130", async () => {
  const folder = await copyPiece("metric-250");
  equal((await runTask("report", [folder])).code, 0);
  const page = `${folder}/report/session.html`;
  const before = Deno.readTextFileSync(page);
  const path = `${folder}/readings.csv`;
  Deno.writeTextFileSync(
    path,
    Deno.readTextFileSync(path).replaceAll("0.41", "0.42"),
  );
  for (const wait of [150, 400, 900]) {
    const mark = crypto.randomUUID();
    const child = new Deno.Command(Deno.execPath(), {
      args: ["run", "-A", "--no-prompt", "lib/tasks/report.ts", folder],
      cwd: ROOT,
      env: { NO_COLOR: "1", [MARK]: mark },
      stdin: "null",
      stdout: "piped",
      stderr: "piped",
    }).spawn();
    await new Promise((done) => setTimeout(done, wait));
    try {
      child.kill("SIGINT");
    } catch {
      // It had ended already: nothing was stopped.
    }
    const { code, stderr } = await child.output();
    const said = new TextDecoder().decode(stderr);
    ok(code === 130 || code === 0, `${wait} ms: ${code} ${said}`);
    ok(!/\n\s+at /.test(said), said);
    if (Deno.build.os === "linux") {
      equal((await processesMarked(mark)).length, 0, `${wait} ms: processes`);
    }
    if (code === 130) equal(Deno.readTextFileSync(page), before, `${wait} ms`);
    else Deno.writeTextFileSync(page, before);
  }
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report gives no answer of another piece for cells that were not run", async () => {
  const folder = await copyPiece("inch-200");
  const notebook = `${folder}/own.ipynb`;
  const text = Deno.readTextFileSync(`${ROOT}notebooks/session.ipynb`);
  Deno.writeTextFileSync(
    notebook,
    text.replace(
      "const report = await openPiece(folder);",
      "throw new Error('early');",
    ),
  );
  const { code, out } = await runTask("report", [
    folder,
    "--notebook",
    notebook,
  ]);
  equal(code, 1);
  ok(!/radius of curvature/.test(out), out);
  const page = Deno.readTextFileSync(`${folder}/report/session.html`);
  ok(
    !/3003|radius of curvature is/.test(plain(page)),
    "the page holds an old answer",
  );
  await Deno.remove(folder, { recursive: true });
});

/** The session notebook with other code for one of its sentences. */
async function withCell(folder: string, code: string): Promise<string> {
  const text = await Deno.readTextFile(`${ROOT}notebooks/session.ipynb`);
  const path = `${folder}/own.ipynb`;
  const changed = text.replace(
    "sentences(report.safety);",
    JSON.stringify(code).slice(1, -1),
  );
  notEqual(changed, text);
  await Deno.writeTextFile(path, changed);
  return path;
}

const MIXED_UP =
  'import { inches, sagFromRadius } from "sagbook";\nconst feet = { circleRadius: inches(2), ballRadius: inches(0.1) };\nsagFromRadius(inches(118), feet, "concave");\nconst name: number = "x";';

Deno.test("task report refuses a type error though the cell ran: all at once, with line, mark and plain words", async () => {
  const folder = await copyPiece("coarse-display-180");
  equal((await runTask("report", [folder])).code, 0);
  const notebook = await withCell(folder, MIXED_UP);
  const { code, out, err } = await runTask("report", [
    folder,
    "--notebook",
    notebook,
  ]);
  equal(code, 1, err);
  match(err, /^cell \d+, line \d+, column \d+ \(TS\d+\)$/m);
  match(err, /sagFromRadius\(inches\(118\)[^\n]*\n\s+\| +~+$/m);
  match(err, /asks for millimetres but was given inches/);
  match(err, /Type 'string' is not assignable to type 'number'/);
  match(out, /Incomplete page: /);
  const names = [...Deno.readDirSync(`${folder}/report`)].map((e) => e.name);
  ok(!names.includes("results.json"), names.join());
  const page = Deno.readTextFileSync(`${folder}/report/session.html`);
  match(
    page,
    /cell \d+, line \d+: [^<]*asks for millimetres but was given inches/,
  );
  match(page, /TypeCheckError/);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report says that it checks no types where told so; a page that was checked does not", async () => {
  const folder = await copyPiece("coarse-display-180");
  const notebook = await withCell(folder, 'const name: number = "x";\nname;');
  const loose = await runTask("report", [
    folder,
    "--no-check",
    "--notebook",
    notebook,
  ]);
  equal(loose.code, 0, loose.err);
  match(loose.err, /Cells are not type-checked \(--no-check\)/);
  const strict = await runTask("report", [folder]);
  equal(strict.code, 0, strict.err);
  equal(strict.err.includes("type-checked"), false, strict.err);
  for (const name of ["session.html", "session.ipynb"]) {
    const text = Deno.readTextFileSync(`${folder}/report/${name}`);
    equal(text.includes("not type-checked"), false, name);
  }
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task report runs on an installed kernel by its name", async () => {
  const folder = await copyPiece("coarse-display-180");
  const { code, err } = await runTask("report", [
    folder,
    "--kernel",
    "deno",
    "--allow-all",
  ]);
  equal(code, 0, err);
  await Deno.remove(folder, { recursive: true });
});
