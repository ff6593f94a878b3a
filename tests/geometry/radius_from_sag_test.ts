import { equal, ok, throws } from "node:assert/strict";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import { type Inches, millimetres as mm } from "sagbook/units/length.ts";

const feet = (circle: number, ball: number) => ({
  circleRadius: mm(circle),
  ballRadius: mm(ball),
});

Deno.test("radiusFromSag() recovers the hypotenuse of whole right triangles", () => {
  // [leg = foot circle, sag = hypotenuse − other leg, hypotenuse = radius]
  const triangles = [[3, 1, 5], [4, 2, 5], [5, 1, 13], [8, 2, 17]] as const;
  for (const [circle, sag, radius] of triangles) {
    equal(radiusFromSag(mm(sag), feet(circle, 0), "concave"), radius);
  }
});

Deno.test("radiusFromSag() adds the ball on concave and takes it off on convex", () => {
  // By hand: q = (50² / 0.5 + 0.5) / 2 = 2500.25
  equal(radiusFromSag(mm(0.5), feet(50, 2.5), "concave"), 2502.75);
  equal(radiusFromSag(mm(0.5), feet(50, 2.5), "convex"), 2497.75);
});

Deno.test("radiusFromSag() keeps its stated accuracy against whole-number arithmetic", () => {
  // In steps of 2⁻¹⁰ mm every input is exact, so BigInt gives the true ratio.
  for (let i = 1n; i <= 500n; i++) {
    const [r, s, b] = [51_200n + 7n * i, 13n * i, 3n * i];
    const q = Number(r * r + s * s) / Number(2n * s * 1024n);
    const truth = Number(r * r + s * s + 2n * s * b) / Number(2n * s * 1024n);
    const found = radiusFromSag(
      mm(Number(s) / 1024),
      feet(Number(r) / 1024, Number(b) / 1024),
      "concave",
    );
    ok(Math.abs(found - truth) <= 1e-15 * q, `step ${i}: ${found}, ${truth}`);
  }
});

Deno.test("radiusFromSag() refuses a flat, a reversed reading and a sag past the hemisphere", () => {
  const floor = "sag must be above 0 mm";
  const ceiling = "sag must not exceed the foot circle radius of 50 mm";
  const refused = [[0, floor], [-0.01, floor], [51, ceiling]] as const;
  for (const [sag, rule] of refused) {
    throws(() => radiusFromSag(mm(sag), feet(50, 0), "concave"), {
      name: "RangeError",
      message: `Cannot find a radius as ${rule}: current value is ${sag} mm`,
    });
  }
  equal(radiusFromSag(mm(50), feet(50, 0), "concave"), 50);
});

Deno.test("radiusFromSag() refuses inches and bare numbers when type-checked", () => {
  // @ts-expect-error a bare number has no unit
  radiusFromSag(0.5, feet(50, 0), "concave");
  // @ts-expect-error inches are not millimetres
  radiusFromSag(0.5 as Inches, feet(50, 0), "concave");
});
