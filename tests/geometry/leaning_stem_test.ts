import { equal, throws } from "node:assert/strict";
import { readFileSync } from "node:fs";
import { sagFromLeaningStem } from "sagbook/geometry/leaning_stem.ts";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

Deno.test("sagFromLeaningStem() mends the bench file G08 as its expectation says", () => {
  const leaning = readFileSync("tests/cases/G08-stem-tilt.csv", "utf8").trim()
    .split(/\r?\n/).filter((line) => line.includes("3 degrees off"))
    .map((line) => mm(Number(line.split(",")[5])));
  equal(leaning.length, 2);
  const feet = { circleRadius: mm(60), ballRadius: mm(3) };
  const radius = (sag: ReturnType<typeof mm>) =>
    radiusFromSag(sag, feet, "concave").toFixed(3);
  for (const reading of leaning) {
    const sag = sagFromLeaningStem(reading, 3);
    equal(sag.toFixed(6), "0.715019");
    equal(radius(sag), "2520.774");
    equal(radius(reading), "2517.324");
  }
  const atOne = 0.716 - sagFromLeaningStem(mm(0.716), 1);
  equal((atOne * 1000).toFixed(2), "0.11");
});

Deno.test("sagFromLeaningStem() refuses 45 degrees", () => {
  throws(() => sagFromLeaningStem(mm(0.7), 45), {
    name: "RangeError",
    message:
      "Cannot take out the lean of a stem as it must be below 45 degrees: current value is 45 degrees",
  });
});
