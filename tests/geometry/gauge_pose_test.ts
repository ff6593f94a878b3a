import { ok } from "node:assert/strict";
import {
  solveThree,
  tilted,
  type Vector,
} from "sagbook/geometry/_gauge_pose.ts";

const VECTORS: readonly Vector[] = [[60, 0, 6], [-30, 52, 5], [0, 0, 1]];

Deno.test("tilted() keeps lengths and angles, and takes upright to the axis asked for", () => {
  const [p, q] = [0.3, -0.4];
  const turned = VECTORS.map((vector) => tilted(vector, p, q).at);
  const dot = (a: Vector, b: Vector) =>
    a.reduce((sum, value, i) => sum + value * b[i], 0);
  VECTORS.forEach((a, i) =>
    VECTORS.forEach((b, j) =>
      ok(Math.abs(dot(a, b) - dot(turned[i], turned[j])) < 1e-11)
    )
  );
  const axis = [p, q, Math.sqrt(1 - p * p - q * q)];
  axis.forEach((value, i) => ok(Math.abs(turned[2][i] - value) < 1e-15));
});

Deno.test("tilted() changes with either tilt as central differences say", () => {
  const h = 1e-6;
  for (const vector of VECTORS) {
    for (const [p, q] of [[0, 0], [0.1, -0.2], [-0.5, 0.6]]) {
      const { perTiltX, perTiltY } = tilted(vector, p, q);
      for (const axis of [0, 1, 2]) {
        const slope = (dp: number, dq: number) =>
          (tilted(vector, p + dp, q + dq).at[axis] -
            tilted(vector, p - dp, q - dq).at[axis]) / (2 * h);
        ok(Math.abs(slope(h, 0) - perTiltX[axis]) < 1e-7);
        ok(Math.abs(slope(0, h) - perTiltY[axis]) < 1e-7);
      }
    }
  }
});

Deno.test("solveThree() satisfies its equations", () => {
  const rows: [Vector, Vector, Vector] = [[4, 1, -2], [0.5, 3, 1], [2, -1, 5]];
  const right: Vector = [7, -3, 11];
  const solution = solveThree(rows, right);
  rows.forEach((row, i) => {
    const sum = row.reduce((total, value, j) => total + value * solution[j], 0);
    ok(Math.abs(sum - right[i]) < 1e-14);
  });
});
