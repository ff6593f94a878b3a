import { equal, ok, throws } from "node:assert/strict";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import {
  radiusSensitivities,
  sagForRadiusChange,
} from "sagbook/geometry/sensitivities.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const feet = { circleRadius: mm(60), ballRadius: mm(6.35) };

Deno.test("radiusSensitivities() gives the derived check values to their digits", () => {
  const sag = sagFromRadius(mm(3000), feet, "concave");
  const found = radiusSensitivities(sag, feet, "concave");
  equal(found.sag.toFixed(4), "-4977.3557");
  equal(found.circleRadius.toFixed(4), "99.7783");
  equal(found.ballRadius, 1);
  equal(radiusSensitivities(sag, feet, "convex").ballRadius, -1);
});

Deno.test("radiusSensitivities() agrees with central differences of the radius", () => {
  for (const form of ["concave", "convex"] as const) {
    const at = (s: number, r: number, b: number) =>
      radiusFromSag(
        mm(s),
        { circleRadius: mm(r), ballRadius: mm(b) },
        form,
      );
    const [s, r, b, h] = [2, 40, 3, 1e-4];
    const found = radiusSensitivities(
      mm(s),
      { circleRadius: mm(r), ballRadius: mm(b) },
      form,
    );
    // Third derivative times h²/6 is below 1e-5 here.
    const near = (value: number, slope: number) =>
      ok(Math.abs(value - slope) < 2e-6 * Math.abs(slope), `${value} ${slope}`);
    near(found.sag, (at(s + h, r, b) - at(s - h, r, b)) / (2 * h));
    near(found.circleRadius, (at(s, r + h, b) - at(s, r - h, b)) / (2 * h));
    near(found.ballRadius, (at(s, r, b + h) - at(s, r, b - h)) / (2 * h));
  }
});

Deno.test("sagForRadiusChange() inverts the sensitivity and comes near T r²/(2R²)", () => {
  const sag = sagForRadiusChange(mm(10), mm(3000), feet, "concave");
  const slope = radiusSensitivities(
    sagFromRadius(mm(3000), feet, "concave"),
    feet,
    "concave",
  ).sag;
  ok(Math.abs(sag * -slope - 10) < 1e-12);
  const simple = 10 * 60 ** 2 / (2 * 3000 ** 2);
  // The simple form leaves out 2b/R = 0.42 % and terms in r²/R².
  ok(Math.abs(sag / simple - 1 - 2 * 6.35 / 3000) < 4e-4);
  equal(sagForRadiusChange(mm(0), mm(3000), feet, "concave"), 0);
});

Deno.test("sensitivities refuse a flat and a negative change", () => {
  throws(() => radiusSensitivities(mm(0), feet, "concave"), {
    name: "RangeError",
    message:
      "Cannot find a radius as sag must be above 0 mm: current value is 0 mm",
  });
  throws(() => sagForRadiusChange(mm(-1), mm(3000), feet, "convex"), {
    name: "RangeError",
    message:
      "Cannot turn a change of radius into sag as it must be at least 0 mm: current value is -1 mm",
  });
});
