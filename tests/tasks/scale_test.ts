import { equal, match, ok } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { writeReportIndex } from "../../lib/tasks/_report_index.ts";
import { reportOn } from "../../lib/tasks/_report_run.ts";
import { ROOT, runTask } from "./_run_task.ts";

/** Sizes of pages that any browser opens, in bytes. */
const LARGEST_PAGE = 600_000;

/** An invented folder beside a demo piece, with files of its own. */
async function invented(files: Record<string, string>): Promise<string> {
  const folder = await Deno.makeTempDir({ prefix: "scale-" });
  for (const name of ["piece.json", "bench.json"]) {
    await Deno.copyFile(
      `${ROOT}data/metric-250/${name}`,
      `${folder}/${name}`,
    );
  }
  for (const [name, text] of Object.entries(files)) {
    await Deno.writeTextFile(`${folder}/${name}`, text);
  }
  return folder;
}

Deno.test("task report answers from 100,000 readings of one session, and says what its figures leave out", async () => {
  const random = new Random(7);
  const zones = ["centre", "50% reach", "edge"];
  const rows = Array.from({ length: 99_999 }, (_, i) => {
    const set = Math.floor(i / 3) + 1;
    const sag = 0.416 + 0.001 * random.normal();
    return `evening 1,ring 100,${set},${20 * set % 180},foot out,${
      zones[i % 3]
    },${sag.toFixed(3)},mm`;
  });
  const folder = await invented({
    "readings.csv":
      `session,ring,zeroing,diameter_deg,foot_deg,zone,reading,unit\n${
        rows.join("\n")
      }\n`,
  });
  try {
    const told: string[] = [];
    const { run, answer, page: path } = await reportOn(folder, {
      onProgress: ({ words }) => words === undefined || told.push(words),
    });
    equal(run.exitCode, 0, run.incomplete ?? "");
    match(answer.join(" "), /The radius of curvature .* is \d/);
    // However quick the machine, the end of the reading is told.
    equal(told.at(-1), "99,999 readings read, now worked out");
    const page = await Deno.readTextFile(path);
    for (const name of ["session.html", "session.ipynb", "results.json"]) {
      const { size } = await Deno.stat(`${folder}/report/${name}`);
      ok(size < LARGEST_PAGE, `${name}: ${size}`);
    }
    match(page, /99999 lines of readings were read: 99999 used/);
    match(page, /Of each zone the first 200 sets are drawn/);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("writeReportIndex() lists a thousand pieces on a page that a browser opens, with ways to those that failed", async () => {
  const shop = await Deno.makeTempDir({ prefix: "scale-" });
  try {
    const pieces = Array.from({ length: 1_000 }, (_, i) => ({
      folder: `${shop}/disc ${i}`,
      about: "Session evening 1, 2024-03-04: 3 sets with ring 100",
      answer: i % 10 === 7 ? [] : [
        `The radius of curvature is 30${i} ± 3 mm (95 % sure).`,
        "It is a sphere within 2.5 µm of sag, as far as three feet can tell.",
        "Next: go on if the next grades can still move it.",
      ],
      faults: i % 10 === 7 ? ["bench.json: the file is missing"] : [],
      ...(i % 10 === 7
        ? {}
        : { page: `${shop}/disc ${i}/report/session.html` }),
    }));
    const page = await Deno.readTextFile(await writeReportIndex(shop, pieces));
    ok(page.length < 1_000_000, `${page.length}`);
    match(page, /1000 pieces, 100 without a whole report/);
    equal(page.split("<li id=").length, 1_001);
    equal(page.split("<details>").length, 901);
    match(page, /Without a whole report: <a href="#piece-8">disc 7<\/a>/);
    match(page, /and 50 more<\/p>/);
  } finally {
    await Deno.remove(shop, { recursive: true });
  }
});

Deno.test("task focal foretells from a thousand finished pieces, and tabulates the first of them", async () => {
  const random = new Random(9);
  const rows = Array.from({ length: 1_000 }, (_, i) => {
    const radius = 2_000 + 2_000 * random.uniform();
    const focal = radius / 2 * (1 - 0.001 + 3e-4 * random.normal());
    return `disc ${i},250,${radius.toFixed(1)},3,${
      focal.toFixed(1)
    },0.7,mm,lamp`;
  });
  const folder = await invented({
    "readings.csv": await Deno.readTextFile(
      `${ROOT}data/metric-250/readings.csv`,
    ),
    "finished.csv":
      `piece,diameter,ground_radius,ground_radius_uncertainty,focal_length,focal_length_uncertainty,unit,method\n${
        rows.join("\n")
      }\n`,
  });
  try {
    const { code, out, err } = await runTask("focal", [
      folder,
      "--shop",
      folder,
    ]);
    equal(code, 0, err);
    match(out, /1000 finished pieces foretell a focal length/);
    const page = await Deno.readTextFile(`${folder}/report/focal.html`);
    match(page, /The first 200 of 1000 pieces; finished\.csv holds them all/);
    equal(page.split("<tr").length < 250, true);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("task check reads three hundred folders in one call", async () => {
  const shop = await Deno.makeTempDir({ prefix: "scale-" });
  try {
    const folders = Array.from({ length: 300 }, (_, i) => `${shop}/${i}`);
    for (const folder of folders) {
      await Deno.mkdir(folder);
      for (const name of ["piece.json", "bench.json", "readings.csv"]) {
        await Deno.copyFile(
          `${ROOT}data/coarse-display-180/${name}`,
          `${folder}/${name}`,
        );
      }
    }
    const { code, out } = await runTask("check", folders);
    equal(code, 0);
    equal(out.split(" can be used.").length, 301);
  } finally {
    await Deno.remove(shop, { recursive: true });
  }
});
