import { ok } from "node:assert/strict";
import { jitter, spread } from "../../lib/figures/_spread.ts";

Deno.test("spread() keeps neighbours apart, in order and inside, also when they do not fit", () => {
  for (
    const [places, gap, room] of [
      [[0, 0, 0, 90], 20, 100],
      [[95, 96, 97], 30, 100],
      [[0, 50, 100], 10, 100],
      [[0, 1, 2, 3, 4, 5], 40, 100],
    ] as [number[], number, number][]
  ) {
    const moved = spread(places, places.map(() => gap), room);
    const least = Math.min(gap, room / (places.length - 1));
    moved.forEach((x, i) => {
      ok(x >= -1e-9 && x <= room + 1e-9, `${moved}`);
      ok(i === 0 || x - moved[i - 1] >= least - 1e-9, `${moved}`);
    });
  }
});

Deno.test("spread() leaves places alone that are apart already", () => {
  const moved = spread([0, 50, 100], [10, 10, 10], 100);
  ok(moved.every((x, i) => x === 50 * i));
});

Deno.test("jitter() stays within one and covers both sides evenly", () => {
  const all = Array.from({ length: 200 }, (_, i) => jitter(i));
  ok(all.every((x) => x >= -1 && x <= 1));
  ok(Math.abs(all.reduce((a, b) => a + b) / 200) < 0.02);
  ok(all.every((x) => jitter(all.indexOf(x)) === x));
});
