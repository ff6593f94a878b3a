import { equal, ok } from "node:assert/strict";
import { depthToGo } from "sagbook/fabrication/depth_to_go.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

/** Height of a sphere's surface over its vertex. */
const height = (radius: number, rho: number) =>
  radius - Math.sqrt(radius * radius - rho * rho);

/** Volume between two surfaces by the composite rule of Simpson. */
function between(
  from: number,
  to: number,
  half: number,
  fixed: "centre" | "edge",
): number {
  const steps = 2000;
  const shift = fixed === "edge" ? height(to, half) - height(from, half) : 0;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const rho = half * i / steps;
    const gap = Math.abs(height(to, rho) - height(from, rho) - shift);
    const weight = i === 0 || i === steps ? 1 : i % 2 ? 4 : 2;
    sum += weight * 2 * Math.PI * rho * gap;
  }
  return sum * half / steps / 3;
}

const near = (found: number, wanted: number, relative: number): void =>
  ok(
    Math.abs(found - wanted) <= relative * Math.abs(wanted),
    `${found} is not ${wanted}`,
  );

Deno.test("depthToGo() agrees with volumes integrated ring by ring", () => {
  for (
    const [from, to, half] of [[3100, 3000, 150], [2484.41, 2520, 105], [
      900,
      500,
      200,
    ]]
  ) {
    for (const form of ["concave", "convex"] as const) {
      const { where, volume, depth, change } = depthToGo(
        form,
        mm(from),
        mm(to),
        mm(half),
      );
      const shorter = to < from;
      equal(change, shorter ? "shorten" : "lengthen");
      equal(where, shorter === (form === "concave") ? "centre" : "edge");
      const fixed = where === "centre" ? "edge" : "centre";
      near(volume, between(from, to, half, fixed), 1e-9);
      near(depth, Math.abs(height(to, half) - height(from, half)), 1e-9);
    }
  }
});

Deno.test("depthToGo() gives the numbers of a target passed, and none below 0", () => {
  // Sag of the whole surface 2.21983 against 2.18845 mm: 31.4 µm too deep.
  const { sag, targetSag, depth, volume, change, where } = depthToGo(
    "concave",
    mm(2484.41),
    mm(2520),
    mm(105),
  );
  equal(sag.toFixed(5), "2.21983");
  equal(targetSag.toFixed(5), "2.18845");
  equal((1000 * depth).toFixed(1), "31.4");
  equal(change, "lengthen");
  equal(where, "edge");
  ok(volume > 0);
});

Deno.test("depthToGo() on target asks for nothing", () => {
  const { change, depth, volume } = depthToGo(
    "concave",
    mm(3000),
    mm(3000),
    mm(150),
  );
  equal(change, "none");
  equal(depth, 0);
  equal(volume, 0);
});
