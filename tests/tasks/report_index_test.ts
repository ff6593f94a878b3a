import { deepEqual, equal, match, ok } from "node:assert/strict";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { displayPath } from "../../lib/tasks/_task_words.ts";
import { copyPiece, ROOT, runTask } from "./_run_task.ts";

/** A shop's folder: a piece, one with a slip, one without its bench, and others. */
async function shopFolder(): Promise<string> {
  const shop = await Deno.makeTempDir({ prefix: "shop-" });
  await Deno.rename(
    await copyPiece("coarse-display-180"),
    `${shop}/b #1 & co`,
  );
  await Deno.rename(await copyPiece("inch-200"), `${shop}/a`);
  await Deno.rename(await copyPiece("metric-250"), `${shop}/c`);
  const piece = `${shop}/c/piece.json`;
  await Deno.writeTextFile(
    piece,
    (await Deno.readTextFile(piece)).replace('"concave"', '"<b>cave"'),
  );
  await Deno.mkdir(`${shop}/d`);
  await Deno.writeTextFile(`${shop}/d/readings.csv`, "session,zeroing\n");
  await Deno.mkdir(`${shop}/photographs`);
  await Deno.mkdir(`${shop}/.hidden`);
  await Deno.writeTextFile(`${shop}/.hidden/piece.json`, "{}");
  return shop;
}

Deno.test("task report over a folder of pieces lists each with its answer, date and link, and why one has none", async () => {
  const shop = await shopFolder();
  const { code, out, err } = await runTask("report", [shop]);
  equal(code, 1);
  match(err, /c: no report, since the folder cannot be read/);
  const index = join(shop, "report", "index.html");
  ok(out.includes(`All of them: ${displayPath(index)}`), out);
  const page = await Deno.readTextFile(index);
  const headings = Array.from(
    page.matchAll(/<h2>(?:<a [^>]*>)?(.*?)(?:<\/a>)?<\/h2>/g),
    ([, name]) => name,
  );
  deepEqual(headings, ["disc 200, f/5", "disc 180, f/8", "c", "d"]);
  match(page, /4 pieces, 2 without a whole report/);
  match(
    page,
    /Session look 1, 2024-05-02: 3 sets with ring 70 · b #1 &amp; co/,
  );
  match(page, /There is no one radius/);
  match(page, /No report:<\/strong> refused: piece\.json[^<]*&lt;b&gt;cave/);
  match(page, /bench\.json: the file is missing/);
  ok(!page.includes("<script"));
  // Every link leads to a page that is there.
  const links = Array.from(
    page.matchAll(/<a href="([^"#]*)"/g),
    ([, to]) => to,
  );
  equal(links.length, 2);
  for (const link of links) {
    const path = fileURLToPath(new URL(link, pathToFileURL(index)));
    ok((await Deno.stat(path)).isFile, path);
    equal(dirname(dirname(dirname(path))), shop);
  }
  await Deno.remove(shop, { recursive: true });
});

Deno.test("task report makes no index for one piece, and none for the other tasks", async () => {
  const shop = await Deno.makeTempDir({ prefix: "shop-" });
  await Deno.rename(await copyPiece("gauge-study"), `${shop}/study`);
  const one = await runTask("report", [`${shop}/study`]);
  equal(one.code, 0, one.err);
  equal((await runTask("gauge", [shop])).code, 0);
  const names = [...Deno.readDirSync(shop)].map(({ name }) => name);
  deepEqual(names, ["study"]);
  // The report of the whole shop then leads to the other pages too.
  equal((await runTask("report", [shop])).code, 0);
  const page = await Deno.readTextFile(`${shop}/report/index.html`);
  match(page, /Also: <a href="\.\.\/study\/report\/gauge\.html">gauge<\/a>/);
  await Deno.remove(shop, { recursive: true });
});

Deno.test("task report tells what was probably meant by a folder in which there is no piece", async () => {
  const root = await Deno.makeTempDir({ prefix: "shop-" });
  await Deno.mkdir(`${root}/club/blanks`, { recursive: true });
  await Deno.rename(
    await copyPiece("coarse-display-180"),
    `${root}/club/blanks/one`,
  );
  await Deno.mkdir(`${root}/done`);
  await Deno.writeTextFile(`${root}/done/finished.csv`, "");
  const shown = displayPath(root);
  const said = [
    [`${root}/clbu`, `Did you mean ${shown}/club?`],
    [root, `There are pieces further down, in ${shown}/club/blanks: give`],
    [
      `${root}/club/blanks/one/readings.csv`,
      `Did you mean its folder, ${shown}/club/blanks/one?`,
    ],
    [`${root}/done`, `deno task focal FOLDER --shop ${shown}/done takes it.`],
  ] as const;
  for (const [folder, hint] of said) {
    const { code, err } = await runTask("report", [folder]);
    equal(code, 1);
    match(err, /no report, since the folder cannot be read/);
    ok(err.includes(hint), err);
    ok(!/\n\s+at /.test(err), err);
  }
  const empty = await runTask("report", [""]);
  equal(empty.code, 2);
  match(empty.err, /A folder's name is empty\./);
  await Deno.remove(root, { recursive: true });
});

Deno.test("task report goes on when one piece's report cannot be written, and lists it", async () => {
  const shop = await Deno.makeTempDir({ prefix: "shop-" });
  for (const name of ["a", "b"]) {
    await Deno.rename(await copyPiece("coarse-display-180"), `${shop}/${name}`);
  }
  // A file where the folder of the report should be.
  await Deno.writeTextFile(`${shop}/a/report`, "");
  const { code, err } = await runTask("report", [shop]);
  equal(code, 1);
  match(err, /Cannot write the report as/);
  const page = await Deno.readTextFile(`${shop}/report/index.html`);
  match(page, /No report:<\/strong> Cannot write the report as/);
  match(page, /href="\.\.\/b\/report\/session\.html"/);
  await Deno.remove(shop, { recursive: true });
});

Deno.test("task report suggests the flag that was meant", async () => {
  const { code, err } = await runTask("report", ["--kernle", "deno"]);
  equal(code, 2);
  match(err, /There is no flag --kernle: did you mean --kernel\? Known: /);
  const other = await runTask("check", ["--yaml"]);
  equal(other.code, 2);
  match(other.err, /There is no flag --yaml\. Known: --json, --help\./);
});

/** Starts a report over a shop, one piece at a time, and stops it after a piece. */
async function stoppedAfterOne(
  shop: string,
): Promise<{ code: number; out: string }> {
  const child = new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "lib/tasks/report.ts", shop, "--at-once", "1"],
    cwd: ROOT,
    stdout: "piped",
    stderr: "null",
  }).spawn();
  let out = "";
  for await (const text of child.stdout.pipeThrough(new TextDecoderStream())) {
    if (!out.includes("Page: ") && (out + text).includes("Page: ")) {
      child.kill("SIGINT");
    }
    out += text;
  }
  return { code: (await child.status).code, out };
}

Deno.test("task report over a shop goes on where it was stopped, and its list says what is of an earlier run", async () => {
  const shop = await Deno.makeTempDir({ prefix: "shop-" });
  for (const name of ["a", "b", "c"]) {
    await Deno.rename(await copyPiece("coarse-display-180"), `${shop}/${name}`);
  }
  const index = `${shop}/report/index.html`;
  const first = await stoppedAfterOne(shop);
  equal(first.code, 130, first.out);
  match(first.out, /1 of 3 were done; they and the earlier reports: /);
  match(
    await Deno.readTextFile(index),
    /3 pieces, 2 not done[\s\S]*Not done:<\/strong> the run was stopped/,
  );
  const second = await runTask("report", [
    shop,
    "--continue",
    "--at-once",
    "2",
  ]);
  equal(second.code, 0, second.err);
  // In the order of the folders, whichever was done first.
  match(
    second.out,
    /a: up to date\.[\s\S]*\/b\/report\/[\s\S]*\/c\/report\/[\s\S]*All of them: /,
  );
  const page = await Deno.readTextFile(index);
  match(page, /3 pieces, 1 of an earlier run/);
  equal(page.split("<h2><a ").length, 4);
  // What has changed since is done again, and nothing else.
  await Deno.utime(`${shop}/b/readings.csv`, new Date(), new Date());
  const third = await stoppedAfterOne(shop);
  equal(third.code, 130, third.out);
  match(await Deno.readTextFile(index), /3 pieces, 2 of an earlier run/);
  const fourth = await runTask("report", [shop, "--continue"]);
  equal(fourth.out.split(": up to date.").length, 4 - 1);
  equal(fourth.code, 0, fourth.err);
  await Deno.remove(shop, { recursive: true });
});

Deno.test("task report refuses a number of pieces at once that is none", async () => {
  for (const count of ["0", "1.5", "many"]) {
    const { code, err } = await runTask("report", ["--at-once", count]);
    equal(code, 2);
    ok(
      err.startsWith(
        `--at-once needs a whole number from 1 to 16: current value is ${count}.`,
      ),
      err,
    );
  }
});

Deno.test("task report and task check take a folder of pieces with their common bench beside them", async () => {
  const shop = await Deno.makeTempDir({ prefix: "shop-" });
  for (const name of ["a", "b"]) {
    const piece = `${shop}/${name}`;
    await Deno.rename(await copyPiece("coarse-display-180"), piece);
    await Deno.rename(`${piece}/bench.json`, `${shop}/bench.json`);
    const file = JSON.parse(await Deno.readTextFile(`${piece}/piece.json`));
    await Deno.writeTextFile(
      `${piece}/piece.json`,
      JSON.stringify({ ...file, bench: "../bench.json" }),
    );
  }
  const { code, out, err } = await runTask("report", [shop]);
  equal(code, 0, err);
  match(out, /All of them: /);
  const checked = await runTask("check", [shop]);
  equal(checked.code, 0, checked.out);
  for (const name of ["a", "b"]) {
    ok(checked.out.includes(`/${name} can be used`));
  }
  // A bench with nothing beside it is a piece that lacks a file.
  await Deno.mkdir(`${shop}/c`);
  await Deno.copyFile(`${shop}/bench.json`, `${shop}/c/bench.json`);
  match(
    (await runTask("check", [`${shop}/c`])).out,
    /piece\.json: the file is/,
  );
  await Deno.remove(shop, { recursive: true });
});
