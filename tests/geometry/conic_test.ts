import { equal, ok, throws } from "node:assert/strict";
import { readFileSync } from "node:fs";
import {
  bestCircleForAsphericity,
  conicFromQuartic,
  paraboloidRadiusGrowth,
  peakToValley,
  quarticFromConic,
  quarticFromSagDifference,
  surfaceErrorFactor,
} from "sagbook/geometry/asphericity.ts";
import {
  conicDeparture,
  conicSag,
  conicSlope,
} from "sagbook/geometry/conic.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

function close(found: number, wanted: number, relative: number) {
  ok(
    Math.abs(found - wanted) <= relative * Math.abs(wanted),
    `${found} is not ${wanted}`,
  );
}

Deno.test("conicSag(), conicSlope() and conicDeparture() meet the 40-digit reference rows", () => {
  // tests/references/conic-sag.json: mpmath 1.2.1, 40 digits, ISO 10110-12.
  const { data } = JSON.parse(
    readFileSync("tests/references/conic-sag.json", "utf8"),
  );
  ok(data.length >= 8);
  for (const row of data) {
    const [rho, R] = [mm(row.r_mm), mm(row.R_mm)];
    close(conicSag(rho, R, row.conic), row.sag_mm, 1e-14);
    close(conicSag(rho, R, 0), row.sphere_sag_mm, 1e-14);
    close(conicSlope(rho, R, row.conic), row.slope, 1e-14);
    close(
      -conicDeparture(rho, R, -1),
      row.sphere_minus_paraboloid_mm,
      1e-13,
    );
  }
});

Deno.test("conicDeparture() is the difference of two sags and tends to K ρ⁴/(8R³)", () => {
  for (const conic of [-2, -1, -0.4, 0, 0.7]) {
    const direct = conicSag(mm(150), mm(1500), conic) -
      conicSag(mm(150), mm(1500), 0);
    ok(Math.abs(conicDeparture(mm(150), mm(1500), conic) - direct) < 1e-14);
    close(
      conicDeparture(mm(10), mm(1e5), conic),
      quarticFromConic(conic, mm(1e5)) * 1e4,
      1e-7,
    );
  }
});

Deno.test("conicSag() refuses a distance outside the surface", () => {
  throws(() => conicSag(mm(14), mm(13), 0), {
    name: "RangeError",
    message:
      "Cannot find the sag of a conic as the distance must lie inside the surface of vertex radius 13 mm and conic constant 0: current value is 14 mm",
  });
});

Deno.test("peakToValley() of a 300 mm f/5 paraboloid is 586 nm, and that is its sag difference at r = c = a/2", () => {
  const a4 = quarticFromConic(-1, mm(3000));
  equal(Math.round(Math.abs(peakToValley(a4, mm(150))) * 1e6), 586);
  equal(surfaceErrorFactor(mm(150), mm(75), mm(75)), 1);
  close(4 * a4 * 75 ** 4, peakToValley(a4, mm(150)), 1e-15);
  close(
    quarticFromSagDifference(mm(4 * a4 * 75 ** 4), mm(75), mm(75)),
    a4,
    1e-15,
  );
  close(conicFromQuartic(a4, mm(3000)), -1, 1e-15);
});

Deno.test("peakToValley() is the least that any sphere through the centre leaves", () => {
  // a4 ρ⁴ − b ρ² on a fine grid, b free: the least range is a4 a⁴/4 at b = a4 a².
  const range = (b: number) => {
    let [low, high] = [0, 0];
    for (let i = 0; i <= 2000; i++) {
      const u = (i / 2000) ** 2;
      const left = u * u - b * u;
      low = Math.min(low, left);
      high = Math.max(high, left);
    }
    return high - low;
  };
  close(range(1), 0.25, 1e-6);
  for (const b of [0.9, 0.99, 1.01, 1.1]) ok(range(b) > range(1));
});

Deno.test("paraboloidRadiusGrowth() and bestCircleForAsphericity() give the derived check values", () => {
  equal(paraboloidRadiusGrowth(mm(70), mm(3000)).toFixed(4), "1.6333");
  const a = 150;
  const best = bestCircleForAsphericity(mm(a));
  const seen = (r: number) => ((a - r) * r) ** 2;
  ok(seen(best) > seen(best - 1) && seen(best) > seen(best + 1));
  throws(() => quarticFromSagDifference(mm(1), mm(0), mm(60)), {
    name: "RangeError",
    message:
      "Cannot find a fourth-order term as offset and foot circle must not be 0 mm: current value is 0 mm and 60 mm",
  });
});
