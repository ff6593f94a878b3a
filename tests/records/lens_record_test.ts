import { deepEqual, equal, match } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { RecordError } from "sagbook/records/record_error.ts";
import { PIECE, withFolder } from "./_bench_of_cases.ts";

const LENS = {
  index: 1.5168,
  index_uncertainty: 0.0005,
  thickness: "8 mm",
  second_surface: {
    form: "convex",
    radius: "400 mm",
    radius_uncertainty: "0.4 mm",
  },
};
const PLATE = {
  id: "plate 2520",
  radius: "2520 mm",
  radius_uncertainty: "0.5 mm",
  diameter: "50 mm",
  fringes: 1.5,
  touch: "edge",
  wavelength: "0.589 µm",
};

const read = (more: Record<string, unknown>) =>
  withFolder({ piece: { ...PIECE, ...more } }, readPieceFolder);

Deno.test("readPieceFolder() reads a lens and a test plate", async () => {
  const { piece } = await read({ lens: LENS, test_plate: PLATE });
  deepEqual(piece.lens, {
    index: 1.5168,
    indexUncertainty: 0.0005,
    thickness: 8,
    thicknessUncertainty: 0,
    second: { form: "convex", radius: 400, radiusUncertainty: 0.4 },
  });
  equal(piece.testPlate?.wavelength.toFixed(6), "0.000589");
  equal(piece.testPlate?.fringeUncertainty, undefined);
  const alone = await read({ lens: { index: 1.53 } });
  equal(alone.piece.lens?.second, undefined);
  equal((await read({})).piece.lens, undefined);
});

Deno.test("readPieceFolder() refuses a lens or a test plate that cannot be", async () => {
  const { second_surface: second } = LENS;
  const faults: [Record<string, unknown>, string, RegExp][] = [
    [{ lens: { ...LENS, index: 0.9 } }, "lens.index", /too small/],
    [
      { lens: { ...LENS, thickness: undefined } },
      "lens.thickness",
      /needs its thickness/,
    ],
    [
      { lens: { ...LENS, second_surface: { form: "convex" } } },
      "lens.second_surface",
      /needs its radius/,
    ],
    [
      { lens: { ...LENS, second_surface: { ...second, form: "flat" } } },
      "lens.second_surface.radius",
      /a flat has no radius/,
    ],
    [
      { test_plate: { ...PLATE, wavelength: "589 mm" } },
      "test_plate.wavelength",
      /no light/,
    ],
    [
      { test_plate: { ...PLATE, diameter: "300 mm" } },
      "test_plate.diameter",
      /over more than the work/,
    ],
    [
      { test_plate: { ...PLATE, radius: "20 mm" } },
      "test_plate.radius",
      /less than half/,
    ],
  ];
  for (const [more, column, words] of faults) {
    let problems: RecordError["problems"] = [];
    try {
      await read(more);
    } catch (error) {
      if (!(error instanceof RecordError)) throw error;
      problems = error.problems.filter((one) => one.severity === "refused");
    }
    equal(problems[0]?.column, column);
    match(problems[0].message, words);
    equal(problems.length, 1);
  }
});
