import { equal } from "node:assert/strict";
import { surfaceErrorFactor } from "sagbook/geometry/asphericity.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { sagTolerance } from "sagbook/zones/tolerance.ts";
import { near } from "./_session.ts";

const feet = { circleRadius: mm(60), ballRadius: mm(6.35) };
const ground = { feet, halfDiameter: 150, outermost: 88, radius: 3000 };
const sag = (
  statedAs: "sag" | "surface" | "radius",
  amount: number,
  changes = {},
) => sagTolerance({ statedAs, amount: mm(amount) }, { ...ground, ...changes });

Deno.test("sagTolerance() takes a tolerance in sag as it is", () => {
  equal(sag("sag", 0.002)?.sag, 0.002);
  equal(sag("sag", 0.002)?.factor, 1);
  equal(sag("sag", 0.002, { radius: Infinity })?.sag, 0.002);
});

Deno.test("sagTolerance() turns radius into sag as the exact sags do, to first order", () => {
  const exact = sagFromRadius(mm(2999.5), feet, "concave") -
    sagFromRadius(mm(3000.5), feet, "concave");
  near(sag("radius", 1)?.sag, exact, 0.006 * exact);
  // T r²/(2R²) by hand: 3600 / 18e6 = 2e-4 mm.
  near(sag("radius", 1)?.sag, 2e-4, 1e-12);
});

Deno.test("sagTolerance() turns surface error into sag by the shape a4 ρ⁴", () => {
  const factor = surfaceErrorFactor(mm(150), mm(88), mm(60));
  near(sag("surface", 0.001)?.factor, factor, 1e-12 * factor);
  near(sag("surface", 0.001)?.sag, 0.001 / factor, 1e-15);
  // A bar along the radius answers a4 ρ⁴ with 6 c² r², across it with 2.
  near(sag("surface", 0.001, { response: 6 })?.sag, 0.0015 / factor, 1e-15);
  near(sag("surface", 0.001, { response: 2 })?.sag, 0.0005 / factor, 1e-15);
});

Deno.test("sagTolerance() has no answer for surface error when only the centre was read", () => {
  equal(sag("surface", 0.001, { outermost: 0 }), undefined);
});
