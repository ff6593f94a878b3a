import { deepEqual, equal, match } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { RecordError } from "sagbook/records/record_error.ts";
import type { Problem } from "sagbook/records/problem.ts";
import { BENCH, withFolder } from "./_bench_of_cases.ts";

const RING = BENCH.rings[0];
const PLATE = {
  id: "plate 1",
  form: "concave",
  radius: "1500 mm",
  radius_uncertainty: "0.5 mm",
  sags: ["1.2345 mm", "1.2351 mm"],
};

const bench = (calibration: Record<string, unknown>, more = {}) => ({
  ...BENCH,
  rings: [{ ...RING, calibration, ...more }, { ...RING, id: "B" }],
});

async function refusals(
  content: Record<string, unknown>,
): Promise<readonly Problem[]> {
  try {
    const folder = await withFolder({ bench: content }, readPieceFolder);
    return folder.problems.filter((one) => one.severity === "refused");
  } catch (error) {
    if (!(error instanceof RecordError)) throw error;
    return error.problems.filter((one) => one.severity === "refused");
  }
}

Deno.test("readPieceFolder() keeps what was measured to calibrate a ring", async () => {
  const { bench: read } = await withFolder({
    bench: bench({
      spacings: ["109 mm", "110 mm", "110.8 mm"],
      spacings_measured: "outside to outside",
      caliper: { id: "C", uncertainty: "0.01 mm", scale_uncertainty: 1e-4 },
      known_surfaces: [PLATE],
      earlier: [{
        on: "2029-05-02",
        radius: "60.004 mm",
        radius_uncertainty: "0.01 mm",
      }],
      every_months: 24,
      twin: "b",
    }),
  }, readPieceFolder);
  deepEqual(read.rings[0].record, {
    spacings: {
      figures: [109, 110, 110.8],
      over: "outsides",
      overStated: true,
      caliper: {
        id: "C",
        standardUncertainty: 0.01,
        assumed: false,
        scaleUncertainty: 1e-4,
      },
    },
    surfaces: [{
      id: "plate 1",
      form: "concave",
      radius: 1500,
      radiusUncertainty: 0.5,
      sags: [1.2345, 1.2351],
    }],
    earlier: [{ on: "2029-05-02", radius: 60.004, radiusUncertainty: 0.01 }],
    everyMonths: 24,
    twin: "b",
  });
  equal(read.rings[1].record, undefined);
});

Deno.test("readPieceFolder() takes spacings to compare from a CSV file, and the size of the ring from its own", async () => {
  const bytes = await Deno.readFile(
    new URL("../cases/G09-foot-spacing.csv", import.meta.url),
  );
  const { bench: read } = await withFolder({
    bench: bench({ spacings: "caliper.csv" }),
    files: { "caliper.csv": bytes },
  }, readPieceFolder);
  const [{ record, shape }] = read.rings;
  equal(shape.kind === "balls" && shape.circleRadius, 60);
  deepEqual(record?.spacings?.figures, [103, 104, 104.8]);
  equal(record?.spacings?.overStated, false);
  // Common practice: 0.02 mm for a caliper over balls, and marked as ours.
  equal(record?.spacings?.caliper.standardUncertainty, 0.02);
  equal(record?.spacings?.caliper.assumed, true);
});

Deno.test("readPieceFolder() refuses a calibration that cannot be, with the place and the mend", async () => {
  const faults: [Record<string, unknown>, string, RegExp][] = [
    [
      bench({ known_surfaces: [{ ...PLATE, sags: ["-1.2 mm"] }] }),
      "rings.0.calibration.known_surfaces.0.sags.0",
      /a sag on a known surface carries no sign: “form” says which way/,
    ],
    [
      bench({ known_surfaces: [{ ...PLATE, radius: "-1500 mm" }] }),
      "rings.0.calibration.known_surfaces.0.radius",
      /a radius carries no sign/,
    ],
    [
      bench({ known_surfaces: [{ ...PLATE, radius: "3.5 mm" }] }),
      "rings.0.calibration.known_surfaces.0.sags",
      /does not fit/,
    ],
    [
      bench({ spacings: ["10 mm", "20 mm", "90 mm"] }),
      "rings.0.calibration.spacings",
      /three balls cannot stand at these spacings/,
    ],
    [
      bench({ spacings: ["104 mm", "104 mm", "104 mm"] }, {
        radius: undefined,
        spacings: ["104 mm", "104 mm", "104 mm"],
      }),
      "rings.0.calibration.spacings",
      /given twice/,
    ],
    [
      bench({ twin: "A" }),
      "rings.0.calibration.twin",
      /another ring of this bench/,
    ],
    [
      bench({
        earlier: [{
          on: "5/6/29",
          radius: "60 mm",
          radius_uncertainty: "1 mm",
        }],
      }),
      "rings.0.calibration.earlier.0.on",
      /not a date/,
    ],
  ];
  for (const [content, column, words] of faults) {
    const [first, ...rest] = await refusals(content);
    equal(first?.column, column);
    match(first.message, words);
    deepEqual(rest, []);
  }
});
