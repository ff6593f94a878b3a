import { equal, ok, throws } from "node:assert/strict";
import {
  figuredRadius,
  focalLength,
  focalLengthFromLamp,
  radiusBeforeFiguring,
  zonalShift,
} from "sagbook/geometry/focal_length.ts";
import { surfaceSag } from "sagbook/geometry/surface_sag.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

Deno.test("figuredRadius() gives the derived focal lengths and comes near R − t² S", () => {
  const focus = (square: number) =>
    focalLength(figuredRadius(mm(3000), mm(150), Math.sqrt(square)));
  equal(focus(0), 1500);
  equal(focus(0.5).toFixed(3), "1499.062");
  equal(focus(1).toFixed(3), "1498.124");
  const S = surfaceSag(mm(3000), mm(150));
  for (const t of [0.3, 0.7, 1]) {
    const found = figuredRadius(mm(3000), mm(150), t);
    // R − √(R² − t²a²) and t² S differ at order a⁴/(8R³) = 2.3e-3 mm.
    ok(Math.abs(found - (3000 - t * t * S)) < 2.4e-3);
    ok(Math.abs(radiusBeforeFiguring(found, mm(150), t) - 3000) < 1e-12);
  }
});

Deno.test("figuredRadius() shares height and slope with the sphere at the zone", () => {
  const [R, h] = [1200, 90];
  const p = figuredRadius(mm(R), mm(100), 0.9);
  ok(Math.abs(h / p - h / Math.sqrt(R * R - h * h)) < 1e-16);
});

Deno.test("focalLengthFromLamp() undoes the 23 mm that a lamp at 100 m adds", () => {
  const image = 1 / (1 / 1500 - 1 / 100_000);
  equal(Math.round(image - 1500), 23);
  ok(Math.abs(focalLengthFromLamp(mm(image), mm(100_000)) - 1500) < 1e-9);
});

Deno.test("zonalShift() gives the derived 3.75 and 7.5 mm", () => {
  equal(zonalShift(mm(3000), mm(150), true), 3.75);
  equal(zonalShift(mm(3000), mm(150), false), 7.5);
});

Deno.test("focal length functions refuse zones and distances that cannot be", () => {
  throws(() => figuredRadius(mm(3000), mm(150), 1.2), {
    name: "RangeError",
    message:
      "Cannot place the zone of tangency as it must be a fraction of the half diameter from 0 to 1: current value is 1.2",
  });
  throws(() => figuredRadius(mm(100), mm(150), 1), {
    name: "RangeError",
    message:
      "Cannot figure a sphere as the zone of tangency must lie inside its radius of 100 mm: current value is 150 mm",
  });
  throws(() => focalLengthFromLamp(mm(0), mm(10)), {
    name: "RangeError",
    message:
      "Cannot find a focal length as distances must be above 0 mm: current value is 0 mm",
  });
});
