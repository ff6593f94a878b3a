import { equal } from "node:assert/strict";
import { GrowingNumbers } from "sagbook/numerics/growing_numbers.ts";

Deno.test("GrowingNumbers keeps every number over the ends of its blocks", () => {
  const [sags, lines] = [
    new GrowingNumbers(Float64Array),
    new GrowingNumbers(Uint32Array),
  ];
  const count = 70_000;
  for (let i = 0; i < count; i++) {
    sags.push(i / 7);
    lines.push(i + 1);
  }
  equal(sags.length, count);
  for (const i of [0, 32_767, 32_768, 65_535, 65_536, count - 1]) {
    equal(sags.at(i), i / 7);
    equal(lines.at(i), i + 1);
  }
});
