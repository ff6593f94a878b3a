import { equal, ok, throws } from "node:assert/strict";
import {
  addPowers,
  dioptres,
  formatPower,
  powerAtIndex,
} from "sagbook/units/dioptre.ts";

Deno.test("powerAtIndex() keeps the curve: there and back is the same power", () => {
  const marked = dioptres(-10, 1.53);
  const onGlass = powerAtIndex(marked, 1.6);
  ok(Math.abs(onGlass.dioptres + 10 * 0.6 / 0.53) < 1e-14);
  ok(Math.abs(powerAtIndex(onGlass, 1.53).dioptres + 10) < 1e-14);
});

Deno.test("addPowers() adds powers of one index and refuses two", () => {
  equal(addPowers(dioptres(5, 1.5), dioptres(-2, 1.5)).dioptres, 3);
  const other: number = 1.53;
  throws(() => addPowers<number>(dioptres(5, 1.5), dioptres(1, other)), {
    name: "RangeError",
    message:
      "Cannot add powers as both must be meant for one index: current value is 1.5 and 1.53",
  });
});

Deno.test("dioptres() refuses a power or an index that means nothing", () => {
  throws(() => dioptres(NaN, 1.5), {
    name: "RangeError",
    message:
      "Cannot make a power as its value must be a finite number: current value is NaN D",
  });
  for (const index of [1, 0, -1.5, NaN, Infinity]) {
    throws(() => dioptres(1, index), {
      name: "RangeError",
      message:
        `Cannot make a power as its index must be above 1: current value is ${index}`,
    });
  }
});

Deno.test("formatPower() always names the index, with three decimals or more", () => {
  equal(formatPower(dioptres(-5.3, 1.53), 2), "−5.30 D (n = 1.530)");
  equal(formatPower(dioptres(2, 1.51680), 1), "2.0 D (n = 1.5168)");
});
