import { deepEqual, equal, match, ok } from "node:assert/strict";
import { basename, join } from "node:path";
import Papa from "papaparse";
import { parseHTML } from "linkedom";
import { htmlTables } from "sagbook/display/html_tables.ts";
import { testPictures } from "../figures/_needs_pictures.ts";
import { copyPiece, ROOT, runTask } from "./_run_task.ts";

/** A piece with reports as the project's own notebooks were kept. */
async function withReports(
  piece: string,
  reports: Readonly<Record<string, string>>,
): Promise<string> {
  const folder = await copyPiece(piece);
  await Deno.mkdir(`${folder}/report`);
  for (const [name, notebook] of Object.entries(reports)) {
    await Deno.copyFile(
      `${ROOT}notebooks/${notebook}.ipynb`,
      `${folder}/report/${name}.ipynb`,
    );
  }
  return folder;
}

const ALL = {
  session: "session",
  gauge: "repeatability",
  plan: "measurement-plan",
  history: "fabrication-history",
  focal: "radius-to-focal-length",
};

async function namesIn(folder: string): Promise<string[]> {
  const names: string[] = [];
  for await (const { name } of Deno.readDir(folder)) names.push(name);
  return names.sort();
}

interface Element {
  readonly textContent: string;
}

const documentOf = (svg: string) =>
  (parseHTML(svg) as unknown as {
    document: {
      querySelector(path: string): Element | null;
      querySelectorAll(path: string): Iterable<Element>;
    };
  }).document;

interface Listed {
  readonly file: string;
  readonly kind: string;
  readonly sha256: string;
}

const listIn = async (out: string): Promise<Listed[]> =>
  JSON.parse(await Deno.readTextFile(`${out}/results.json`)).files;

Deno.test("task export writes every figure and table of every report, and all results as one JSON", async () => {
  const folder = await withReports("metric-250", ALL);
  const out = `${folder}/report/export`;
  const { code, out: said, err } = await runTask("export", [
    folder,
    "--only",
    "svg,csv,json",
  ]);
  equal(code, 0, err);
  // The path is said relative to the project where that is shorter.
  ok(said.includes(`${basename(folder)}/report/export\n`), said);
  const results = JSON.parse(await Deno.readTextFile(`${out}/results.json`));
  deepEqual(
    [results.program, results.results_version, Object.keys(results.reports)],
    ["sagbook", 2, ["session", "focal", "gauge", "history", "plan"]],
  );
  equal(
    results.version,
    JSON.parse(await Deno.readTextFile(`${ROOT}deno.json`)).version,
  );
  for (
    const report of Object.values<Record<string, unknown>>(results.reports)
  ) {
    equal(report.results_version, 2);
    equal((report.units as Record<string, string>).length, "mm");
  }
  for (const [report, notebook] of Object.entries(ALL)) {
    const cells = JSON.parse(
      await Deno.readTextFile(`${ROOT}notebooks/${notebook}.ipynb`),
    ).cells;
    const names = await namesIn(out);
    for (const { outputs = [], metadata } of cells) {
      const data = outputs[0]?.data ?? {};
      const name = `${report}-${metadata.name?.replaceAll(" ", "-")}`;
      if ("image/svg+xml" in data) {
        ok(names.includes(`${name}.svg`), name);
        const svg = await Deno.readTextFile(`${out}/${name}.svg`);
        const document = documentOf(svg);
        ok(document.querySelector("svg > title")!.textContent);
        ok(document.querySelector("svg > desc")!.textContent);
        const kept = documentOf(data["image/svg+xml"].join(""));
        deepEqual(
          [...document.querySelectorAll("text")].map((one) => one.textContent),
          [...kept.querySelectorAll("text")].map((one) => one.textContent),
        );
      }
      for (const table of htmlTables((data["text/html"] ?? []).join(""))) {
        if (table.rows.length > 0) {
          await sameNumbers(`${out}/${name}.csv`, table);
        }
      }
    }
  }
  await Deno.remove(folder, { recursive: true });
});

/** Every number of a table that shows stands in its file, row by row. */
async function sameNumbers(
  file: string,
  { columns, rows }: {
    columns: readonly string[];
    rows: readonly (readonly string[])[];
  },
): Promise<void> {
  const text = await Deno.readTextFile(file);
  const { data, errors } = Papa.parse<string[]>(
    text.replace(/^\uFEFF/, "").trimEnd(),
    {
      newline: "\r\n",
      delimiter: ",",
    },
  );
  deepEqual(errors, []);
  const read = columns.length > 0 ? data.slice(1) : data;
  equal(read.length, rows.length, file);
  const numbers = (cells: readonly string[]) =>
    cells.flatMap((cell) =>
      [...cell.matchAll(/\d+(?:\.\d+)?/g)].map(([one]) => one)
    );
  for (const [i, row] of rows.entries()) {
    const shown = row.map((cell) =>
      cell.replace(/[ \u00a0]×[ \u00a0]10[⁻⁰-⁹¹²³]+/g, "").replace("1/mm", "")
    );
    const kept = read[i].map((cell) =>
      cell.replace(/(\d)e-?\d+$/, "$1").replace("1/mm", "")
    );
    deepEqual(numbers(kept), numbers(shown), `${file}, row ${i + 1}`);
  }
}

Deno.test("task export makes the session's report first where there is none, for a folder of pieces too", async () => {
  const group = await Deno.makeTempDir({ prefix: "pieces-" });
  const piece = await copyPiece("coarse-display-180");
  await Deno.rename(piece, `${group}/one`);
  const { code, out, err } = await runTask("export", [group, "--only=svg"]);
  equal(code, 0, err);
  const names = await namesIn(`${group}/one/report/export`);
  ok(names.includes("session-differences-by-zone.svg"), names.join());
  ok(names.every((name) => /\.(svg|json)$/.test(name)), names.join());
  match(out, /figures as SVG/);
  await Deno.remove(group, { recursive: true });
});

Deno.test("task export leaves the user's files: what it did not make, and what was changed since", async () => {
  const folder = await withReports("metric-250", { session: "session" });
  const out = join(folder, "mine");
  await Deno.mkdir(out);
  const mine = `${out}/session-readings.svg`;
  await Deno.writeTextFile(mine, "my own");
  const args = [folder, "--to", out, "--only", "svg"];
  const refused = await runTask("export", args);
  equal(refused.code, 1);
  match(
    refused.err,
    /holds 1 file .* no export made.*session-readings\.svg.*--to.*--replace/s,
  );
  deepEqual(await namesIn(out), ["session-readings.svg"]);
  equal(await Deno.readTextFile(mine), "my own");
  await Deno.remove(mine);
  equal((await runTask("export", args)).code, 0);
  const first = await listIn(out);
  equal(
    (await runTask("export", args)).code,
    0,
    "its own files it may write again",
  );
  deepEqual(await listIn(out), first, "the same input gives the same files");
  await Deno.writeTextFile(mine, "changed by hand");
  equal((await runTask("export", [...args, "--dark"])).code, 1);
  equal(await Deno.readTextFile(mine), "changed by hand");
  equal((await runTask("export", [...args, "--dark", "--replace"])).code, 0);
  match(await Deno.readTextFile(mine), /fill="#15191e"/);
  // A list that names a file elsewhere takes nothing away there.
  const outside = `${folder}/readings.csv`;
  const before = await Deno.readTextFile(outside);
  const list = JSON.parse(await Deno.readTextFile(`${out}/results.json`));
  const { createHash } = await import("node:crypto");
  list.files.push({
    file: "../readings.csv",
    kind: "svg",
    report: "session",
    title: "x",
    sha256: createHash("sha256").update(before).digest("hex"),
  });
  await Deno.writeTextFile(`${out}/results.json`, JSON.stringify(list));
  equal((await runTask("export", args)).code, 0);
  equal(await Deno.readTextFile(outside), before);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task export says which report is older than the readings, and exports nothing of one that failed", async () => {
  const folder = await withReports("metric-250", {
    session: "session",
    plan: "measurement-plan",
  });
  const plan = `${folder}/report/plan.ipynb`;
  const notebook = JSON.parse(await Deno.readTextFile(plan));
  const cell = notebook.cells.find((one: { outputs?: unknown[] }) =>
    one.outputs?.length
  );
  cell.outputs = [{
    output_type: "error",
    ename: "Error",
    evalue: "no",
    traceback: [],
  }];
  await Deno.writeTextFile(plan, JSON.stringify(notebook));
  await Deno.utime(`${folder}/report/session.ipynb`, 0, 0);
  const { code, err } = await runTask("export", [folder, "--only", "csv"]);
  equal(code, 1);
  match(err, /\.(?:csv|json) was changed after the report "session" was made/);
  match(err, /nothing of the report "plan" was exported/);
  const names = await namesIn(`${folder}/report/export`);
  ok(names.every((name) => /^(?:session-.*\.csv|results\.json)$/.test(name)));
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task export helps with a wrong call and a wrong folder", async () => {
  for (
    const [args, says] of [
      [
        ["--only", "pdf"],
        /--only needs some of svg, png, csv, json: current value is pdf/,
      ],
      [
        ["--width", "12"],
        /--width needs a whole number of 50 to 10000 pixels: current value is 12/,
      ],
      [["--drak"], /no flag --drak: did you mean --dark\?/],
      [["--to"], /--to needs a value/],
    ] as const
  ) {
    const { code, err } = await runTask("export", args);
    equal(code, 2);
    match(err, says);
    match(err, /deno task export \[FOLDER/);
  }
  const lost = await runTask("export", ["data/metric-25"]);
  equal(lost.code, 1);
  match(lost.err, /Did you mean data\/metric-250\?/);
  ok(!/\n\s+at /.test(lost.err));
});

Deno.test("task export tells of a folder that cannot be written in plain words", async () => {
  const folder = await withReports("metric-250", { session: "session" });
  const file = `${folder}/taken`;
  await Deno.writeTextFile(file, "");
  const { code, err } = await runTask("export", [folder, "--to", file]);
  equal(code, 1);
  match(err, /Cannot write the export as .*taken must be a folder/);
  ok(!/\n\s+at /.test(err), err);
  equal(await Deno.readTextFile(file), "");
  await Deno.remove(folder, { recursive: true });
});

testPictures(
  "task export writes PNG pictures of the width asked for, and decimal commas",
  async () => {
    const folder = await withReports("metric-250", { session: "session" });
    const { code, err } = await runTask("export", [
      folder,
      ...["--only", "png,csv", "--width", "400", "--decimal-comma"],
    ]);
    equal(code, 0, err);
    const out = `${folder}/report/export`;
    const png = await Deno.readFile(`${out}/session-shape.png`);
    equal(new DataView(png.buffer).getUint32(16), 400);
    match(
      await Deno.readTextFile(`${out}/session-radius-by-zone.csv`),
      /^\uFEFFzone;.*\r\ncentre;0,0;/,
    );
    await Deno.remove(folder, { recursive: true });
  },
);
