import { equal, match, ok, rejects } from "node:assert/strict";
import { readingsFigure } from "sagbook/figures/readings_figure.ts";
import { countOf, textsOf } from "./_picture.ts";

const read = (set: number, zone: string, sag: number) => ({
  set: `${set}`,
  zone,
  on: "work" as const,
  sag,
});
const look = (set: number, sag: number) => ({
  ...read(set, "flat", sag),
  on: "flat" as const,
});
const calm = [1, 2, 3, 4].flatMap((set) => [
  read(set, "centre", 0.601),
  read(set, "edge", 0.599 + 0.0005 * set),
]);

Deno.test("readingsFigure() gives looks at the flat a strip of their own, and none without them", async () => {
  const heading = "Looks back at the flat (µm)";
  ok(!textsOf(await readingsFigure({ readings: calm })).includes(heading));
  const both = await readingsFigure({ readings: [...calm, look(4, 0.001)] });
  ok(textsOf(both).includes(heading));
  match(
    both.description,
    /^8 readings of the work in 4 sets, sag 0\.599\d* mm to 0\.601\d* mm\. The flat was looked at 1 time\./,
  );
});

Deno.test("readingsFigure() rings exactly the readings that stand apart", async () => {
  const readings = calm.map((reading, i) => ({
    ...reading,
    flagged: i === 3 || i === 5,
  }));
  // Two rings in the drawing and one in the key.
  const figure = await readingsFigure({ readings });
  const rings = figure.svg.split('class="s-alarm"').slice(1).join("").match(
    /M8,0A8,8/g,
  );
  equal(rings?.length, 2);
  ok(textsOf(figure).includes("stands apart"));
});

Deno.test("readingsFigure() puts one wild reading at the edge and names it", async () => {
  const readings = [...calm, ...calm, read(5, "centre", 61.2)];
  const texts = textsOf(await readingsFigure({ readings }));
  ok(
    texts.some((text) =>
      text.startsWith("Beyond the picture: set 5, centre 61.2")
    ),
    `${texts}`,
  );
  ok(!texts.some((text) => text === "60"), "the axis keeps to the others");
});

Deno.test("readingsFigure() draws identical readings, one reading, and the flat alone", async () => {
  const same = Array.from({ length: 9 }, () => read(1, "centre", 0.6));
  for (const readings of [same, same.slice(0, 1), [look(1, 0)]]) {
    const figure = await readingsFigure({ readings });
    ok(!/NaN|Infinity|undefined/.test(figure.svg));
  }
});

Deno.test("readingsFigure() turns 100,000 readings into ranges and says so", async () => {
  const readings = Array.from(
    { length: 100_000 },
    (_, i) =>
      read(Math.floor(i / 4), i % 2 ? "edge" : "centre", 0.6 + 1e-4 * (i % 5)),
  );
  const figure = await readingsFigure({ readings });
  ok(
    textsOf(figure).join(" ").includes(
      "100\u202f000 readings: each bar runs from the least to the greatest",
    ),
  );
  ok(figure.svg.length < 60_000, `${figure.svg.length} characters`);
  ok(countOf(figure, "g", "s-first") >= 1);
});

Deno.test("readingsFigure() keeps a range's ends: nothing is left out of it", async () => {
  const readings = Array.from(
    { length: 700 },
    (_, i) => read(1, "centre", 0.6 + 1e-6 * i),
  );
  const { svg } = await readingsFigure({ readings });
  const axis = [
    ...svg.matchAll(
      /<text transform="translate\([\d.]+,([\d.]+)\)" y="[\d.]+em">(0\.\d+)<\/text>/g,
    ),
  ]
    .map(([, y, value]) => [Number(y), Number(value)]);
  const [[yLow, low], [yHigh, high]] = [axis[0], axis.at(-1)!];
  const bar =
    /<line x1="([\d.]+)" x2="\1" y1="([\d.]+)" y2="([\d.]+)"><\/line><\/g>/
      .exec(svg)!;
  const toSag = (y: number) => low + (y - yLow) / (yHigh - yLow) * (high - low);
  const ends = [toSag(Number(bar[2])), toSag(Number(bar[3]))].sort();
  ok(
    Math.abs(ends[0] - 0.6) < 1e-5 && Math.abs(ends[1] - 0.600699) < 1e-5,
    `${ends}`,
  );
});

Deno.test("readingsFigure() refuses a missing sag and no readings", async () => {
  await rejects(readingsFigure({ readings: [read(1, "edge", NaN)] }), {
    name: "RangeError",
    message:
      "Cannot draw the readings as the sag of edge must be a finite number: current value is NaN mm",
  });
  await rejects(readingsFigure({ readings: [] }), {
    name: "RangeError",
    message:
      "Cannot draw the readings as there must be at least one reading: current value is 0 of them",
  });
});
