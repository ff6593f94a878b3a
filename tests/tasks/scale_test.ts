import { equal, match, ok } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
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
    const { code, out, err } = await runTask("report", [folder]);
    equal(code, 0, err);
    match(out, /The radius of curvature .* is \d/);
    const page = await Deno.readTextFile(`${folder}/report/session.html`);
    ok(page.length < LARGEST_PAGE, `${page.length}`);
    match(page, /99999 lines of readings were read: 99999 used/);
    match(page, /Of each zone the first 200 sets are drawn/);
  } finally {
    await Deno.remove(folder, { recursive: true });
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
