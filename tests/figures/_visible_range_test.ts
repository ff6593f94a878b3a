import { deepEqual } from "node:assert/strict";
import { visibleRange } from "../../lib/figures/_visible_range.ts";

const calm = Array.from({ length: 20 }, (_, i) => 0.6 + 1e-4 * i);

Deno.test("visibleRange() leaves one wild value out and keeps everything else", () => {
  deepEqual(visibleRange([...calm, 61]), { low: calm[0], high: calm[19] });
  deepEqual(visibleRange([...calm, -5, 61]), { low: calm[0], high: calm[19] });
});

Deno.test("visibleRange() keeps all where many stand far off, few were read, or most are equal", () => {
  deepEqual(visibleRange([...calm, 61, 61, 61]), { low: calm[0], high: 61 });
  deepEqual(visibleRange([0.6, 0.6001, 61]), { low: 0.6, high: 61 });
  deepEqual(visibleRange([...Array(20).fill(0.6), 0.601]), {
    low: 0.6,
    high: 0.601,
  });
});
