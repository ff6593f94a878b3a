import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { readFileSync } from "node:fs";
import {
  convertPower,
  powerFromRadius,
  radiusFromPower,
} from "sagbook/geometry/surface_power.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

// tests/references/surface-power.json: public optometry texts, recomputed.
const { data, expected } = JSON.parse(
  readFileSync("tests/references/surface-power.json", "utf8"),
);

Deno.test("powerFromRadius() and radiusFromPower() meet the reference rows both ways", () => {
  equal(data.length, 7);
  for (const { R_mm, n, power_dioptre } of data) {
    const form = R_mm < 0 ? "concave" : "convex";
    const radius = mm(Math.abs(R_mm));
    const power = powerFromRadius(radius, form, n);
    ok(Math.abs(power / power_dioptre - 1) < 1e-12, `${power}`);
    const back = radiusFromPower(power_dioptre, n);
    equal(back.form, form);
    ok(Math.abs(back.radius / radius - 1) < 1e-12);
  }
  ok(Math.abs(powerFromRadius(mm(100), "convex", 1.53) - 5.3) < 1e-12);
});

Deno.test("convertPower() gives the published worked examples to the digits printed", () => {
  const [one, two] = expected.worked_examples;
  const single = convertPower(one["reading_dioptre_at_1.53"], 1.53, one.n);
  ok(Math.abs(single - one.true_power_dioptre) < 0.005);
  const total = two["readings_dioptre_at_1.523"]
    .map((reading: number) => convertPower(reading, 1.523, two.n))
    .reduce((sum: number, power: number) => sum + power);
  ok(Math.abs(total - two.total_power_dioptre) < 0.05);
  ok(Math.abs(convertPower(convertPower(-7, 1.5, 1.7), 1.7, 1.5) + 7) < 1e-14);
});

Deno.test("surface power refuses a flat, an index of air and a missing number", () => {
  const refused = [
    [
      () => powerFromRadius(mm(0), "convex", 1.5),
      "Cannot find a power as the radius of curvature must be above 0 mm: current value is 0 mm",
    ],
    [
      () => powerFromRadius(mm(100), "convex", 1),
      "Cannot use a surface power as its index must be above 1: current value is 1",
    ],
    [
      () => radiusFromPower(0, 1.5),
      "Cannot find a radius as the power must be finite and not 0: current value is 0 D",
    ],
    [
      () => convertPower(NaN, 1.5, 1.6),
      "Cannot convert a power as it must be finite: current value is NaN D",
    ],
  ] as const;
  const messages = refused.map(([call]) => {
    try {
      call();
      return "nothing thrown";
    } catch (error) {
      return (error as RangeError).message;
    }
  });
  deepEqual(messages, refused.map(([, message]) => message));
  throws(() => radiusFromPower(1, Infinity), RangeError);
});
