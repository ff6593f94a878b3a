import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { correctByOperator } from "sagbook/repeatability/correct_by_operator.ts";
import { estimateComponents } from "sagbook/repeatability/estimate_components.ts";
import { inventStudy } from "sagbook/repeatability/invented_study.ts";
import type { ScatterSource } from "sagbook/repeatability/source.ts";
import type {
  ScatterFigure,
  Spread,
  SurfaceComponents,
} from "sagbook/repeatability/surface_components.ts";
import { correctDrift } from "sagbook/zones/drift.ts";
import { readCase, readingsOf, type Row } from "./_readings.ts";

/** The only surface of a case, with its ring and piece known. */
async function surfaceOf(name: string): Promise<SurfaceComponents> {
  const { readings, piece, bench } = await readCase(name);
  const found = estimateComponents(readings, { piece, bench });
  equal(found.length, 1);
  return found[0];
}

function figure(
  figures: readonly ScatterFigure[],
  ...sources: ScatterSource[]
): ScatterFigure {
  const found = figures.find((one) => one.sources.includes(sources[0]));
  ok(found, `no figure of ${sources[0]}`);
  deepEqual(found.sources, sources);
  return found;
}

const near = (found: number, expected: number, within: number, what = "") =>
  ok(Math.abs(found - expected) <= within, `${what} ${found}, not ${expected}`);

/** No NaN, no infinity, no negative deviation, anywhere. */
function allFinite(value: unknown, path = "result"): void {
  if (typeof value === "number") {
    ok(Number.isFinite(value), `${path} is ${value}`);
    if (/deviation$|usable$|floor$/.test(path)) ok(value >= 0, path);
  } else if (value !== null && typeof value === "object") {
    const { deviation, interval } = value as Partial<Spread>;
    if (deviation !== undefined && interval !== undefined) {
      ok(
        interval.low <= deviation && deviation <= interval.high,
        `${path}: ${deviation} outside ${interval.low} to ${interval.high}`,
      );
    }
    for (const [key, part] of Object.entries(value)) {
      allFinite(part, `${path}.${key}`);
    }
  }
}

Deno.test("estimateComponents() shows a zeroing variance below zero, uses 0 and says what pooling gives (B01)", async () => {
  const found = await surfaceOf("B01-negative-component");
  equal(found.method, "anova");
  const rows = Object.fromEntries(found.table!.map((row) => [row.source, row]));
  near(rows.zeroing.meanSquare * 1e6, 0.75, 1e-9);
  equal(rows.zeroing.dof, 3);
  near(rows.repeat.meanSquare * 1e6, 1.75, 1e-9);
  equal(rows.repeat.dof, 8);
  const zeroing = figure(found.figures, "zeroing");
  near(zeroing.variance * 1e6, -1 / 3, 1e-9);
  deepEqual([zeroing.belowZero, zeroing.usable, zeroing.sag.deviation], [
    true,
    0,
    0,
  ]);
  near(
    figure(found.figures, "repeat").sag.deviation * 1000,
    Math.sqrt(1.75),
    1e-9,
  );
  ok(
    found.limits.some((one) =>
      one.code === "below zero" && one.source === "zeroing"
    ),
  );
  equal(figure(found.byLikelihood!, "zeroing").variance, 0);
  near(
    figure(found.byLikelihood!, "repeat").sag.deviation * 1000,
    Math.sqrt(16.25 / 11),
    1e-6,
  );
});

Deno.test("estimateComponents() of equal readings gives the display's floor and no figure (B03)", async () => {
  const found = await surfaceOf("B03-all-equal");
  deepEqual([found.status, found.method], ["limited by the display", "none"]);
  deepEqual(found.figures, []);
  equal(found.total, undefined);
  equal(found.table, undefined);
  const limit = found.limits.find(({ code }) =>
    code === "limited by the display"
  );
  ok(limit?.code === "limited by the display");
  equal(limit.step, 0.001);
  near(limit.floor, 0.000408, 5e-7);
  near(limit.radiusFloor!, 1.44, 0.005);
  near(found.meanRadius!, 2520.84, 0.0005);
  near(found.perSag!, 3520.5, 0.05);
  allFinite(found);
});

Deno.test("estimateComponents() raises the total to the display's floor with what of its interval lies above", async () => {
  const { readings, piece, bench } = await readCase("B03-all-equal");
  for (const [scatter, hasInterval] of [[0.0001, false], [0.0004, true]]) {
    const sag = readings.map((one, index) =>
      one.sag + (one.on === "work" ? (index % 3 - 1) * Number(scatter) : 0)
    );
    const [found] = estimateComponents(readings, { piece, bench, sag });
    near(found.total!.sag.deviation, 0.001 / Math.sqrt(6), 1e-12);
    equal(found.total!.sag.interval !== undefined, hasInterval);
    allFinite(found);
  }
});

Deno.test("estimateComponents() gives one figure for what one reading per zeroing and session confounds (B04)", async () => {
  const found = await surfaceOf("B04-confounded");
  equal(found.figures.length, 1);
  const only = figure(found.figures, "repeat", "zeroing", "session");
  near(only.sag.deviation * 1000, Math.sqrt(10 / 3), 1e-6);
  near(only.dof!, 3, 1e-6);
  near(found.meanSag, 0.715, 1e-9);
  near(found.meanRadius!, 2520.84, 0.0005);
  near(found.total!.sag.deviation * 1000, Math.sqrt(10 / 3), 1e-6);
});

Deno.test("estimateComponents() keeps reused labels apart: four zeroings, and a session below zero (B05)", async () => {
  const found = await surfaceOf("B05-reused-labels");
  const rows = Object.fromEntries(
    found.table!.map((
      { source, dof, meanSquare },
    ) => [source, [dof, meanSquare * 1e6]]),
  );
  deepEqual(Object.keys(rows), ["session", "zeroing", "repeat"]);
  deepEqual([rows.session[0], rows.zeroing[0], rows.repeat[0]], [1, 2, 4]);
  near(rows.session[1], 0, 1e-9);
  near(rows.zeroing[1], 16, 1e-9);
  near(rows.repeat[1], 0.5, 1e-9);
  near(figure(found.figures, "zeroing").sag.deviation * 1000, 2.784, 5e-4);
  near(figure(found.figures, "repeat").sag.deviation * 1000, 0.707, 5e-4);
  near(figure(found.figures, "session").variance * 1e6, -4, 1e-9);
  equal(figure(found.figures, "session").usable, 0);
  near(found.total!.variance * 1e6, 7.75 + 0.5, 1e-9);
  ok(
    found.limits.some((one) =>
      one.code === "labels reused" && one.labels.length === 2
    ),
  );
});

Deno.test("estimateComponents() does not report hand heat as repeatability (G05)", async () => {
  const { readings, piece, bench } = await readCase("G05-hand-heat");
  const { sag, drifts } = correctDrift(readings, 0.001);
  const [found] = estimateComponents(readings, { piece, bench, sag, drifts });
  equal(found.status, "limited by the display");
  near(found.meanSag, 0.714, 1e-9);
  near(found.meanRadius!, 2524.365, 0.0005);
  deepEqual(found.drift!.corrected, [readings[0].zeroing]);
  near(found.drift!.mean, 0.005, 1e-9);
  ok(drifts[0].uncertainty > 0, "the correction carries both looks");
  const [left] = estimateComponents(readings, { piece, bench });
  near(left.meanRadius!, 2515.57, 0.0005);
  ok(
    left.limits.some((one) =>
      one.code === "drift not corrected" &&
      one.zeroings[0] === readings[0].zeroing
    ),
  );
});

Deno.test("estimateComponents() points out sessions whose notes differ and never merges them in silence (G08)", async () => {
  const found = await surfaceOf("G08-stem-tilt");
  const notes = found.limits.find(({ code }) =>
    code === "notes differ between sessions"
  );
  ok(notes?.code === "notes differ between sessions");
  deepEqual(notes.notes.map((one) => one.notes), [
    ["upright"],
    ["stem refitted; 3 degrees off"],
  ]);
  ok(found.limits.some(({ code }) => code === "limited by the display"));
  deepEqual(figure(found.figures, "repeat", "zeroing").usable, 0);
  ok(found.total!.sag.deviation >= 0.000408);
  allFinite(found);
});

Deno.test("estimateComponents() takes the zones out of a balanced crossed study exactly", () => {
  // Three zeroings, two zones, two readings each; by hand in µm.
  const sags = [[0, 2, 10, 12], [5, 5, 14, 16], [1, 3, 9, 13]];
  const rows: Row[] = sags.flatMap((row, zeroing) =>
    row.map((sag, k) => ({
      zeroing,
      zone: k < 2 ? "centre" as const : "edge" as const,
      sag,
    }))
  );
  const [found] = estimateComponents(readingsOf(rows));
  const table = Object.fromEntries(
    found.table!.map((
      { source, dof, meanSquare },
    ) => [source, [dof, meanSquare * 1e6]]),
  );
  // Cell means 1 11 | 5 15 | 2 11; zeroing means 6 10 6.5; zone means 8/3 37/3.
  near(table.repeat[1], (2 + 2 + 0 + 2 + 2 + 8) / 6, 1e-9);
  equal(table.repeat[0], 6);
  near(table.zeroing[1], 4 * (1.5 ** 2 + 2.5 ** 2 + 1) / 2, 1e-9);
  equal(table.zeroing[0], 2);
  const deviations = [1 - 6, 5 - 10, 2 - 6.5].map((d) => d + 29 / 6);
  near(
    table["zone × zeroing"][1],
    2 * 2 * deviations.reduce((sum, d) => sum + d * d, 0) / 2,
    1e-9,
  );
  equal(table["zone × zeroing"][0], 2);
  near(table.zone[1], 6 * 2 * (29 / 6) ** 2, 1e-9);
  deepEqual(found.table!.find(({ source }) => source === "zeroing")!.expected, {
    zeroing: 4,
    "zone × zeroing": 2,
    repeat: 1,
  });
});

Deno.test("estimateComponents() by variance analysis and by likelihood agree where no figure is below zero", () => {
  const random = new Random(11);
  const rows: Row[] = [];
  for (const operator of ["A", "B", "C", "D"]) {
    const o = 3 * random.normal();
    for (let k = 0; k < 5; k++) {
      const z = 2 * random.normal();
      for (const zone of ["centre", "50%", "edge"] as const) {
        const cell = 1.5 * random.normal();
        for (let r = 0; r < 3; r++) {
          rows.push({
            operator,
            zeroing: 10 * "ABCD".indexOf(operator) + k,
            zone,
            sag: o + z + cell + random.normal(),
          });
        }
      }
    }
  }
  const [found] = estimateComponents(readingsOf(rows));
  equal(found.method, "anova");
  for (const one of found.figures) {
    ok(!one.belowZero);
    const other = figure(found.byLikelihood!, one.sources[0]);
    near(other.variance / one.variance, 1, 1e-5, one.sources[0]);
    ok(
      one.sag.interval!.low <= one.sag.deviation &&
        one.sag.deviation <= one.sag.interval!.high,
    );
    ok(
      other.sag.interval!.low <= one.sag.deviation &&
        one.sag.deviation <= other.sag.interval!.high,
    );
  }
  near(
    found.total!.variance,
    found.figures.reduce((sum, { variance }) => sum + variance, 0),
    1e-15,
  );
});

Deno.test("estimateComponents() finds the truth of the invented study, and the drift of one operator", () => {
  // Rounding of the reading, and of the zero, stay in the figures.
  const step = 0.001 / Math.sqrt(12);
  let [held, asked] = [0, 0];
  for (const seed of [1, 2, 3, 4, 5]) {
    const { readings, piece, bench, truth } = inventStudy({ seed });
    const corrected = correctByOperator(readings, correctDrift);
    const [found] = estimateComponents(readings, {
      ...corrected,
      piece,
      bench,
    });
    equal(found.method, "reml");
    const truths: [ScatterSource, number][] = [
      ["repeat", Math.hypot(truth.repeat, step)],
      ["zeroing", Math.hypot(truth.zeroing, step)],
      ["operator", truth.operator],
      ["diameter", truth.diameter],
      ["zone × zeroing", truth.zoneByZeroing],
    ];
    for (const [source, deviation] of truths) {
      const { interval } = figure(found.figures, source).sag;
      asked++;
      if (interval!.low <= deviation && deviation <= interval!.high) held++;
    }
    const moves = new Map(
      found.drift!.byOperator.map((one) => [one.operator, one]),
    );
    // From the opening look to the closing one the zero creeps seven steps.
    near(moves.get("C")!.mean, 7 * truth.driftPerStep.C, 0.0015);
    ok(moves.get("C")!.interval!.low > 0.002);
    ok(Math.abs(moves.get("A")!.mean) < 0.001);
    ok(found.totalWithDrift!.sag.deviation > found.total!.sag.deviation);
    near(found.perSag!, 4983, 20, "mm of radius for each mm of sag");
  }
  ok(held >= asked - 3, `${held} of ${asked} intervals hold the truth`);
});

Deno.test("estimateComponents() sees no drift once the warm hands are cured", () => {
  const { readings } = inventStudy({ seed: 1, cured: true });
  const [found] = estimateComponents(
    readings,
    correctByOperator(readings, correctDrift),
  );
  for (const { mean } of found.drift!.byOperator) ok(Math.abs(mean) < 0.0008);
  ok(found.drift!.variance < 1e-6);
});

Deno.test("correctByOperator() keeps one operator's drift out of another's readings", () => {
  const { readings } = inventStudy({ seed: 3 });
  const { sag, drifts } = correctByOperator(readings, correctDrift);
  const of = new Map(
    readings.map(({ zeroing, operator }) => [zeroing, operator]),
  );
  equal(drifts.length, 24);
  ok(
    drifts.every(({ zeroing, treatment }) =>
      of.get(zeroing) === "C"
        ? treatment !== "carried"
        : treatment === "carried"
    ),
  );
  readings.forEach(({ operator, sag: read }, k) => {
    if (operator !== "C") equal(sag[k], read);
  });
});

Deno.test("estimateComponents() gives each zeroing its shift, shrunk towards none, and its readings less their zones", () => {
  // Four zeroings of two readings at two zones 10 µm apart, shifts ±6 and ±2 µm.
  const rows: Row[] = [6, -6, 2, -2].flatMap((shift, zeroing) =>
    (["centre", "edge"] as const).flatMap((zone) =>
      [1, -1].map((e) => ({
        zeroing,
        zone,
        sag: shift + e + (zone === "edge" ? 10 : 0),
      }))
    )
  );
  const [{ zeroings, figures }] = estimateComponents(readingsOf(rows));
  deepEqual(
    zeroings.map(({ departures }) =>
      departures.map((d) => Math.round(d * 1e6) / 1000)
    ),
    [
      [7, 5, 7, 5],
      [-5, -7, -5, -7],
      [3, 1, 3, 1],
      [-1, -3, -1, -3],
    ],
  );
  // Balanced: shrunk by var(Z) / (var(Z) + pooled scatter / 4).
  const [repeat, , zeroing] = figures;
  equal(repeat.variance > 0 && zeroing.variance > 0, true);
  ok(zeroings[0].shift * 1000 > 5.5 && zeroings[0].shift * 1000 < 6);
  near(zeroings[0].shift + zeroings[1].shift, 0, 1e-9);
  near(zeroings[2].shift / zeroings[0].shift, 1 / 3, 1e-6);
});

Deno.test("estimateComponents() keeps grades apart", () => {
  const rows: Row[] = [0, 1, 2].flatMap((
    zeroing,
  ) => [{ zeroing, sag: zeroing }, { zeroing, sag: zeroing + 4 }]);
  const coarse = readingsOf(rows).map((one) => ({ ...one, grade: "120" }));
  const fine = readingsOf(rows.map((row) => ({ ...row, sag: row.sag! / 4 })))
    .map((one) => ({ ...one, grade: "500" }));
  const found = estimateComponents([...coarse, ...fine]);
  deepEqual(found.map(({ grade }) => grade), ["120", "500"]);
  near(
    found[0].figures[0].sag.deviation / found[1].figures[0].sag.deviation,
    4,
    1e-6,
  );
});

Deno.test("estimateComponents() answers bad input narrowly: no NaN, no negative deviation", () => {
  const zones = ["centre", "50%", "edge"] as const;
  const studies: Row[][] = [
    [{}],
    [{ sag: 1 }, { sag: 2 }],
    zones.map((zone, k) => ({ zone, sag: k })),
    [0, 1, 2].flatMap((zeroing) =>
      zones.map((zone, k) => ({
        zeroing,
        zone,
        diameter: 60 * zeroing,
        sag: zeroing * k,
      }))
    ),
    [0, 1, 2].flatMap((zeroing) =>
      zones.map((zone) => ({ zeroing, zone, operator: "A", sag: 3 }))
    ),
    [{ session: "S1", operator: "A", sag: 1 }, {
      session: "S2",
      operator: "B",
      sag: 3,
    }],
    [{ zeroing: 1, sag: 1 }, { zeroing: 1, sag: 1 }, { zeroing: 2, sag: 4 }, {
      zeroing: 2,
      sag: 4,
    }],
    [
      { zeroing: 1, zone: "edge", sag: 1 },
      { zeroing: 2, zone: "edge", sag: 2 },
      { zeroing: 2, zone: "centre", sag: 0 },
    ],
    [{ zeroing: 1, sag: 1 }, { zeroing: 2, sag: 2, operator: "A" }, {
      zeroing: 3,
      sag: 9,
      diameter: 30,
    }],
    [
      { zeroing: 1, zone: "edge", diameter: 0, sag: 1 },
      { zeroing: 2, zone: "edge", sag: 2 },
      { zeroing: 3, zone: "edge", diameter: 90, sag: 5 },
      { zeroing: 3, zone: "edge", diameter: 90, sag: 4 },
    ],
  ];
  for (const rows of studies) {
    for (const found of estimateComponents(readingsOf(rows))) {
      allFinite(found);
      const named = found.figures.flatMap(({ sources }) => sources);
      equal(new Set(named).size, named.length, "a source stands in one figure");
    }
  }
  deepEqual(estimateComponents([]), []);
  equal(
    estimateComponents(readingsOf(studies[0]))[0].status,
    "too few readings",
  );
  const [repeated] = estimateComponents(readingsOf(studies[6]));
  equal(figure(repeated.figures, "repeat").usable, 0);
  ok(figure(repeated.figures, "zeroing").usable > 0);
  const unknown = readingsOf([{ sag: 0 }, { sag: 1 }]).map((
    { step: _, ...rest },
  ) => rest);
  ok(
    estimateComponents(unknown)[0].limits.some(({ code }) =>
      code === "no display step"
    ),
  );
  ok(
    estimateComponents(readingsOf(studies[8]))[0].limits.some((one) =>
      one.code === "partly recorded"
    ),
  );
});

Deno.test("estimateComponents() refuses sags that do not belong to the readings, and a ring nobody has", async () => {
  const { readings, piece, bench } = await readCase("B03-all-equal");
  throws(() => estimateComponents(readings, { sag: [1] }), {
    name: "RangeError",
    message:
      "Cannot estimate components as there must be one corrected sag for each of 9 readings: current value is 1",
  });
  throws(() => estimateComponents(readings, { sag: readings.map(() => NaN) }), {
    name: "RangeError",
    message:
      "Cannot estimate components as every corrected sag must be a finite number: current value is NaN mm",
  });
  throws(
    () =>
      estimateComponents(readings, { piece, bench: { ...bench, rings: [] } }),
    {
      name: "RangeError",
      message:
        "Cannot estimate components in radius as the ring must be on the bench: current value is ring 60",
    },
  );
});
