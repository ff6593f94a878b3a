import { equal, throws } from "node:assert/strict";
import {
  inches,
  inchesToMillimetres,
  millimetres,
  millimetresToInches,
} from "sagbook/units/length.ts";

Deno.test("inchesToMillimetres() and millimetresToInches() use 25.4 exactly", () => {
  equal(inchesToMillimetres(inches(10)), 254);
  equal(millimetresToInches(millimetres(254)), 10);
});

Deno.test("millimetres() and inches() refuse what is not finite", () => {
  for (const value of [NaN, Infinity, -Infinity]) {
    throws(() => millimetres(value), {
      name: "RangeError",
      message:
        `Cannot make a length as its value must be a finite number: current value is ${value} mm`,
    });
    throws(() => inches(value), {
      name: "RangeError",
      message:
        `Cannot make a length as its value must be a finite number: current value is ${value} in`,
    });
  }
});
