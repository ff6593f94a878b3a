import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { RecordError } from "sagbook/records/record_error.ts";
import {
  BENCH,
  codes,
  PIECE,
  radiusOfMean,
  readCase,
  withFolder,
} from "./_bench_of_cases.ts";

const sags = (readings: readonly { sag: number }[]) =>
  readings.map((one) => Number(one.sag.toFixed(5)));

Deno.test("readPieceFolder() takes the mark off a marked UTF-8 file", async () => {
  const folder = await readCase("A01-bom.csv");
  deepEqual(folder.lines, { read: 3, used: 3, reported: 0 });
  equal(radiusOfMean(folder, "centre"), "2519.667");
  deepEqual(folder.readings.map((one) => one.session), ["S1", "S1", "S1"]);
  deepEqual(codes(folder, "note"), []);
});

Deno.test("readPieceFolder() reads UTF-16 with tabs, marked and unmarked, letter for letter", async () => {
  const folder = await readCase("A02-utf16-tabs.txt");
  equal(folder.lines.used, 3);
  equal(radiusOfMean(folder, "centre"), "2519.667");
  deepEqual(folder.readings.map((one) => one.note), [
    "",
    "re-wiped – cool",
    "20 °C",
  ]);
  const bytes = await Deno.readFile(
    new URL("../cases/A02-utf16-tabs.txt", import.meta.url),
  );
  const unmarked = await withFolder(
    { files: { "readings.csv": bytes.subarray(2) } },
    readPieceFolder,
  );
  deepEqual(sags(unmarked.readings), [0.715, 0.716, 0.715]);
});

Deno.test("readPieceFolder() chooses semicolons by the names, not by counting commas", async () => {
  const folder = await readCase("A03-semicolon-comma.csv", {}, "sheets/S1.csv");
  deepEqual(folder.readings.map((one) => one.diameterDegrees), [0, 60, 120]);
  deepEqual(sags(folder.readings), [0.715, 0.716, 0.715]);
  deepEqual(folder.readings.map((one) => one.zeroing), [
    "S1 / row 1",
    "S1 / row 2",
    "S1 / row 3",
  ]);
});

Deno.test("readPieceFolder() reads thousands and refuses what cannot be told", async () => {
  const folder = await readCase("A04-thousands.csv");
  deepEqual(folder.lines, { read: 5, used: 4, reported: 1 });
  equal(radiusOfMean(folder, "centre"), "1262.082");
  const [refused] = folder.problems.filter((one) => one.severity === "refused");
  equal(refused.line, 6);
  equal(refused.column, "reading");
  equal(refused.value, "1.430");
  equal(
    refused.message,
    "this can be read two ways: 1.43 µm or 1430 µm",
  );
});

Deno.test("readPieceFolder() keeps negative readings and names the suspicion", async () => {
  const folder = await readCase("A05-unicode-minus.csv", {
    piece: { ...PIECE, form: "convex" },
  });
  deepEqual(sags(folder.readings), [-0.715, -0.716, -0.714]);
  deepEqual(codes(folder, "warning"), ["2 negative-sag"]);
  const [warning] = folder.problems;
  match(warning.message, /count down on convex work/);
  match(warning.message, /mean is 0\.715 mm and R 2514\.8 mm/);
  match(warning.message, /as concave 2520\.8 mm/);
  const turned = await readCase("A05-unicode-minus.csv", {
    piece: { ...PIECE, form: "convex" },
    bench: { ...BENCH, gauge: { ...BENCH.gauge, counts_up_on: "concave" } },
  });
  deepEqual(sags(turned.readings), [0.715, 0.716, 0.714]);
  deepEqual(codes(turned, "warning"), []);
});

Deno.test("readPieceFolder() reads unit suffixes, mends inch quotes and refuses two units", async () => {
  const folder = await readCase("A06-unit-suffix.csv");
  deepEqual(folder.lines, { read: 6, used: 5, reported: 1 });
  deepEqual(sags(folder.readings), [0.715, 0.715, 0.71501, 0.71501, 0.71501]);
  deepEqual(codes(folder, "refused"), ["7 units-disagree"]);
  match(
    folder.problems.find((one) => one.line === 7)?.message ?? "",
    /0\.715 mm or 18\.161 mm/,
  );
  ok(codes(folder, "note").includes("5 quotes-mended"));
});

Deno.test("readPieceFolder() keeps line numbers through mixed line ends and a quoted break", async () => {
  const folder = await readCase("A08-mixed-line-ends.csv");
  deepEqual(folder.readings.map((one) => one.note), [
    "",
    "wiped, cool\nagain",
    "last",
  ]);
  deepEqual(folder.readings.map((one) => one.line), [2, 3, 5]);
  equal(radiusOfMean(folder, "centre"), "2519.667");
});

Deno.test("readPieceFolder() finds the header below titles and the units below it", async () => {
  const folder = await readCase(
    "A10-title-and-units.csv",
    {},
    "sheets/S1.csv",
  );
  deepEqual([...new Set(folder.readings.map((one) => one.line))], [6, 7, 8]);
  deepEqual([...new Set(folder.readings.map((one) => one.zone.label))], [
    "centre",
    "50%",
    "edge",
  ]);
  equal(radiusOfMean(folder, "centre"), "2519.667");
  equal(radiusOfMean(folder, "edge"), "2530.263");
  deepEqual(folder.lines, { read: 9, used: 9, reported: 0 });
});

Deno.test("readPieceFolder() reports every line of a cable's log that names no place", async () => {
  const folder = await readCase("A12-cable-log.txt", {}, "sheets/log.txt");
  deepEqual(folder.lines, { read: 7, used: 0, reported: 7 });
  equal(folder.files[0].layout, "cable log");
  deepEqual(codes(folder, "refused"), [
    "1 zero-reading",
    "2 no-place",
    "3 no-place",
    "4 no-cable-value",
    "5 no-place",
    "6 no-place",
    "7 cut-off",
  ]);
  ok(codes(folder, "warning").includes("5 unit-changed"));
});

Deno.test("readPieceFolder() uses a cable's log once lines above say session and zone", async () => {
  const log = new TextDecoder().decode(
    await Deno.readFile(
      new URL("../cases/A12-cable-log.txt", import.meta.url),
    ),
  );
  const folder = await withFolder({
    files: {
      "sheets/log.txt": "# session: S1\r\n# zeroing: 1\r\n# zone: centre\r\n" +
        log,
    },
  }, readPieceFolder);
  deepEqual(sags(folder.readings), [0.715, 0.716, 0.71501, -0.715]);
  deepEqual(folder.lines, { read: 7, used: 4, reported: 3 });
  ok(codes(folder, "warning").some((code) => code.endsWith("negative-sag")));
});

Deno.test("readPieceFolder() tells zeroings of two sessions apart", async () => {
  const folder = await readCase("B05-reused-labels.csv");
  equal(new Set(folder.readings.map((one) => one.zeroing)).size, 4);
  equal(folder.lines.used, 8);
});

Deno.test("readPieceFolder() knows the unit words and guesses none", async () => {
  const folder = await readCase("C05-unit-words.csv");
  deepEqual(folder.lines, { read: 17, used: 15, reported: 2 });
  for (const { sag } of folder.readings) ok(Math.abs(sag - 0.715) < 1e-6);
  deepEqual(codes(folder, "refused"), ["17 unknown-unit", "18 unknown-unit"]);
  deepEqual(codes(folder, "note"), ["16 unit-assumed"]);
  const gauge = { display_step: "0.001 mm", scale_uncertainty: 0.0005 };
  const without = await readCase("C05-unit-words.csv", {
    bench: { ...BENCH, gauge },
  });
  deepEqual(codes(without, "refused"), [
    "16 no-unit",
    "17 unknown-unit",
    "18 unknown-unit",
  ]);
});

Deno.test("readPieceFolder() makes no number of what is none", async () => {
  const folder = await readCase("F02-not-numbers.csv");
  deepEqual(folder.lines, { read: 10, used: 2, reported: 8 });
  deepEqual(sags(folder.readings), [0.715, 0.715]);
  deepEqual(folder.readings.map((one) => one.line), [5, 11]);
});

Deno.test("readPieceFolder() warns of inches written down as millimetres with both figures", async () => {
  const folder = await readCase("G03-inches-as-mm.csv");
  deepEqual(sags(folder.readings), [0.715, 0.716, 0.0281, 0.0282]);
  const warnings = folder.problems.filter((one) => one.severity === "warning");
  deepEqual(warnings.map((one) => one.code), ["other-unit"]);
  match(warnings[0].message, /session S2 .* 25\.42 times away from session S1/);
  match(warnings[0].message, /R 63950 mm.*R 2520\.8 mm/);
});

Deno.test("readPieceFolder() refuses a stated place where a foot hangs over the bevel", async () => {
  const folder = await readCase("G04-foot-off-edge.csv");
  deepEqual(folder.lines, { read: 3, used: 2, reported: 1 });
  const [refused] = folder.problems;
  equal(refused.code, "beyond-reach");
  equal(refused.line, 4);
  match(refused.message, /a foot may stand 110\.1 mm out/);
});

Deno.test("readPieceFolder() refuses every row under a ring larger than the work", async () => {
  const folder = await readCase("G04-foot-off-edge.csv", {
    piece: { ...PIECE, diameter: "110 mm" },
  });
  deepEqual(folder.lines, { read: 3, used: 0, reported: 3 });
  for (const problem of folder.problems) {
    equal(problem.code, "ring-too-large");
    match(problem.message, /ring A is larger than the work/);
  }
});

Deno.test("readPieceFolder() corrects the stem's lean only when the bench states it", async () => {
  const plain = await readCase("G08-stem-tilt.csv");
  equal(plain.readings[2].sag, 0.716);
  const tilted = await readCase("G08-stem-tilt.csv", {
    bench: { ...BENCH, gauge: { ...BENCH.gauge, stem_tilt_deg: 3 } },
  });
  equal(tilted.readings[2].sag.toFixed(6), "0.715019");
});

Deno.test("readPieceFolder() asks whether a spacing was taken for the ring's radius", async () => {
  const folder = await withFolder({
    bench: {
      ...BENCH,
      rings: [{ ...BENCH.rings[0], radius: "103.92304845 mm" }],
    },
    piece: { ...PIECE, diameter: "400 mm" },
    files: {
      "readings.csv":
        "session,zeroing,zone,reading,unit\nS1,1,centre,0.715,mm\n",
    },
  }, readPieceFolder);
  const [warning] = folder.problems.filter((one) => one.severity === "warning");
  equal(warning.code, "ring-size");
  match(warning.message, /R 7555\.8 mm, 3\.00 times the nominal 2520 mm/);
  match(warning.message, /the spacing of its feet.*R 2520\.8 mm/);
});

Deno.test("readPieceFolder() notes a reading finer than the display step and keeps it", async () => {
  const folder = await readCase("G10-past-target.csv");
  equal(folder.lines.used, 5);
  equal(folder.readings[4].sag, 0.7255);
  deepEqual(codes(folder, "note"), ["6 finer-than-step"]);
});

Deno.test("readPieceFolder() reads used plus reported on every case", async () => {
  let cases = 0;
  for await (
    const { name } of Deno.readDir(new URL("../cases", import.meta.url))
  ) {
    if (!/^[ABCFG].*\.(?:csv|txt)$/.test(name)) continue;
    cases++;
    const { lines, readings, problems, files } = await readCase(name);
    equal(lines.read, lines.used + lines.reported, name);
    equal(lines.used, readings.length, name);
    equal(files.length, 1, name);
    const refused = problems.filter((one) => one.severity === "refused")
      .reduce((sum, one) => sum + (one.count ?? 1), 0);
    ok(refused >= lines.reported, name);
    ok(lines.read > 0, name);
  }
  ok(cases >= 20);
});

Deno.test("readPieceFolder() says in plain words that there is no folder, or no file", async () => {
  await rejects(readPieceFolder("/no/such/folder"), {
    name: "RecordError",
    message:
      "Cannot use the folder /no/such/folder\nrefused: /no/such/folder: there is no such folder\n  mend: check the name, or make one with “deno task new FOLDER”",
  });
  const path = await Deno.makeTempDir();
  await rejects(readPieceFolder(path), (error) => {
    ok(error instanceof RecordError);
    deepEqual(error.problems.map((one) => `${one.file} ${one.code}`), [
      "piece.json no-file",
      "bench.json no-file",
    ]);
    return true;
  });
  await Deno.remove(path);
});

Deno.test("readPieceFolder() finds readings in any case and names tables it does not read", async () => {
  const text = "session,zeroing,zone,reading\nS1,1,centre,0.715\n";
  const folder = await withFolder({
    files: {
      "Readings.CSV": text,
      "session 2.csv": text,
      "bench.ods": "x",
      "sheets/b.csv": "centre\n0.716\n",
      "sheets/a.csv": "centre\n0.717\n",
      "sheets/.~lock.a.csv": "x",
    },
  }, readPieceFolder);
  deepEqual(folder.files.map((one) => one.file), [
    "Readings.CSV",
    "sheets/a.csv",
    "sheets/b.csv",
  ]);
  deepEqual(folder.readings.map((one) => one.order), [0, 1, 2]);
  deepEqual(
    folder.problems.filter((one) => one.code === "file-not-read")
      .map((one) => one.file),
    ["session 2.csv", "bench.ods"],
  );
});
