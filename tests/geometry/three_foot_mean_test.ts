import { ok, throws } from "node:assert/strict";
import {
  evenTermResponse,
  threeFootMean,
} from "sagbook/geometry/three_foot_mean.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const place = (
  offset: number,
  diameterDegrees: number,
  footDegrees: number,
) => ({
  circleRadius: mm(60),
  offset: mm(offset),
  diameterDegrees,
  footDegrees,
});
const near = (found: number, wanted: number, within: number) =>
  ok(Math.abs(found - wanted) <= within, `${found} is not ${wanted}`);

Deno.test("threeFootMean() is blind to astigmatism and tilt, sees coma by 2Cc r² cos θ and trefoil by T r³ cos 3ψ", () => {
  for (const offset of [-85, 0, 30, 85]) {
    for (const diameter of [0, 60, 143]) {
      for (const foot of [0, 17, 180]) {
        const at = place(offset, diameter, foot);
        const [theta, psi] = [diameter, foot].map((d) => d * Math.PI / 180);
        near(threeFootMean((x, y) => x * x - y * y, at), 0, 1e-11);
        near(threeFootMean((x, y) => 3 * x - y, at), 0, 1e-12);
        near(
          threeFootMean((x, y) => x * (x * x + y * y), at),
          2 * offset * 3600 * Math.cos(theta),
          1e-8,
        );
        near(
          threeFootMean((x, y) => x * x * x - 3 * x * y * y, at),
          60 ** 3 * Math.cos(3 * psi),
          1e-8,
        );
      }
    }
  }
});

Deno.test("evenTermResponse() is the three-foot mean of the term, at every direction", () => {
  for (const power of [2, 4, 6, 8]) {
    for (const relative of [0, 25, 180]) {
      const term = (x: number, y: number) => (x * x + y * y) ** (power / 2);
      const found = evenTermResponse(power, mm(60), mm(-85), relative);
      const direct = threeFootMean(term, place(85, 0, relative));
      near(found, direct, 1e-13 * 145 ** power);
    }
  }
});

Deno.test("evenTermResponse() gives r² for the second power and r⁴ + 4c²r² for the fourth, whatever the direction", () => {
  for (const relative of [0, 33, 180]) {
    near(evenTermResponse(2, mm(60), mm(85), relative), 3600, 1e-10);
    near(
      evenTermResponse(4, mm(60), mm(85), relative),
      60 ** 4 + 4 * 85 ** 2 * 60 ** 2,
      1e-5,
    );
  }
});

Deno.test("evenTermResponse() depends on the direction from the sixth power on, by the derived 20 %", () => {
  // Scaled so that one micrometre of a6 ρ⁶ stands at the rim of 150 mm.
  const a6 = 1 / 150 ** 6;
  const change = (relative: number) =>
    a6 * (evenTermResponse(6, mm(60), mm(85), relative) -
      evenTermResponse(6, mm(60), mm(0), relative));
  const [out, feetOut] = [change(0), change(180)];
  near(out - feetOut, a6 * 4 * 85 ** 3 * 60 ** 3, 1e-12);
  ok(out / feetOut > 1.15 && out / feetOut < 1.3, `${out} ${feetOut}`);
});

Deno.test("evenTermResponse() refuses odd powers", () => {
  throws(() => evenTermResponse(3, mm(60), mm(0), 0), {
    name: "RangeError",
    message:
      "Cannot find the response to a term as its power must be even and at least 2: current value is 3",
  });
});
