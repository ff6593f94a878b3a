import { deepEqual, equal, match } from "node:assert/strict";
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

const place = (one: Problem) => `${one.file}:${one.line} ${one.code}`;

Deno.test("readPieceFolder() says line, column and mend of a JSON fault", async () => {
  const head = '{\n  "name": "x",\n  "form": "concave",\n';
  const faults: [string, number, RegExp, RegExp][] = [
    [
      `${head}  "diameter": "210 mm",\n}`,
      5,
      /comma too many/,
      /take the comma/,
    ],
    [
      `${head}  "diameter": "210 mm"\n  "bevel": "1 mm"\n}`,
      5,
      /comma is missing/,
      /line before/,
    ],
    [`${head}  "diameter": 210 mm\n}`, 4, /unit follows/, /"210 mm"/],
    [`${head}  "thickness": 12,5\n}`, 4, /decimal comma/, /point/],
    [`${head}  'diameter': 210\n}`, 4, /name between double quotes/, /"name"/],
    [`${head}  "diameter": “210 mm”\n}`, 4, /plain double quote/, /"/],
    [`${head}  "diameter": "210 mm\n}`, 4, /no closing quote/, /\\"/],
    [`${head}  // new\n  "diameter": "210 mm"\n}`, 4, /no comments/, /"note"/],
    [`${head}  "diameter": "210 mm"\n`, 5, /ends too early/, /bracket/],
    [`${head}  "diameter": .5\n}`, 4, /way to write a number/, /digit before/],
    [`${head}  "diameter": "210 mm" } x`, 4, /after the last bracket/, /out/],
  ];
  for (const [text, line, message, mend] of faults) {
    const [problem] = await problemsOf(text);
    equal(place(problem), `piece.json:${line} json-syntax`, text);
    match(problem.message, message, text);
    match(problem.message, /^column \d+ of the line/, text);
    match(problem.mend ?? "", mend, text);
  }
});

Deno.test("readPieceFolder() accepts lists of numbers and marked JSON files", async () => {
  const piece = `\ufeff${JSON.stringify({ ...PIECE, note: "[1,2,3] 12,5" })}`;
  deepEqual((await problemsOf(piece)).map((one) => one.code), ["no-readings"]);
});

Deno.test("readPieceFolder() asks what an unknown name was meant to be", async () => {
  const { bevel, ...rest } = PIECE;
  const problems = await problemsOf(
    JSON.stringify({ ...rest, bevle: bevel, colour: "blue" }, null, 1),
  );
  const unknown = problems.filter((one) => one.code === "unknown-key");
  deepEqual(unknown.map((one) => [one.column, one.severity]), [
    ["bevle", "warning"],
    ["colour", "warning"],
  ]);
  equal(unknown[0].mend, 'did you mean "bevel"?');
  match(unknown[1].mend ?? "", /known here: name, form, diameter/);
  const inner = await problemsOf(PIECE, {
    ...BENCH,
    rings: [{ ...BENCH.rings[0], bal_radius: "3 mm" }],
  });
  const found = inner.find((one) => one.code === "unknown-key");
  equal(found?.column, "rings.0.bal_radius");
  equal(found?.mend, 'did you mean "ball_radius"?');
});

Deno.test("readPieceFolder() refuses a name that stands twice", async () => {
  const [problem] = await problemsOf(
    '{ "name": "x", "form": "convex", "diameter": "1 in",\n"diameter": "2 in" }',
  );
  equal(place(problem), "piece.json:2 repeated-key");
});

Deno.test("readPieceFolder() gathers every fault of both files", async () => {
  const problems = await problemsOf(
    {
      name: "x",
      form: "concav",
      diameter: 210,
      target: { radius: "3000 mm", focal_ratio: 5 },
    },
    { gauge: { unit: "furlong", scale_uncertainty: "wide" }, rings: [] },
  );
  deepEqual(
    problems.filter((one) => one.severity === "refused").map((one) =>
      `${one.file} ${one.column}`
    ),
    [
      "piece.json form",
      "piece.json diameter",
      "piece.json target",
      "bench.json gauge.unit",
      "bench.json rings",
      "bench.json gauge.scale_uncertainty",
    ],
  );
  equal(
    problems.find((one) => one.column === "form")?.mend,
    'did you mean "concave"?',
  );
  equal(
    problems.find((one) => one.column === "diameter")?.mend,
    'write "210 mm" or "210 in"',
  );
});

Deno.test("readPieceFolder() refuses lengths that are none, or two", async () => {
  const faults: [unknown, RegExp][] = [
    ["1,430 mm", /two ways: 1\.43 mm or 1430 mm/],
    ["210", /no unit/],
    ["210 furlong", /unit is not known/],
    ["wide", /not a length/],
    ["0 mm", /must be above 0/],
    [{ value: -3, unit: "mm" }, /must be above 0/],
  ];
  for (const [diameter, message] of faults) {
    const [problem] = await problemsOf({ ...PIECE, diameter });
    equal(problem.column, "diameter");
    match(problem.message, message);
  }
});

Deno.test("readPieceFolder() reads lengths as text or as value and unit", async () => {
  const read = async (diameter: unknown) =>
    (await withFolder({ piece: { ...PIECE, diameter } }, readPieceFolder))
      .piece;
  equal((await read("11 13/16 in")).diameter, 300.0375);
  equal((await read({ value: 210, unit: "mm" })).diameter, 210);
  equal((await read("12 in")).unit, "in");
  equal((await read('8.25"')).diameter, 209.55);
});

Deno.test("readPieceFolder() turns the target and its tolerance into a radius", async () => {
  const read = async (target: unknown) =>
    (await withFolder({ piece: { ...PIECE, target } }, readPieceFolder)).piece
      .target;
  deepEqual(await read({ focal_length: "1260 mm", tolerance: "5 mm" }), {
    radius: 2520,
    tolerance: 10,
    statedAs: "focal length",
  });
  deepEqual(await read({ focal_ratio: 6, tolerance: 0.1 }), {
    radius: 2520,
    tolerance: 42,
    statedAs: "focal ratio",
  });
  deepEqual(await read({ radius: "2520 mm" }), {
    radius: 2520,
    statedAs: "radius",
  });
});

Deno.test("readPieceFolder() says of a radius with a sign what a drawing's sign means here, and reads a ± before a tolerance", async () => {
  const signed = await problemsOf({
    ...PIECE,
    target: { radius: "-2520 mm" },
    lens: {
      index: 1.5,
      thickness: "9 mm",
      second_surface: { form: "convex", radius: "-50 mm" },
    },
  });
  const refused = signed.filter(({ severity }) => severity === "refused");
  deepEqual(
    refused.map(({ column, mend }) => [column, mend]),
    [
      [
        "target.radius",
        "write it without its sign: which way a surface curves is said by its form",
      ],
      [
        "lens.second_surface.radius",
        "write it without its sign: which way a surface curves is said by its form",
      ],
      [
        "lens.second_surface",
        'add "radius_uncertainty", or make it "flat"',
      ],
    ],
  );
  for (const plus of ["±", "± ", "+-", "+/-", "+\u2212"]) {
    const piece = {
      ...PIECE,
      target: { radius: "2520 mm", tolerance: `${plus}10 mm` },
      sphericity_tolerance: { sag: `${plus}2 µm` },
    };
    const read = await withFolder({ piece }, readPieceFolder);
    equal(read.piece.target?.tolerance, 10, plus);
    equal(read.piece.sphericity?.amount, 0.002, plus);
  }
});

Deno.test("readPieceFolder() looks for the bench that a faulty piece file names, and claims no other missing", async () => {
  const files = { "shared.json": JSON.stringify(BENCH) };
  const of = async (piece: string) => {
    try {
      await withFolder({ piece, files }, async (path) => {
        await Deno.remove(`${path}/bench.json`);
        return await readPieceFolder(path);
      });
    } catch (error) {
      if (error instanceof RecordError) return error.problems;
      throw error;
    }
  };
  const named = JSON.stringify({ ...PIECE, bench: "shared.json" });
  const codes = async (piece: string) =>
    (await of(piece))!.filter(({ severity }) => severity === "refused")
      .map(({ file, code }) => `${file} ${code}`);
  deepEqual(await codes(named.replace("concave", "CX")), [
    "piece.json wrong-value",
  ]);
  // No JSON at all: nobody knows which bench is meant.
  equal((await codes(named.slice(0, -1))).length, 1);
  deepEqual(
    await codes(JSON.stringify({ ...PIECE, form: "CX" })),
    ["piece.json wrong-value", "bench.json no-file"],
  );
});
