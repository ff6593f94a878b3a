import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { sessionReport } from "sagbook/narrative/session_report.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import {
  BENCH,
  type FolderParts,
  PIECE,
  withFolder,
} from "./_bench_of_cases.ts";

const HEADER = "session,zeroing,zone,reading,unit\n";
const GOOD = [715, 716, 715].map((um, k) =>
  `S1,${k + 1},centre,${um / 1000},mm\n`
).join("");
const [RING] = BENCH.rings;

async function read(parts: FolderParts, readings = HEADER + GOOD) {
  const folder = await withFolder({
    ...parts,
    files: { "readings.csv": readings },
  }, readPieceFolder);
  const said = (severity: string) =>
    folder.problems.filter((one) => one.severity === severity)
      .map(({ code }) => code).filter((code) => code !== "unit-assumed");
  const answer = sessionReport(folder).answer.join("\n")
    .replace(/[\u00a0\u202f]/g, " ");
  return { folder, said, answer };
}

const gauge = (changes: Record<string, unknown>) => ({
  ...BENCH,
  gauge: { ...BENCH.gauge, ...changes },
});

Deno.test("readPieceFolder() counts a display step that is given in the other unit, and says so", async () => {
  const { folder, said } = await read({
    bench: gauge({ display_step: "0.00005 in" }),
  });
  ok(said("note").includes("step-in-other-unit"));
  const { mm, in: inches } = folder.bench.gauge.steps;
  ok(Math.abs(mm! - 0.00127) < 1e-12);
  equal(mm, inches);
  const both = await read({
    bench: gauge({ display_step: { mm: "0.001 mm", in: "0.00005 in" } }),
  });
  deepEqual(both.said("note"), []);
});

Deno.test("readPieceFolder() asks about a flat that a ring in use does not fit on", async () => {
  const rings = [RING, { ...RING, id: "B", radius: "90 mm" }];
  const flat = { size: "150 mm", flatness: "0.0005 mm" };
  const header = "ring," + HEADER;
  const small = await read(
    { bench: { ...BENCH, rings, flat } },
    header + GOOD.replaceAll(/^S/gm, "A,S"),
  );
  deepEqual(small.said("warning"), []);
  // A square of 151 mm carries three balls on a circle of 180 mm, a round flat
  // of that size does not: which of the two it is nobody said.
  const square = await read(
    {
      bench: { ...BENCH, rings, flat: { ...flat, size: "151 mm" } },
      piece: { ...PIECE, diameter: "300 mm" },
    },
    header + GOOD.replaceAll(/^S/gm, "B,S").replaceAll("0.71", "1.60"),
  );
  deepEqual(square.said("warning"), []);
  const large = await read(
    {
      bench: { ...BENCH, rings, flat },
      piece: { ...PIECE, diameter: "300 mm" },
    },
    header + GOOD.replaceAll(/^S/gm, "B,S").replaceAll("0.71", "1.60"),
  );
  ok(large.said("warning").includes("flat-too-small"));
  match(
    large.answer,
    /ring B stands on a circle of 180 mm, but the flat is 150 mm wide/,
  );
});

Deno.test("readPieceFolder() asks about a tolerance that nearly anything would pass", async () => {
  const of = (tolerance: string) =>
    read({ piece: { ...PIECE, target: { radius: "2520 mm", tolerance } } });
  deepEqual((await of("25 mm")).said("warning"), []);
  deepEqual((await of("3000 mm")).said("warning"), ["wide-tolerance"]);
});

Deno.test("sessionReport() casts no doubt on readings for a date that cannot be read", async () => {
  const { said, answer } = await read({
    bench: { ...BENCH, rings: [{ ...RING, calibrated_on: "5/6/2024" }] },
  });
  deepEqual(said("warning"), ["not-a-date"]);
  ok(!answer.includes("Check before you trust this"));
});

Deno.test("sessionReport() gives the lower end of an open interval in three figures, downward", async () => {
  const { answer } = await read({
    bench: { ...BENCH, rings: [{ ...RING, radius_uncertainty: "20 mm" }] },
  });
  match(answer, /at least 1090 mm \(95 % sure\)/);
  ok(!/that is .* than the target/.test(answer));
});

Deno.test("sessionReport() puts a mend that asks into a sentence of its own", async () => {
  const rings = [RING, { ...RING, id: "B" }];
  const { answer } = await read({ bench: { ...BENCH, rings } });
  match(answer, /Next: .*\? Mend that, and run this again\.$/);
});

Deno.test("readPieceFolder() does not take readings finer than a coarse step for nought", async () => {
  const { said } = await read({ bench: gauge({ display_step: "1 mm" }) });
  deepEqual(said("warning"), []);
});

Deno.test("readPieceFolder() counts the display step of readings in a unit that has none of its own", async () => {
  const inches = HEADER +
    [0.02815, 0.02819, 0.02815].map((inch, k) =>
      `S1,${k + 1},centre,${inch},in\n`
    ).join("");
  const { folder, said } = await read({}, inches);
  deepEqual(folder.readings.map(({ step }) => step as number), [
    0.001,
    0.001,
    0.001,
  ]);
  ok(!said("note").includes("finer-than-step"));
  const steps = { mm: "0.001 mm", in: "0.00005 in" };
  const both = await read({ bench: gauge({ display_step: steps }) }, inches);
  ok(Math.abs(both.folder.readings[0].step! - 0.00127) < 1e-9);
  ok(both.said("note").includes("finer-than-step"));
});

Deno.test("readPieceFolder() says how a value becomes the group or the list that belongs in its place", async () => {
  const [ring] = BENCH.rings;
  const wrong: [FolderParts, RegExp][] = [
    [
      { piece: { ...PIECE, sphericity_tolerance: "0.003 mm" } },
      /mend: say what it is, as in \{ "sag": "0\.003 mm" \}; known here: sag, /,
    ],
    [
      { piece: { ...PIECE, target: "2520 mm" } },
      /mend: say what it is, as in \{ "radius": "2520 mm" \}; known here: radius, focal_length/,
    ],
    [
      { bench: { ...BENCH, rings: ring } },
      /mend: put brackets around it: \[ … \]/,
    ],
  ];
  for (const [parts, message] of wrong) {
    await rejects(withFolder(parts, readPieceFolder), { message });
  }
});
