import { deepEqual, equal, match, ok } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { copyPiece, runTask } from "./_run_task.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");
const names = (folder: string): string[] =>
  [...Deno.readDirSync(folder)].map(({ name }) => name).sort();

Deno.test("task gauge writes page, notebook, results and a plan that the readers read back once it is filled in", async () => {
  const folder = await copyPiece("gauge-study-cured");
  const { code, out, err } = await runTask("gauge", [
    folder,
    "--stretch",
    "12 µm",
  ]);
  equal(code, 0, err);
  match(
    plain(out),
    /One reading on a fresh zero scatters by a standard deviation of/,
  );
  deepEqual(names(`${folder}/report`), [
    "gauge.html",
    "gauge.ipynb",
    "gauge.json",
    "plan.csv",
  ]);
  const results = JSON.parse(
    Deno.readTextFileSync(`${folder}/report/gauge.json`),
  );
  ok(!("sheet_csv" in results));
  const plan = Deno.readTextFileSync(`${folder}/report/plan.csv`);
  const [head, ...rows] = plan.trim().split(/\r?\n/);
  const reading = head.split(",").indexOf("reading");
  const zone = head.split(",").indexOf("zone");
  const filled = rows.map((row) => {
    const cells = row.split(",");
    cells[reading] = cells[zone] === "flat" ? "0.000" : "0.600";
    return cells.join(",");
  });
  Deno.writeTextFileSync(
    `${folder}/readings.csv`,
    [head, ...filled].join("\n") + "\n",
  );
  const { lines, problems } = await readPieceFolder(folder);
  equal(lines.used, rows.length, JSON.stringify(problems.slice(0, 3)));
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task plan writes its files, and refuses a width without a unit in plain words", async () => {
  const folder = await copyPiece("gauge-study");
  const { code, out, err } = await runTask("plan", [folder, "--edge", "15 mm"]);
  equal(code, 0, err);
  match(plain(out), /The radius is 300\d ± \d\d mm/);
  ok(names(`${folder}/report`).includes("plan.csv"));
  const wrong = await runTask("plan", [folder, "--edge", "wide"]);
  equal(wrong.code, 2);
  match(wrong.err, /--edge needs a length above 0 with its unit/);
  const stretch = await runTask("gauge", [folder, "--stretch", "-3 µm"]);
  equal(stretch.code, 2);
  await Deno.remove(folder, { recursive: true });
});
