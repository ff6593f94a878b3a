import { equal, ok } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import type { Place } from "sagbook/zones/place.ts";
import {
  type ShapeGround,
  type SurfaceShape,
  surfaceShape,
} from "sagbook/zones/surface_shape.ts";
import {
  DESIGNS,
  INVENTED,
  shapeCoverage,
} from "../studies/_shape_coverage.ts";

const place = (distance: number, threefold?: number): Place => ({
  id: "",
  label: "",
  distance: mm(distance),
  foot: threefold === undefined ? "unknown" : "foot out",
  ...(threefold === undefined ? {} : { threefold }),
});
const ground: ShapeGround = {
  contactCircle: 40,
  seenTo: 107.4,
  step: 0,
  scope: "any diameter",
};
const setsOf = (rows: readonly (readonly number[])[], diameters = false) =>
  rows.map((row, set) => ({
    label: "",
    zeroing: `${set}`,
    ...(diameters ? { diameterDegrees: 0 } : {}),
    cells: row.map((sag) => ({ sag, readings: 1 })),
  }));
const wide = ({ points }: SurfaceShape): number =>
  Math.max(
    ...points.map(({ departure: { interval95 } }) =>
      interval95!.high - interval95!.low
    ),
  );

Deno.test("surfaceShape() holds the invented surface at 90 % or more of the places seen, whatever its form", () => {
  const [design] = DESIGNS;
  for (const surface of INVENTED) {
    const random = new Random(5).fork(surface.name);
    const { held } = shapeCoverage(surface, design, 4, random);
    ok(held >= 0.9, `${surface.name}: ${held}`);
  }
});

Deno.test("surfaceShape() allows the rim of a deep hole to hang, which the polynomial through the zones shuts out", () => {
  const hole = INVENTED.find(({ name }) => name.includes("25 mm wide"))!;
  const many = DESIGNS.find(({ sets }) => sets === 40)!;
  const { held, halfWidth } = shapeCoverage(hole, many, 2, new Random(1));
  ok(held >= 0.9, `${held}`);
  ok(halfWidth > 0.001, "forty sets cannot make three zones tell the form");
});

Deno.test("surfaceShape() ends at the outermost point touched, and starts at the centre", () => {
  const places = [place(0, 1), place(67.4, 1)];
  const sets = setsOf([[0.36, 0.361], [0.361, 0.361], [0.36, 0.3605]]);
  const { points, seenTo } = surfaceShape(sets, places, ground)!;
  equal(points[0].distance, 0);
  ok(Math.abs(points.at(-1)!.distance - 107.4) < 1e-9);
  equal(seenTo, 107.4);
});

Deno.test("surfaceShape() is free of the level of each set, and surer with more zones and more sets", () => {
  const places = [place(0, 1), place(33.7, 1), place(67.4, 1)];
  const rows = [[0.36, 0.361, 0.3605], [0.3601, 0.3608, 0.3606], [
    0.3602,
    0.3609,
    0.3604,
  ]];
  const found = surfaceShape(setsOf(rows), places, ground)!;
  const shifted = rows.map((row, k) => row.map((sag) => sag + 0.01 * k));
  const moved = surfaceShape(setsOf(shifted), places, ground)!;
  found.points.forEach(({ departure }, k) =>
    ok(Math.abs(departure.value - moved.points[k].departure.value) < 1e-9)
  );
  const fewer = surfaceShape(
    setsOf(rows.map(([a, , c]) => [a, c])),
    [places[0], places[2]],
    ground,
  )!;
  ok(wide(fewer) > wide(found));
});

Deno.test("surfaceShape() knows less where nobody wrote down how the feet stood, and of a coarse display", () => {
  const rows = [[0.36, 0.363], [0.3603, 0.3632], [0.3601, 0.3628]];
  const told = surfaceShape(
    setsOf(rows),
    [place(0, 1), place(67.4, 1)],
    ground,
  )!;
  const untold = surfaceShape(
    setsOf(rows),
    [place(0, 1), place(67.4)],
    { ...ground, seenTo: 80 },
  )!;
  ok(untold.points.every(({ departure }) => Number.isFinite(departure.value)));
  const steady = setsOf([[0.36, 0.36], [0.36, 0.36], [0.36, 0.36]]);
  const places = [place(0, 1), place(67.4, 1)];
  const coarse = surfaceShape(steady, places, { ...ground, step: 0.002 })!;
  const fine = surfaceShape(steady, places, { ...ground, step: 0.0002 })!;
  ok(wide(coarse) > 5 * wide(fine));
  ok(wide(told) > 0);
});

Deno.test("surfaceShape() draws no band without a repeat, and nothing of one distance", () => {
  const places = [place(0, 1), place(67.4, 1)];
  const alone = surfaceShape(setsOf([[0.36, 0.363]]), places, ground)!;
  equal(alone.points[0].departure.interval95, undefined);
  ok(alone.points.every(({ departure }) => Number.isFinite(departure.value)));
  const same = [place(50, 1), place(50.2, -1)];
  equal(surfaceShape(setsOf([[0.36, 0.363]]), same, ground), undefined);
  equal(surfaceShape([], places, ground), undefined);
});
