import { deepEqual, equal, ok, throws } from "node:assert/strict";
import {
  type CandidateFoot,
  carryingFeet,
} from "sagbook/geometry/carrying_feet.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const FLAT = { kind: "flat" } as const;
const foot = (x: number, y: number, z: number): CandidateFoot => ({
  x: mm(x),
  y: mm(y),
  z: mm(z),
});
const round = (circle: number, degrees: number, z: number) =>
  foot(
    circle * Math.cos(degrees * Math.PI / 180),
    circle * Math.sin(degrees * Math.PI / 180),
    z,
  );

Deno.test("carryingFeet() stands on three, whatever their heights", () => {
  const feet = [round(60, 0, 1), round(60, 120, -2), round(60, 240, 0.5)];
  deepEqual(carryingFeet(feet, FLAT), {
    kind: "stands",
    feet: [0, 1, 2],
    gaps: [0, 0, 0],
  });
});

Deno.test("carryingFeet() finds the three lowest that enclose the probe and how high the rest hang", () => {
  // Six round the circle; every other one is 0.02 mm short.
  const feet = [0, 60, 120, 180, 240, 300].map((turn, i) =>
    round(60, turn, i % 2 === 0 ? 0 : 0.02)
  );
  const found = carryingFeet(feet, FLAT);
  ok(found.kind === "stands");
  deepEqual(found.feet, [0, 2, 4]);
  found.gaps.forEach((gap, i) =>
    ok(Math.abs(gap - (i % 2 === 0 ? 0 : 0.02)) < 1e-12)
  );
});

Deno.test("carryingFeet() rocks on four feet whose diagonals differ, about the longer pair", () => {
  const square = [45, 135, 225, 315].map((turn, i) =>
    round(60, turn, i % 2 === 0 ? 0 : 0.01)
  );
  deepEqual(carryingFeet(square, FLAT), {
    kind: "rocks",
    between: [[0, 1, 2], [0, 2, 3]],
  });
  // A probe off the diagonal is carried by the three on its side.
  const aside = square.map(({ x, y, z }) => ({ x, y: mm(y - 5), z }));
  const found = carryingFeet(aside, FLAT);
  ok(found.kind === "stands");
  deepEqual(found.feet, [0, 1, 2]);
});

Deno.test("carryingFeet() stands on all of more than three that touch together", () => {
  const five = [0, 72, 144, 216, 288].map((turn) => round(50, turn, 3));
  const found = carryingFeet(five, FLAT);
  ok(found.kind === "stands");
  equal(found.feet.length, 5);
});

Deno.test("carryingFeet() on a sphere lets feet far out carry in a dish and those near in on a dome", () => {
  // Inner three at 40 mm set as high above the outer three at 60 mm as half
  // the difference of their sags: in a dish the outer ones carry.
  const q = mm(1000);
  const sag = (r: number) =>
    sagFromRadius(q, { circleRadius: mm(r), ballRadius: mm(0) }, "concave");
  const between = sag(60) - sag(40);
  const gauge = (inner: number) => [
    ...[0, 120, 240].map((turn) => round(60, turn, 0)),
    ...[60, 180, 300].map((turn) => round(40, turn, inner)),
  ];
  const on = (form: "concave" | "convex", inner: number) => {
    const found = carryingFeet(gauge(inner), {
      kind: "sphere",
      form,
      centresRadius: q,
    });
    return found.kind === "stands" ? found.feet : found.kind;
  };
  deepEqual(on("concave", -0.9 * between), [0, 1, 2]);
  deepEqual(on("concave", -1.1 * between), [3, 4, 5]);
  deepEqual(on("convex", 1.1 * between), [0, 1, 2]);
  deepEqual(on("convex", 0.9 * between), [3, 4, 5]);
  deepEqual(on("concave", -between), [0, 1, 2, 3, 4, 5]);
  // The gap of a hanging foot is its distance from the sphere.
  const found = carryingFeet(gauge(0), {
    kind: "sphere",
    form: "concave",
    centresRadius: q,
  });
  ok(found.kind === "stands");
  const rise = Math.sqrt(1000 ** 2 - 60 ** 2);
  ok(Math.abs(found.gaps[3] - (1000 - Math.hypot(40, rise))) < 1e-9);
});

Deno.test("carryingFeet() falls where the probe stands outside its feet, and needs three", () => {
  const aside = [foot(10, 0, 0), foot(60, 30, 0), foot(60, -30, 0)];
  deepEqual(carryingFeet(aside, FLAT), { kind: "falls" });
  throws(() => carryingFeet(aside.slice(0, 2), FLAT), {
    name: "RangeError",
    message:
      "Cannot stand a gauge as it must have at least three feet: current value is 2 feet",
  });
});
