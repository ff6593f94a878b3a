import { deepEqual, equal } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { RecordError } from "sagbook/records/record_error.ts";
import type { Problem } from "sagbook/records/problem.ts";
import { BENCH, PIECE, withFolder } from "./_bench_of_cases.ts";

async function problemsOf(
  piece: string | Record<string, unknown>,
  bench?: string | Record<string, unknown>,
): Promise<readonly Problem[]> {
  try {
    return (await withFolder({ piece, bench }, readPieceFolder)).problems;
  } catch (error) {
    if (error instanceof RecordError) return error.problems;
    throw error;
  }
}

Deno.test("readPieceFolder() reads rings of balls, edges and bars", async () => {
  const rings = [
    {
      id: "A",
      spacings: ["103 mm", "104 mm", "104.8 mm"],
      spacings_measured: "centre to centre",
      ball_diameter: "6 mm",
      foot: "feet out",
      material: "brass",
    },
    { id: "B", feet: "edge", inner_radius: "24 mm", outer_radius: "25 mm" },
    { id: "C", feet: "bar", span: "40 mm", foot: 30 },
    {
      id: "D",
      spacings: ["109 mm", "110 mm", "110.8 mm"],
      spacings_measured: "outside to outside",
      ball_radius: "3 mm",
    },
  ];
  const { bench } = await withFolder(
    { bench: { ...BENCH, rings } },
    readPieceFolder,
  );
  const [balls, edge, bar, outside] = bench.rings;
  // By hand: half sum 155.9, Heron 4676.7593 mm², r = ABC / 4K.
  equal(
    balls.shape.kind === "balls" && balls.shape.circleRadius.toFixed(6),
    "60.010443",
  );
  equal(
    outside.shape.kind === "balls" && outside.shape.circleRadius.toFixed(6),
    "60.010443",
  );
  equal(balls.shape.kind === "balls" && balls.shape.ballRadius, 3);
  deepEqual(balls.foot, { kind: "feet out" });
  equal(balls.expansion, 19e-6);
  equal(balls.radiusUncertaintyAssumed, true);
  deepEqual(edge.shape, { kind: "edge", innerRadius: 24, outerRadius: 25 });
  deepEqual(bar.shape, { kind: "bar", span: 40, ballRadius: 0 });
  deepEqual(bar.foot, { kind: "angle", degrees: 30 });
});

Deno.test("readPieceFolder() refuses rings that cannot be", async () => {
  const ring = BENCH.rings[0];
  const faults: [Record<string, unknown>, string][] = [
    [{ id: "A", ball_radius: "3 mm" }, "rings.0.radius"],
    [{ id: "A", radius: "60 mm" }, "rings.0.ball_radius"],
    [{ ...ring, ball_diameter: "6 mm" }, "rings.0.ball_diameter"],
    [{ ...ring, probe_offset: "61 mm" }, "rings.0.probe_offset"],
    [{ ...ring, foot: "sideways" }, "rings.0.foot"],
    [
      { id: "A", ball_radius: "3 mm", spacings: ["1 mm", "2 mm", "9 mm"] },
      "rings.0.spacings",
    ],
    [
      { id: "A", feet: "edge", inner_radius: "25 mm", outer_radius: "24 mm" },
      "rings.0.inner_radius",
    ],
    [{ id: "A", feet: "bar" }, "rings.0.span"],
  ];
  for (const [bad, column] of faults) {
    const problems = await problemsOf(PIECE, { ...BENCH, rings: [bad] });
    const refused = problems.filter((one) => one.severity === "refused");
    deepEqual(refused.map((one) => one.column), [column]);
  }
  const twice = await problemsOf(PIECE, {
    ...BENCH,
    rings: [ring, { ...ring, id: "a" }],
  });
  equal(
    twice.find((one) => one.severity === "refused")?.code,
    "repeated-ring",
  );
});

Deno.test("readPieceFolder() turns a shown radius or power back with the ring set in the gauge", async () => {
  const files = {
    "readings.csv": "session,zeroing,zone,reading,unit\nS1,1,centre,2520,mm\n",
  };
  const set_ring = { circle_radius: "50 mm", ball_radius: "2.5 mm" };
  const radius = await withFolder({
    files,
    bench: { ...BENCH, gauge: { shows: "radius", unit: "mm", set_ring } },
  }, readPieceFolder);
  // q = 2517.5; s = 50² / (q + √(q² − 50²)), by hand.
  equal(
    radius.readings[0].sag.toFixed(9),
    (2500 / (2517.5 + Math.sqrt(2517.5 ** 2 - 2500))).toFixed(9),
  );
  const power = await withFolder({
    files: {
      "readings.csv":
        "session,zeroing,zone,reading,unit\nS1,1,centre,-5.3,D\nS1,1,flat,0,D\n",
    },
    bench: {
      ...BENCH,
      gauge: {
        shows: "power",
        counts_up_on: "convex",
        set_ring: { circle_radius: "10 mm", index: 1.53 },
      },
    },
  }, readPieceFolder);
  // 1000 · 0.53 / 5.3 = 100 mm; s = 100 / (100 + √(100² − 10²)).
  equal(
    power.readings[0].sag.toFixed(9),
    (100 / (100 + Math.sqrt(9900))).toFixed(9),
  );
  equal(power.readings[1].on, "flat");
  equal(power.readings[1].sag + 0, 0);
});

Deno.test("readPieceFolder() takes a shared bench by its relative path", async () => {
  const shop = await Deno.makeTempDir();
  await Deno.mkdir(`${shop}/one`);
  await Deno.writeTextFile(`${shop}/bench.json`, JSON.stringify(BENCH));
  await Deno.writeTextFile(
    `${shop}/one/piece.json`,
    JSON.stringify({ ...PIECE, bench: "../bench.json" }),
  );
  const folder = await readPieceFolder(`${shop}/one`);
  equal(folder.bench.rings[0].id, "A");
  await Deno.remove(shop, { recursive: true });
});

Deno.test("readPieceFolder() takes the spacings of a ring from a file beside the bench", async () => {
  const bytes = await Deno.readFile(
    new URL("../cases/G09-foot-spacing.csv", import.meta.url),
  );
  const bench = {
    ...BENCH,
    rings: [{
      id: "A",
      spacings: "ring-a.csv",
      spacings_measured: "centre to centre",
      ball_radius: "3 mm",
    }],
  };
  const folder = await withFolder(
    { bench, files: { "ring-a.csv": bytes } },
    readPieceFolder,
  );
  const { shape } = folder.bench.rings[0];
  equal(shape.kind === "balls" && shape.circleRadius.toFixed(6), "60.010443");
  const problems = await problemsOf(PIECE, bench);
  deepEqual(
    problems.filter((one) => one.severity === "refused")
      .map((one) => `${one.file} ${one.code}`),
    ["ring-a.csv no-file", "bench.json no-file"],
  );
});

Deno.test("readPieceFolder() takes no name of an object's property for a material", async () => {
  const problems = await problemsOf(PIECE, {
    ...BENCH,
    rings: [{ ...BENCH.rings[0], material: "constructor" }],
  });
  equal(
    problems.find((one) => one.severity === "warning")?.code,
    "unknown-material",
  );
});

Deno.test("readPieceFolder() reads a scale in per cent with a decimal comma, as it reads lengths", async () => {
  const scaled = (scale_uncertainty: string) =>
    withFolder(
      { bench: { ...BENCH, gauge: { unit: "mm", scale_uncertainty } } },
      readPieceFolder,
    );
  equal((await scaled("0,1 %")).bench.gauge.scaleUncertainty, 0.001);
  equal((await scaled(",5 %")).bench.gauge.scaleUncertainty, 0.005);
  equal((await scaled("0.1 %")).bench.gauge.scaleUncertainty, 0.001);
});
