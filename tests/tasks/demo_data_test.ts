import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { DEMO_FOLDERS, demoFiles } from "sagbook/tasks/demo_data.ts";

Deno.test("demoFiles() makes the committed demo pieces again, byte by byte", async () => {
  ok(DEMO_FOLDERS.includes("metric-250") && DEMO_FOLDERS.includes("inch-200"));
  for (const folder of DEMO_FOLDERS) {
    for (const [path, text] of demoFiles(folder)) {
      equal(await Deno.readTextFile(`data/${folder}/${path}`), text, path);
    }
  }
});

Deno.test("every demo piece says that it is invented, and is read without a refusal", async () => {
  for (const folder of DEMO_FOLDERS) {
    const { piece, readings, lines, problems } = await readPieceFolder(
      `data/${folder}`,
    );
    equal(piece.invented, true);
    equal(lines.reported, 0);
    ok(readings.length >= 9, folder);
    deepEqual(problems.filter(({ severity }) => severity !== "note"), []);
  }
});

Deno.test("demo readings lie within scatter and display of the sag that the truth file states", async () => {
  let checked = 0;
  for (const folder of DEMO_FOLDERS) {
    const truth = JSON.parse(
      await Deno.readTextFile(`data/${folder}/truth.json`),
    );
    equal(truth.invented, true);
    // The gauge studies have a truth of another kind, with drift.
    if (folder.startsWith("gauge-study")) continue;
    checked++;
    const { readings } = await readPieceFolder(`data/${folder}`);
    const { repeat, zeroing, diameter } = truth.standard_deviations;
    const centre = truth.sag_without_scatter.zones[0];
    equal(centre.zone, "centre");
    const limit = 5 * Math.hypot(repeat, zeroing, diameter) +
      truth.display_step;
    for (const { zone, on, sag } of readings) {
      if (on === "work" && zone.label === "centre") {
        ok(Math.abs(sag - centre.sag) < limit, `${folder} ${sag}`);
      }
      if (on === "flat") ok(Math.abs(sag) < limit);
    }
  }
  equal(checked, DEMO_FOLDERS.length - 2);
});

Deno.test("demo pieces hide or show their faults as their notes say", async () => {
  const sags = async (folder: string) => {
    const { sag_without_scatter } = JSON.parse(
      await Deno.readTextFile(`data/${folder}/truth.json`),
    );
    const zones: { zone: string; sag: number }[] = sag_without_scatter.zones;
    return Object.fromEntries(zones.map(({ zone, sag }) => [zone, sag * 1000]));
  };
  const edge = await sags("turned-edge-300");
  ok(edge.centre - edge.edge > 1.5, "the edge shows 1.5 µm or more");
  const twin = await sags("turned-edge-300-twin");
  ok(Math.abs(twin.centre - twin["80 mm"]) < 1e-5, "the twin hides it");
  const coma = await sags("coma-200");
  ok(coma.edge - coma["-edge"] > 3, "two ends of a diameter disagree");
  const bent = await sags("astigmatic-200");
  ok(Math.abs(bent.centre - bent.edge) < 4e-3, "three feet do not see it");
  const hole = await sags("inch-200");
  ok(hole.centre - hole.edge > 5, "the hole shows");
});

Deno.test("demoFiles() refuses a piece that does not exist", () => {
  throws(() => demoFiles("none"), {
    name: "RangeError",
    message: `Cannot make a demo piece as its folder must be one of ${
      DEMO_FOLDERS.join(", ")
    }: current value is none`,
  });
});
