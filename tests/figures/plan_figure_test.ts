import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { planFigure } from "sagbook/figures/plan_figure.ts";
import type { FootDirection } from "sagbook/geometry/feet.ts";
import { textsOf } from "./_picture.ts";

const work = {
  halfDiameter: 150,
  bevel: 2,
  contactRadius: 60,
  feet: "balls",
} as const;
const reading = (offset: number, foot: FootDirection, departure = 0) => ({
  offset,
  diameterDegrees: 0,
  foot,
  departure,
});

/** Centre of the disc and px per mm, from its outline. */
const scaleOf = (svg: string) => {
  const [, r, x, y] =
    /<path class="f-veil"[^>]*d="M([\d.]+),0[^"]*"[^>]*transform="translate\(([\d.]+),([\d.]+)\)"/
      .exec(svg) ??
      /<g class="f-veil[^"]*"[^>]*><circle cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)"/
        .exec(svg)!.map((_, i, all) => [all[0], all[3], all[1], all[2]][i]);
  return { x: Number(x), y: Number(y), k: Number(r) / 150 };
};

Deno.test("planFigure() draws the feet of a reading where they touch the work", async () => {
  // One foot out at 85 mm: feet at radii 145, 76, 76 mm, by hand.
  for (
    const [foot, radii] of [
      [{ kind: "foot out" }, [145, 75.7, 75.7]],
      [{ kind: "feet out" }, [25, 126.2, 126.2]],
      [{ kind: "angle", degrees: 0 }, [145, 75.7, 75.7]],
    ] as [FootDirection, number[]][]
  ) {
    const { svg } = await planFigure({
      ...work,
      readings: [reading(85, foot)],
    });
    const { x, y, k } = scaleOf(svg);
    const legs = [
      ...svg.matchAll(/<path d="M([\d.]+),([\d.]+)L([\d.]+),([\d.]+)"/g),
    ]
      .map(([, , , x2, y2]) => Math.hypot(Number(x2) - x, Number(y2) - y) / k);
    const found = legs.slice(-3).sort((a, b) => b - a);
    const wanted = [...radii].sort((a, b) => b - a);
    found.forEach((radius, i) =>
      ok(Math.abs(radius - wanted[i]) < 0.5, `${foot.kind}: ${found}`)
    );
  }
});

Deno.test("planFigure() draws the circle the feet stood on where their direction is unknown", async () => {
  const unknown = { kind: "unknown" } as const;
  const figure = await planFigure({
    ...work,
    readings: [reading(85, unknown)],
  });
  ok(textsOf(figure).includes("feet somewhere on this circle"));
  ok(!textsOf(figure).includes("foot"));
  const angle = { kind: "angle", degrees: 30 } as const;
  const lost = await planFigure({
    ...work,
    readings: [{ ...reading(85, angle), diameterDegrees: undefined }],
  });
  ok(
    textsOf(lost).join(" ").includes(
      "without a direction of the diameter are drawn along 0°",
    ),
  );
});

Deno.test("planFigure() tells departures apart by shape, in steps that hold the largest", async () => {
  const foot = { kind: "foot out" } as const;
  const figure = await planFigure({
    ...work,
    readings: [
      reading(0, foot, 0),
      reading(60, foot, 0.0024),
      reading(-60, foot, -0.0024),
    ],
  });
  const texts = textsOf(figure);
  for (
    const text of [
      "below −2 µm",
      "−2 to −1 µm",
      "within ±1 µm",
      "+1 to +2 µm",
      "above +2 µm",
    ]
  ) {
    ok(texts.includes(text), `${text} is missing of ${texts}`);
  }
  ok(texts.includes("Amounts are sag less the mean of the reading's set."));
  match(
    figure.description,
    /300 mm across, read at 3 places of the gauge; sag less the mean of its set −2\.4 µm to 2\.4 µm/,
  );
});

Deno.test("planFigure() draws 100,000 readings at a few places as their means", async () => {
  const foot = { kind: "foot out" } as const;
  const readings = Array.from(
    { length: 100_000 },
    (_, i) => reading((i % 5) * 20 - 40, foot, 1e-6 * (i % 3)),
  );
  const figure = await planFigure({ ...work, readings });
  ok(textsOf(figure).join(" ").includes("Each mark is the mean"));
  ok(figure.svg.length < 30_000);
});

Deno.test("planFigure() marks a length of its own scale", async () => {
  const foot = { kind: "foot out" } as const;
  const { svg } = await planFigure({ ...work, readings: [reading(0, foot)] });
  const { k } = scaleOf(svg);
  const [, x1, x2] =
    /stroke-width="3"[^>]*>(?:<line|<path)[^>]*x1="([\d.]+)" x2="([\d.]+)"/
      .exec(svg)!;
  ok(svg.includes(">50 mm<"));
  equal(Math.round((Number(x2) - Number(x1)) / k), 50);
});

Deno.test("planFigure() refuses a work without size and a reading without a departure", async () => {
  const foot = { kind: "foot out" } as const;
  await rejects(
    planFigure({ ...work, halfDiameter: 0, readings: [reading(0, foot)] }),
    {
      name: "RangeError",
      message:
        "Cannot draw the plan of the work as half the diameter must be above 0: current value is 0 mm",
    },
  );
  await rejects(
    planFigure({ ...work, readings: [reading(0, foot, Infinity)] }),
    {
      name: "RangeError",
      message:
        "Cannot draw the plan of the work as a departure must be a finite number: current value is Infinity mm",
    },
  );
});

Deno.test("planFigure() tells departures apart no finer than half the display step, nor than a nanometre", async () => {
  const readings = [
    reading(0, { kind: "foot out" }, 2e-16),
    reading(40, { kind: "foot out" }, -1.1e-16),
  ];
  const classes = async (displayStep?: number) =>
    textsOf(await planFigure({ ...work, readings, displayStep }))
      .filter((text) => text.startsWith("within"));
  deepEqual(await classes(0.01), ["within ±5 µm"]);
  deepEqual(await classes(0.001), ["within ±0.5 µm"]);
  deepEqual(await classes(), ["within ±0.001 µm"]);
  const { description } = await planFigure({ ...work, readings });
  match(description, /0 µm to 0 µm/);
  await rejects(
    () => planFigure({ ...work, readings, displayStep: 0 }),
    /the display step.*0/s,
  );
});
