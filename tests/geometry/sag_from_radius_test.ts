import { equal, ok, throws } from "node:assert/strict";
import { readFileSync } from "node:fs";
import { effectiveFeet } from "sagbook/geometry/effective_feet.ts";
import { focalLength } from "sagbook/geometry/focal_length.ts";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const feet = (circle: number, ball: number) => ({
  circleRadius: mm(circle),
  ballRadius: mm(ball),
});

function close(found: number, wanted: number, relative = 1e-12) {
  ok(
    Math.abs(found - wanted) <= relative * Math.abs(wanted),
    `${found} is not ${wanted}`,
  );
}

Deno.test("sagFromRadius() recovers the sag of whole right triangles", () => {
  const triangles = [[3, 1, 5], [5, 1, 13], [8, 2, 17], [7, 1, 25]] as const;
  for (const [circle, sag, radius] of triangles) {
    equal(sagFromRadius(mm(radius), feet(circle, 0), "concave"), sag);
  }
});

Deno.test("sagFromRadius() gives the derived check values to 1e-12", () => {
  // Derived for this project by exact contact of three balls, 40 digits.
  close(sagFromRadius(mm(3000), feet(60, 6.35), "concave"), 0.6013330886181529);
  close(sagFromRadius(mm(3000), feet(60, 6.35), "convex"), 0.5987923149727195);
  close(sagFromRadius(mm(50), feet(10, 1.5), "concave"), 1.0421239413308763);
  close(sagFromRadius(mm(50), feet(10, 1.5), "convex"), 0.9802019006409726);
  const bar = effectiveFeet(
    { kind: "bar", span: mm(40), ballRadius: mm(0) },
    "concave",
  );
  close(sagFromRadius(mm(100), bar, "concave"), 2.020410288672876);
  const edge = effectiveFeet(
    { kind: "edge", innerRadius: mm(24), outerRadius: mm(25) },
    "concave",
  );
  equal(radiusFromSag(mm(0.5), edge, "concave"), 625.25);
});

Deno.test("sagFromRadius() and radiusFromSag() meet the 40-digit reference table to 1e-12", () => {
  // tests/references/spherometer-geometry.json: mpmath 1.2.1, 40 digits.
  const { data } = JSON.parse(
    readFileSync("tests/references/spherometer-geometry.json", "utf8"),
  );
  equal(data.length, 6);
  for (const row of data) {
    const ring = feet(row.foot_circle_radius_mm, row.ball_radius_mm);
    const sag = sagFromRadius(mm(row.R_mm), ring, row.surface);
    close(sag, row.sag_mm);
    close(radiusFromSag(mm(row.sag_mm), ring, row.surface), row.R_from_sag_mm);
    equal(focalLength(mm(row.R_mm)), row.focal_length_mm);
  }
});

Deno.test("sagFromRadius() keeps its digits where the difference form loses them", () => {
  // r²/(2q) (1 + r²/(4q²) + …): at q = 10⁹ mm the second term is below 1e-16.
  for (const radius of [1e7, 1e9, 1e12]) {
    const sag = sagFromRadius(mm(radius), feet(60, 0), "concave");
    close(sag, 1800 / radius * (1 + 900 / radius ** 2), 4e-16);
  }
  const lossy = 1e9 - Math.sqrt(1e18 - 3600);
  ok(Math.abs(lossy / 1.8e-6 - 1) > 1e-3);
});

Deno.test("sagFromRadius() is undone by radiusFromSag() for both forms", () => {
  for (const form of ["concave", "convex"] as const) {
    for (let radius = 80; radius < 1e5; radius *= 1.7) {
      const ring = feet(60, 6.35);
      const sag = sagFromRadius(mm(radius), ring, form);
      close(radiusFromSag(sag, ring, form), radius, 3e-15);
    }
  }
});

Deno.test("sagFromRadius() refuses a sphere smaller than the foot circle", () => {
  equal(sagFromRadius(mm(63), feet(60, 3), "concave"), 60);
  throws(() => sagFromRadius(mm(62), feet(60, 3), "concave"), {
    name: "RangeError",
    message:
      "Cannot find a sag as the sphere of the ball centres must not be smaller than the foot circle radius of 60 mm: current value is 59 mm",
  });
});
