import { deepEqual, equal, match, ok } from "node:assert/strict";
import { copyPiece, ROOT, runTask } from "./_run_task.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");

Deno.test("task history writes page, notebook and results, looking back to a session", async () => {
  const folder = await copyPiece("history-300");
  const { code, out, err } = await runTask("history", [
    folder,
    "--earlier",
    `${ROOT}data/history-300-before`,
    "--up-to",
    "E13",
    "--risk",
    "10",
  ]);
  equal(code, 0, err);
  match(
    plain(out),
    /up to there the risk of passing the target stays at 10 % or less/,
  );
  const names = [...Deno.readDirSync(`${folder}/report`)].map(({ name }) =>
    name
  );
  deepEqual(names.sort(), ["history.html", "history.ipynb", "history.json"]);
  const results = JSON.parse(
    Deno.readTextFileSync(`${folder}/report/history.json`),
  );
  equal(results.sessions.length, 13);
  equal(results.forecast.kind, "forecast");
  equal(results.forecast.risk, 0.1);
  const page = Deno.readTextFileSync(`${folder}/report/history.html`);
  for (
    const part of [
      "Record of disc 300",
      "Slurry that dries is silica dust",
      "Radius of curvature against the work done",
    ]
  ) ok(page.includes(part), part);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task history refuses a risk that is none, and a session that is none, in words", async () => {
  const wrong = await runTask("history", ["data/history-300", "--risk", "0"]);
  equal(wrong.code, 2);
  match(
    wrong.err,
    /--risk needs a number of per cent between 0 and 100: current value is 0\./,
  );
  const folder = await copyPiece("history-300");
  const none = await runTask("history", [folder, "--up-to", "E99"]);
  equal(none.code, 1);
  match(
    plain(none.err),
    /Cannot look back to a session as it must be one of the history: current value is E99/,
  );
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task focal writes page, notebook and results from a piece and a shop", async () => {
  const folder = await copyPiece("history-300");
  const { code, out, err } = await runTask("focal", [
    folder,
    "--shop",
    `${ROOT}data/shop-twelve`,
  ]);
  equal(code, 0, err);
  match(plain(out), /this shop's 12 finished pieces foretell a focal length/);
  const names = [...Deno.readDirSync(`${folder}/report`)].map(({ name }) =>
    name
  );
  deepEqual(names.sort(), ["focal.html", "focal.ipynb", "focal.json"]);
  const results = JSON.parse(
    Deno.readTextFileSync(`${folder}/report/focal.json`),
  );
  equal(results.pieces_used, 12);
  ok(results.probability_of_landing > 0.5);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task focal takes the shop from the folder that the piece lies in", async () => {
  const shop = await Deno.makeTempDir({ prefix: "shop-" });
  const folder = `${shop}/piece`;
  await Deno.mkdir(folder);
  for (const name of ["piece.json", "bench.json", "readings.csv"]) {
    await Deno.copyFile(`${ROOT}data/history-300/${name}`, `${folder}/${name}`);
  }
  await Deno.copyFile(
    `${ROOT}data/shop-two/finished.csv`,
    `${shop}/finished.csv`,
  );
  const { code, out, err } = await runTask("focal", [folder]);
  equal(code, 0, err);
  match(plain(out), /this shop's 2 finished pieces foretell/);
  const page = Deno.readTextFileSync(`${folder}/report/focal.html`);
  equal(page.includes("<h2>With little history"), false);
  await Deno.remove(shop, { recursive: true });
});

Deno.test("task focal asks for a shop, and refuses a chance that is none", async () => {
  const without = await runTask("focal", ["data/history-300"]);
  equal(without.code, 2);
  match(without.err, /--shop needs the folder that holds finished\.csv\./);
  const empty = await runTask("focal", [
    "data/history-300",
    "--shop",
    "data/metric-250",
  ]);
  equal(empty.code, 2);
  match(empty.err, /--shop: there is no finished\.csv in .*metric-250\./);
  const figure = await runTask("focal", ["--figure", "lens"]);
  equal(figure.code, 2);
  match(
    figure.err,
    /--figure is paraboloid or sphere: current value is lens\./,
  );
  const wrong = await runTask("focal", [
    "data/history-300",
    "--shop",
    "data/shop-two",
    "--chance",
    "no",
  ]);
  equal(wrong.code, 2);
  match(
    wrong.err,
    /--chance needs a number of per cent between 0 and 100: current value is no\./,
  );
});
