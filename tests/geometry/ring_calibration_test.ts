import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { readFileSync } from "node:fs";
import { effectiveFeet } from "sagbook/geometry/effective_feet.ts";
import {
  barycentricWeights,
  circleRadiusAtProbe,
  type PlanePoint,
} from "sagbook/geometry/probe_circle.ts";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import {
  circleRadiusFromSpacings,
  equalSpacingRadius,
  spacingsFromOutside,
} from "sagbook/geometry/ring_from_spacings.ts";
import { circleRadiusFromSurface } from "sagbook/geometry/ring_from_surface.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

function close(found: number, wanted: number, relative = 1e-12) {
  ok(
    Math.abs(found - wanted) <= relative * Math.abs(wanted),
    `${found} is not ${wanted}`,
  );
}
const three = (a: number, b: number, c: number) =>
  [mm(a), mm(b), mm(c)] as const;
const point = (x: number, y: number): PlanePoint => ({ x: mm(x), y: mm(y) });

Deno.test("circleRadiusFromSpacings() gives the derived check value and whole triangles", () => {
  close(
    circleRadiusFromSpacings(three(103.9, 103.95, 103.85)),
    59.98670686078485,
  );
  equal(circleRadiusFromSpacings(three(5, 3, 4)), 2.5);
  equal(circleRadiusFromSpacings(three(13, 14, 15)), 8.125);
  // Any order gives the same.
  equal(
    circleRadiusFromSpacings(three(103, 104, 104.8)),
    circleRadiusFromSpacings(three(104.8, 103, 104)),
  );
});

Deno.test("circleRadiusFromSpacings() agrees with feet laid out at known places", () => {
  for (const turns of [[0, 120, 240], [0, 95, 260], [10, 20, 200]]) {
    const feet = turns.map((turn) =>
      point(
        60 * Math.cos(turn * Math.PI / 180),
        60 * Math.sin(turn * Math.PI / 180),
      )
    );
    const side = (i: number, j: number) =>
      Math.hypot(feet[i].x - feet[j].x, feet[i].y - feet[j].y);
    close(
      circleRadiusFromSpacings(three(side(0, 1), side(1, 2), side(2, 0))),
      60,
      1e-13,
    );
  }
});

Deno.test("ring from spacings reads the bench file G09 as its expectation says", () => {
  const rows = readFileSync("tests/cases/G09-foot-spacing.csv", "utf8").trim()
    .split(/\r?\n/).slice(1).map((line) => Number(line.split(",")[1]));
  const spacings = three(rows[0], rows[1], rows[2]);
  const circle = circleRadiusFromSpacings(spacings);
  const mean = equalSpacingRadius(spacings);
  equal(circle.toFixed(6), "60.010443");
  equal(mean.toFixed(6), "60.005938");
  const radius = (r: number) =>
    radiusFromSag(
      mm(0.715),
      { circleRadius: mm(r), ballRadius: mm(3) },
      "concave",
    );
  equal(radius(circle).toFixed(3), "2521.716");
  equal(radius(mean).toFixed(3), "2521.338");
  // The spacing 60√3 (103.923) taken for the radius: three times too long.
  equal(radius(60 * Math.sqrt(3)).toFixed(3), "7555.805");
  equal((radius(60 * Math.sqrt(3)) / radius(60)).toFixed(2), "3.00");
});

Deno.test("spacingsFromOutside() takes off one ball diameter", () => {
  deepEqual(spacingsFromOutside(three(109, 110, 110.8), mm(3)), [
    103,
    104,
    104.8,
  ]);
  throws(() => spacingsFromOutside(three(12, 110, 110), mm(3)), {
    name: "RangeError",
    message:
      "Cannot turn caliper figures into spacings as each must be above two ball diameters, 12 mm: current value is 12 mm",
  });
  throws(() => spacingsFromOutside(three(109, 110, 110), mm(-3)), {
    name: "RangeError",
    message:
      "Cannot turn caliper figures into spacings as the ball radius must be at least 0 mm: current value is -3 mm",
  });
});

Deno.test("circleRadiusFromSpacings() refuses spacings that make no triangle", () => {
  throws(() => circleRadiusFromSpacings(three(50, 104, 54)), {
    name: "RangeError",
    message:
      "Cannot find a foot circle as the longest spacing must be below the sum of the other two, 104 mm: current value is 104 mm",
  });
  throws(() => equalSpacingRadius(three(0, 104, 104)), {
    name: "RangeError",
    message:
      "Cannot find a foot circle as every spacing must be above 0 mm: current value is 0 mm",
  });
});

Deno.test("circleRadiusFromSurface() gives the derived check value and undoes sagFromRadius()", () => {
  close(
    circleRadiusFromSurface(mm(1.2345), mm(1500), mm(6.35), "concave"),
    60.71488993443042,
  );
  for (const form of ["concave", "convex"] as const) {
    const feet = { circleRadius: mm(47), ballRadius: mm(4) };
    const sag = sagFromRadius(mm(900), feet, form);
    close(circleRadiusFromSurface(sag, mm(900), mm(4), form), 47, 1e-14);
  }
});

Deno.test("circleRadiusFromSurface() refuses a flat and a sag past the sphere", () => {
  throws(() => circleRadiusFromSurface(mm(0), mm(16), mm(3), "concave"), {
    name: "RangeError",
    message:
      "Cannot find a foot circle as sag must be above 0 mm: current value is 0 mm",
  });
  throws(() => circleRadiusFromSurface(mm(14), mm(16), mm(3), "concave"), {
    name: "RangeError",
    message:
      "Cannot find a foot circle as sag must not exceed the radius of the ball centres' sphere, 13 mm: current value is 14 mm",
  });
});

Deno.test("circleRadiusAtProbe() is r² − d² whatever the spacings and the direction", () => {
  const feet = [point(60, 0), point(-36, 48), point(0, -60)] as const;
  equal(circleRadiusAtProbe(feet, point(0, 0)), 60);
  for (let turn = 0; turn < 360; turn += 30) {
    const probe = point(
      5 * Math.cos(turn * Math.PI / 180),
      5 * Math.sin(turn * Math.PI / 180),
    );
    close(circleRadiusAtProbe(feet, probe), Math.sqrt(3575), 1e-14);
  }
  const folded = effectiveFeet({
    kind: "balls",
    circleRadius: mm(60),
    ballRadius: mm(3),
    probeOffset: mm(5),
  }, "convex");
  close(folded.circleRadius, Math.sqrt(3575), 1e-15);
  equal(folded.ballRadius, 3);
});

Deno.test("barycentricWeights() balance their point and refuse feet in a line", () => {
  const corners = [point(1, 2), point(40, -3), point(7, 30)] as const;
  const weights = barycentricWeights(corners, point(11, 9));
  close(weights[0] + weights[1] + weights[2], 1, 1e-15);
  const balance = (axis: "x" | "y") =>
    corners.reduce((sum, corner, i) => sum + weights[i] * corner[axis], 0);
  close(balance("x"), 11, 1e-14);
  close(balance("y"), 9, 1e-14);
  throws(
    () =>
      barycentricWeights([point(0, 0), point(1, 1), point(2, 2)], point(0, 1)),
    {
      name: "RangeError",
      message:
        "Cannot weigh three feet as they must not stand in a line: current value is an area of 0 mm²",
    },
  );
});

Deno.test("effectiveFeet() refuses a probe outside the foot circle", () => {
  throws(() =>
    effectiveFeet({
      kind: "balls",
      circleRadius: mm(60),
      ballRadius: mm(3),
      probeOffset: mm(60),
    }, "concave"), {
    name: "RangeError",
    message:
      "Cannot use a ring as its probe must stand inside the foot circle radius of 60 mm: current value is 60 mm",
  });
  throws(
    () =>
      circleRadiusAtProbe(
        [point(60, 0), point(-30, 52), point(-30, -52)],
        point(90, 0),
      ),
    { name: "RangeError", message: /inside the circle through the feet/ },
  );
});

Deno.test("effective feet read the bench file G01 as its expectation says", () => {
  const readings = readFileSync("tests/cases/G01-convex-ball.csv", "utf8")
    .trim().split(/\r?\n/).slice(1).map((line) => Number(line.split(",")[5]));
  const sag = mm(readings.reduce((a, b) => a + b, 0) / readings.length);
  const feet = effectiveFeet({
    kind: "balls",
    circleRadius: mm(60),
    ballRadius: mm(3),
    probeOffset: mm(0),
  }, "convex");
  const radius = radiusFromSag(sag, feet, "convex");
  equal(radius.toFixed(3), "2513.667");
  equal(radiusFromSag(sag, feet, "concave").toFixed(3), "2519.667");
  const noBall = { ...feet, ballRadius: mm(0) };
  equal(radiusFromSag(sag, noBall, "convex").toFixed(3), "2516.667");
  close(sagFromRadius(radius, feet, "convex"), sag, 1e-14);
});
