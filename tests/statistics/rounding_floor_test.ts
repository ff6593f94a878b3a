import { ok, throws } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import {
  roundingHalfWidth,
  survivingRounding,
} from "sagbook/statistics/rounding_floor.ts";

Deno.test("roundingHalfWidth() leaves the stated tail of two uniform errors outside", () => {
  const random = new Random(1);
  for (const tail of [0.02, 0.05, 0.1, 0.5]) {
    const half = roundingHalfWidth(tail);
    let outside = 0;
    const draws = 40_000;
    for (let k = 0; k < draws; k++) {
      if (Math.abs(random.uniform() - random.uniform()) > half) outside++;
    }
    const error = Math.sqrt(tail * (1 - tail) / draws);
    ok(Math.abs(outside / draws - tail) < 4 * error, `${tail}`);
  }
});

Deno.test("roundingHalfWidth() refuses a tail that is no probability", () => {
  for (const tail of [0, 1, -0.1, NaN]) {
    throws(() => roundingHalfWidth(tail), {
      name: "RangeError",
      message:
        `Cannot find a rounding interval as tail must be between 0 and 1: current value is ${tail}`,
    });
  }
});

Deno.test("survivingRounding() is never less than the rounding that scatter leaves in a mean", () => {
  const random = new Random(2);
  for (const scatter of [0.1, 0.3, 0.5]) {
    // Rounding error of the mean of many readings, over where truth stands.
    let squares = 0;
    for (let phase = 0; phase < 40; phase++) {
      const truth = (phase + 0.5) / 40;
      let sum = 0;
      const readings = 20_000;
      for (let k = 0; k < readings; k++) {
        sum += Math.round(truth + scatter * random.normal()) - truth;
      }
      squares += (sum / readings) ** 2;
    }
    const left = Math.sqrt(squares / 40) * Math.sqrt(12);
    // Known scatter: the lower limit is the value itself; 1/6 is rounding's.
    const stated = survivingRounding(2 * scatter ** 2 + 1 / 6, 1, 1);
    ok(left <= stated + 0.02, `${scatter}: ${left}, stated ${stated}`);
    ok(left > 0.5 * stated - 0.02, `${scatter}: ${left}, stated ${stated}`);
  }
});
