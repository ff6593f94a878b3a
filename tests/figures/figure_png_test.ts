import { deepEqual, equal, ok, rejects } from "node:assert/strict";
import { inflateSync } from "node:zlib";
import { figurePng, figurePngs } from "sagbook/figures/figure_png.ts";
import { zonesFigure } from "sagbook/figures/zones_figure.ts";
import { testPictures } from "./_needs_pictures.ts";
import { samples } from "./_samples.ts";

/** Size of a PNG, and how many different bytes its pixels have. */
function look(png: Uint8Array) {
  deepEqual([...png.slice(0, 8)], [137, 80, 78, 71, 13, 10, 26, 10]);
  const view = new DataView(png.buffer, png.byteOffset, png.length);
  const data: Uint8Array[] = [];
  for (let at = 8; at < png.length;) {
    const length = view.getUint32(at);
    const kind = new TextDecoder().decode(png.slice(at + 4, at + 8));
    if (kind === "IDAT") data.push(png.slice(at + 8, at + 8 + length));
    at += length + 12;
  }
  const packed = new Uint8Array(
    data.reduce((sum, { length }) => sum + length, 0),
  );
  let to = 0;
  for (const part of data) {
    packed.set(part, to);
    to += part.length;
  }
  const pixels = inflateSync(packed);
  return {
    width: view.getUint32(16),
    height: view.getUint32(20),
    values: new Set(pixels).size,
  };
}

const zones = (title: string) =>
  zonesFigure({
    reference: { label: "centre", distance: 0 },
    zones: [{ label: "edge", distance: 88, difference: -0.0012 }],
  }, { title });

testPictures(
  "figurePngs() draws every sample, not blank, and leaves the lock file as it was",
  async () => {
    const lock = await Deno.readTextFile("deno.lock");
    const figures = await Promise.all(samples.map(({ draw }) => draw()));
    const pictures = await figurePngs(figures, { width: 300 });
    for (const [i, { width, height }] of figures.entries()) {
      const found = look(pictures[i]);
      equal(found.width, 300);
      ok(Math.abs(found.height - height * 300 / width) <= 1);
      ok(found.values > 16, `${samples[i].name} is blank`);
    }
    equal(await Deno.readTextFile("deno.lock"), lock);
  },
);

testPictures(
  "figurePng() draws words: another title gives another picture, a dark page too",
  async () => {
    const light = await figurePng(await zones("AAAA"), { width: 480 });
    const other = await figurePng(await zones("BBBB"), { width: 480 });
    const dark = await figurePng(await zones("AAAA"), {
      width: 480,
      theme: "dark",
    });
    equal(look(light).width, 480);
    const own = look(await figurePng(await zones("AAAA")));
    equal(own.width, 3 * 480, "three times its own size unless told");
    ok(Buffer(light) !== Buffer(other) && Buffer(light) !== Buffer(dark));
  },
);

const Buffer = (bytes: Uint8Array): string => bytes.join();

Deno.test("figurePng() refuses a width before anything is drawn", async () => {
  for (const width of [49, 10_001, 480.5, NaN]) {
    await rejects(async () => await figurePng(await zones("T"), { width }), {
      name: "RangeError",
      message:
        `Cannot draw a picture as its width must be a whole number of 50 to 10000 pixels: current value is ${width}`,
    });
  }
});

Deno.test("figurePngs() of nothing starts nothing", async () => {
  deepEqual(await figurePngs([]), []);
});
