import { equal, ok, throws } from "node:assert/strict";
import { finishedSuspicions } from "sagbook/fabrication/finished_suspicions.ts";
import { focalLengthMeasured } from "sagbook/fabrication/focal_length_measured.ts";
import { geometricFocalLength } from "sagbook/fabrication/geometric_focal_length.ts";
import { figuredRadius, zonalShift } from "sagbook/geometry/focal_length.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const near = (found: number, wanted: number, by: number): void =>
  ok(Math.abs(found - wanted) <= by, `${found} is not ${wanted}`);

Deno.test("focalLengthMeasured() takes the zone's own place off at the centre of curvature", () => {
  for (const source of ["moves", "fixed"] as const) {
    for (const zone of [0, 75, 105, 150]) {
      const shift = zonalShift(mm(3000), mm(zone), source === "moves");
      const { value } = focalLengthMeasured({
        method: "centre of curvature",
        distance: mm(3000 + shift),
        uncertainty: mm(1),
        zone: mm(zone),
        surface: "paraboloid",
        source,
      });
      near(value, 1500, 1e-9);
    }
  }
});

Deno.test("focalLengthMeasured() agrees with normals of the paraboloid drawn point by point", () => {
  // The moving source sends light back along the normal: from (ρ, ρ²/2R) with
  // slope −R/ρ it meets the axis at ρ²/2R + R. By numbers, not by that formula:
  const radius = 3000;
  for (const zone of [40, 100, 150]) {
    const sag = (x: number) => x * x / (2 * radius);
    const slope = (sag(zone + 1e-3) - sag(zone - 1e-3)) / 2e-3;
    const distance = sag(zone) + zone / slope;
    const { value } = focalLengthMeasured({
      method: "centre of curvature",
      distance: mm(distance),
      uncertainty: mm(1),
      zone: mm(zone),
      surface: "paraboloid",
      source: "moves",
    });
    near(value, radius / 2, 1e-5);
  }
});

Deno.test("focalLengthMeasured() by a fixed source agrees with rays traced to a part in a million", () => {
  // A source at the vertex's centre of curvature, reflected at height ρ: the
  // ray meets the axis where twice the normal's angle takes it.
  const radius = 3000;
  for (const zone of [40, 100, 150]) {
    const height = zone * zone / (2 * radius);
    const normal = Math.atan(zone / radius);
    const source = Math.atan(zone / (radius - height));
    const back = 2 * normal - source;
    const distance = height + zone / Math.tan(back);
    const { value } = focalLengthMeasured({
      method: "centre of curvature",
      distance: mm(distance),
      uncertainty: mm(1),
      zone: mm(zone),
      surface: "paraboloid",
      source: "fixed",
    });
    near(value, radius / 2, 0.02);
  }
});

Deno.test("focalLengthMeasured() leaves the zones of a sphere alone and halves the uncertainty", () => {
  const found = focalLengthMeasured({
    method: "centre of curvature",
    distance: mm(3000),
    uncertainty: mm(2),
    zone: mm(100),
    surface: "sphere",
    source: "fixed",
  });
  equal(found.value, 1500);
  equal(found.own, 1);
});

Deno.test("focalLengthMeasured() corrects a lamp's distance and carries both uncertainties", () => {
  const read = {
    method: "lamp",
    image: mm(1522.843),
    uncertainty: mm(2),
    lamp: mm(100_000),
    lampUncertainty: mm(5000),
  } as const;
  const found = focalLengthMeasured(read);
  near(found.value, 1500, 0.001);
  // By differences: 2 mm of image, 5 m of lamp.
  const at = (image: number, lamp: number) =>
    focalLengthMeasured({ ...read, image: mm(image), lamp: mm(lamp) }).value;
  near(
    found.own,
    Math.hypot(
      (at(1524.843, 100_000) - at(1520.843, 100_000)) / 2,
      (at(1522.843, 105_000) - at(1522.843, 95_000)) / 2,
    ),
    0.01,
  );
});

Deno.test("focalLengthMeasured() takes a star as far enough", () => {
  const found = focalLengthMeasured({
    method: "star",
    image: mm(1498),
    uncertainty: mm(3),
  });
  equal(found.value, 1498);
  equal(found.own, 3);
});

Deno.test("focalLengthMeasured() refuses what cannot be a distance", () => {
  throws(
    () =>
      focalLengthMeasured({
        method: "star",
        image: mm(0),
        uncertainty: mm(1),
      }),
    {
      name: "RangeError",
      message:
        "Cannot find a focal length as distances must be above 0 mm: current value is 0 mm",
    },
  );
  throws(
    () =>
      focalLengthMeasured({
        method: "star",
        image: mm(1500),
        uncertainty: mm(-1),
      }),
    {
      name: "RangeError",
      message:
        "Cannot find a focal length as its uncertainty must be 0 mm or more: current value is -1 mm",
    },
  );
  throws(
    () =>
      focalLengthMeasured({
        method: "centre of curvature",
        distance: mm(100),
        uncertainty: mm(1),
        zone: mm(150),
        surface: "paraboloid",
        source: "fixed",
      }),
    {
      name: "RangeError",
      message:
        "Cannot find a focal length as the distance must be above 300 mm for a zone at 150 mm: current value is 100 mm",
    },
  );
});

Deno.test("geometricFocalLength() spans what figuring may make, found by numerical tangency", () => {
  // The paraboloid that touches the sphere at height t a: same slope there.
  const [radius, half] = [3000, 150];
  const { range } = geometricFocalLength(
    mm(radius),
    mm(2),
    mm(half),
    "paraboloid",
  );
  for (const t of [0.25, Math.SQRT1_2, 1]) {
    const height = t * half;
    const slope = height / Math.sqrt(radius * radius - height * height);
    // Bisection on the vertex radius p whose slope height/p equals it.
    let [low, high] = [radius - 20, radius];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (height / middle > slope) low = middle;
      else high = middle;
    }
    near(figuredRadius(mm(radius), mm(half), t), low, 1e-9);
    ok(low / 2 >= range.low - 1e-9 && low / 2 <= range.high);
  }
  const found = geometricFocalLength(mm(radius), mm(2), mm(half), "paraboloid");
  near(
    found.standardUncertainty,
    Math.hypot(1, (range.high - range.low) / Math.sqrt(12)),
    1e-12,
  );
  const sphere = geometricFocalLength(mm(radius), mm(2), mm(half), "sphere");
  equal(sphere.value, 1500);
  equal(sphere.standardUncertainty, 1);
});

Deno.test("finishedSuspicions() names inches, f-numbers, radii, centimetres and metres", () => {
  const cases = [
    ["inches", 59.06, 1500.124],
    ["f-number", 5, 1500],
    ["radius of curvature", 3000, 1500],
    ["centimetres", 150, 1500],
    ["metres", 1.5, 1500],
    ["millimetres as inches", 38_100, 1500],
    ["other", 900, undefined],
  ] as const;
  for (const [looksLike, focalLength, wouldBe] of cases) {
    const [found] = finishedSuspicions([
      {
        line: 4,
        piece: "blank 7",
        diameter: 300,
        groundRadius: 3000,
        focalLength,
      },
    ]);
    equal(found.looksLike, looksLike);
    equal(found.line, 4);
    if (wouldBe === undefined) equal(found.wouldBe, undefined);
    else near(found.wouldBe!, wouldBe, 1e-3);
  }
  equal(
    finishedSuspicions([{ line: 2, groundRadius: 3000, focalLength: 1498 }])
      .length,
    0,
  );
});

Deno.test("geometricFocalLength() keeps the degrees of freedom of the radius, more where the range adds to it", () => {
  const half = mm(150);
  const alone = geometricFocalLength(mm(2848), mm(3.72), half, "sphere", 4);
  near(alone.dof, 4, 1e-12);
  const figured = geometricFocalLength(
    mm(2848),
    mm(3.72),
    half,
    "paraboloid",
    4,
  );
  // u² = 1.86² + (S/2)²/12 with S = 3.953: 3.4596 + 0.3255; (u/1.86)⁴ = 1.197.
  near(figured.dof, 4 * 1.197, 0.01);
  equal(geometricFocalLength(mm(2848), mm(3.72), half, "sphere").dof, Infinity);
});
