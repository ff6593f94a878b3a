import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { zonesFigure } from "sagbook/figures/zones_figure.ts";
import { textsOf } from "./_picture.ts";

const reference = { label: "centre", distance: 0 };
const edge = {
  label: "edge",
  distance: 88,
  difference: -0.0012,
  interval90: { low: -0.0019, high: -0.0005 },
  interval95: { low: -0.0021, high: -0.0003 },
};
/** Top and bottom of every upright bar drawn so wide, in px. */
const barsOf = (svg: string, role: string) =>
  [...svg.matchAll(
    /<g class="s-(\w+)" stroke="[^"]+"(?: stroke-width="([\d.]+)")?>((?:<line [^>]*><\/line>)+)<\/g>/g,
  )]
    .filter(([, name]) => name === role)
    .flatMap(([, , , lines]) =>
      [...lines.matchAll(
        /x1="([\d.]+)" x2="([\d.]+)" y1="([\d.]+)" y2="([\d.]+)"/g,
      )]
        .map((found) => found.slice(1).map(Number))
        .filter(([x1, x2]) => x1 === x2)
        .map(([, , y1, y2]) => Math.abs(y1 - y2))
    );

Deno.test("zonesFigure() draws the 90 % interval thick and inside the 95 % one, to one scale", async () => {
  const { svg } = await zonesFigure({
    reference,
    zones: [edge],
    tolerance: 0.001,
  });
  const [[inner], [outer]] = [barsOf(svg, "first"), barsOf(svg, "ink")];
  ok(inner > 20, `${inner} px`);
  // 1.4 µm within 1.8 µm, as drawn to a hundredth of a pixel.
  ok(Math.abs(inner / outer - 1.4 / 1.8) < 1e-3, `${inner} of ${outer}`);
});

Deno.test("zonesFigure() puts the caller's verdict into the title and every zone on the axis", async () => {
  const figure = await zonesFigure({ reference, zones: [edge] }, {
    title: "Not decided: read two more sets",
  });
  const texts = textsOf(figure);
  equal(figure.title, "Not decided: read two more sets");
  for (
    const text of [
      "centre",
      "0 mm",
      "edge",
      "88 mm",
      "Sag less sag at centre (µm)",
    ]
  ) {
    ok(texts.includes(text), `${text} is missing of ${texts}`);
  }
  ok(!texts.some((text) => text.startsWith("tolerance")));
});

Deno.test("zonesFigure() says the numbers in words, in the user's unit", async () => {
  const input = { reference, zones: [edge], tolerance: 0.001 };
  equal(
    (await zonesFigure(input)).description,
    "Mean difference of sag from centre: edge −1.20 µm (95 % interval −2.10 µm to −0.30 µm). The tolerance is 1 µm either way.",
  );
  // 1.2 µm are 0.0472 thou.
  match(
    (await zonesFigure(input, { unit: "in" })).description,
    /edge −0\.047 thou .* The tolerance is 0\.039 thou either way/,
  );
});

Deno.test("zonesFigure() keeps zones at one distance apart and in the order of their distances", async () => {
  const zones = [
    { ...edge, label: "edge (feet out)" },
    { ...edge, label: "edge (foot out)" },
    { ...edge, label: "50 %", distance: 75 },
  ];
  const { svg } = await zonesFigure({ reference, zones });
  const at = (label: string) => {
    const [, x] = new RegExp(
      `<text transform="translate\\(([\\d.]+),[^>]*>(?:<tspan[^>]*>)?${label}`,
    )
      .exec(svg) ?? [];
    return Number(x);
  };
  const places = ["centre", "50 %", "edge"].map(at);
  deepEqual([...places].sort((a, b) => a - b), places);
});

Deno.test("zonesFigure() draws at most 200 sets of a zone and says so", async () => {
  const sets = Array.from(
    { length: 100_000 },
    (_, i) => ({ difference: 1e-6 * (i % 7) }),
  );
  const figure = await zonesFigure({ reference, zones: [{ ...edge, sets }] });
  ok(textsOf(figure).join(" ").includes("the first 200 sets are drawn"));
  ok(figure.svg.length < 100_000, `${figure.svg.length} characters`);
});

Deno.test("zonesFigure() refuses what is no number, an interval that runs backward, and nothing at all", async () => {
  const draw = (change: object) =>
    zonesFigure({ reference, zones: [{ ...edge, ...change }] });
  await rejects(draw({ difference: NaN }), {
    name: "RangeError",
    message:
      "Cannot draw the zones as the difference of edge must be a finite number: current value is NaN mm",
  });
  await rejects(draw({ difference: "" }), {
    name: "TypeError",
    message:
      'Cannot draw the zones as the difference of edge must be a number: current value is ""',
  });
  await rejects(draw({ interval95: { low: 1, high: 0 } }), {
    name: "RangeError",
    message:
      "Cannot draw the zones as the interval of edge must not end below its start: current value is 1 to 0 mm",
  });
  await rejects(zonesFigure({ reference, zones: [] }), {
    name: "RangeError",
    message:
      "Cannot draw the zones as there must be at least one zone beside the reference: current value is 0 of them",
  });
  await rejects(zonesFigure({ reference, zones: [edge], tolerance: 0 }), {
    name: "RangeError",
    message:
      "Cannot draw the zones as the tolerance must be above 0: current value is 0 mm",
  });
  await rejects(zonesFigure({ reference, zones: [edge] }, { width: 100 }), {
    name: "RangeError",
    message:
      "Cannot draw a figure as its width must be 300 to 2000 px: current value is 100 px",
  });
});

Deno.test("zonesFigure() names every zone, on levels where they have no room beside one another", async () => {
  const label = (turned: string) => [
    { label: `50% reach (${turned})`, distance: 44 },
    { label: `edge (${turned})`, distance: 88 },
  ];
  const zones = ["foot out", "feet out", "turned"].flatMap(label)
    .map((zone) => ({ ...zone, difference: 0.001 }));
  const figure = await zonesFigure({
    reference: { label: "centre", distance: 0 },
    zones,
  });
  const texts = textsOf(figure);
  equal(texts.filter((text) => text === "50% reach").length, 3);
  equal(texts.filter((text) => text === "edge").length, 3);
  for (const turned of ["(foot out)", "(feet out)", "(turned)"]) {
    equal(texts.filter((text) => text === turned).length, 2, turned);
  }
});
