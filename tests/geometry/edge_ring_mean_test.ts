import { ok } from "node:assert/strict";
import { edgeRingMean } from "sagbook/geometry/edge_ring_mean.ts";
import { threeFootMean } from "sagbook/geometry/three_foot_mean.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const place = (offset: number, diameterDegrees = 0) => ({
  circleRadius: mm(50),
  offset: mm(offset),
  diameterDegrees,
  footDegrees: 0,
});
const near = (found: number, wanted: number, within: number) =>
  ok(Math.abs(found - wanted) <= within, `${found} is not ${wanted}`);

Deno.test("edgeRingMean() sees astigmatism as |A| r² at every offset, up on concave and down on convex", () => {
  for (const A of [1e-6, -1e-6]) {
    for (const [offset, diameter] of [[0, 0], [60, 0], [60, 70], [-45, 33]]) {
      const bent = (x: number, y: number) => A * (x * x - y * y);
      const at = place(offset, diameter);
      near(edgeRingMean(bent, at, "concave"), 2.5e-3, 1e-9);
      near(edgeRingMean(bent, at, "convex"), -2.5e-3, 1e-9);
      near(threeFootMean(bent, at), 0, 1e-15);
    }
  }
});

Deno.test("edgeRingMean() is blind to tilt and reads power as r², like feet", () => {
  for (const form of ["concave", "convex"] as const) {
    near(
      edgeRingMean((x, y) => 3e-4 * x - 2e-4 * y, place(40), form),
      0,
      1e-15,
    );
    near(
      edgeRingMean((x, y) => 1e-6 * (x * x + y * y), place(40, 20), form),
      2.5e-3,
      1e-14,
    );
  }
});

Deno.test("edgeRingMean() stands on three points of a trefoil: |T| r³ whatever its direction", () => {
  for (const turn of [0, 11.3, 40]) {
    const t = turn * Math.PI / 180;
    const trefoil = (x: number, y: number) => {
      const angle = Math.atan2(y, x) - t;
      return 1e-8 * Math.hypot(x, y) ** 3 * Math.cos(3 * angle);
    };
    near(
      edgeRingMean(trefoil, place(0), "concave"),
      1.25e-3,
      1.25e-3 * 1e-4,
    );
  }
});

Deno.test("edgeRingMean() agrees with the lowest of many planes laid on the edge", () => {
  const worn = (x: number, y: number) =>
    1e-8 * x * (x * x + y * y) + 2e-6 * (x - 0.3 * y) * y + 5e-12 * x ** 4;
  // Minimise the largest height over planes on a fine grid of tilts.
  const r = 50;
  let best = Infinity;
  const steps = 80;
  for (let i = -steps; i <= steps; i++) {
    for (let j = -steps; j <= steps; j++) {
      const [a, b] = [i * 4e-3 / steps, j * 4e-3 / steps];
      let top = -Infinity;
      for (let k = 0; k < 360; k++) {
        const [c, s] = [
          Math.cos(k * Math.PI / 180),
          Math.sin(k * Math.PI / 180),
        ];
        top = Math.max(top, worn(20 + r * c, r * s) - a * c - b * s);
      }
      best = Math.min(best, top);
    }
  }
  const found = edgeRingMean(worn, place(20), "concave") + worn(20, 0);
  // A grid step of 5e-5 mm in each tilt, so within about that from above.
  ok(found <= best + 1e-6 && found >= best - 1e-4, `${found} ${best}`);
});
