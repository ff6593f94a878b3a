import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { Random } from "sagbook/numerics/random.ts";
import {
  calibrateBySpacings,
  type SpacingMeasurement,
} from "sagbook/uncertainty/calibrate_by_spacings.ts";
import { calibrateBySurfaces } from "sagbook/uncertainty/calibrate_by_surfaces.ts";
import { calibrationHistory } from "sagbook/uncertainty/calibration_history.ts";
import type {
  KnownSurface,
  SurfaceMeasurement,
} from "sagbook/uncertainty/known_surface.ts";
import {
  compareCalibrations,
  judgeStatedRadius,
} from "sagbook/uncertainty/ring_calibration.ts";
import { ringFit } from "sagbook/uncertainty/ring_fit.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { calibrationCoverage } from "../studies/_calibration_coverage.ts";

const near = (found: number | undefined, wanted: number, relative = 1e-9) =>
  ok(
    found !== undefined &&
      Math.abs(found - wanted) <= relative * Math.abs(wanted),
    `${found} is not ${wanted}`,
  );

const spacings: SpacingMeasurement = {
  ring: "A",
  figures: [mm(103.9), mm(103.95), mm(103.85)],
  over: "centres",
  ballRadius: mm(6.35),
  ballRadiusUncertainty: mm(0.002),
  caliper: { id: "C", standardUncertainty: mm(0.02), scaleUncertainty: 1e-4 },
};

Deno.test("calibrateBySpacings() gives the check value and the sum of its parts", () => {
  const found = calibrateBySpacings(spacings);
  near(found.circleRadius.value, 59.98670686078485, 1e-12);
  near(found.circleRadius.common["caliper C scale"], 1e-4 * 59.98670686, 1e-8);
  equal(found.circleRadius.common["ring A ball"], undefined);
  // A nearly equilateral triangle: each side acts with 1/(3√3).
  near(found.circleRadius.own, 0.02 / 3, 1e-3);
  near(found.expanded, 1.959964 * found.standardUncertainty, 1e-6);
});

Deno.test("calibrateBySpacings() lets a ball error act on outside figures with -2/√3", () => {
  const outsides = spacings.figures.map((figure) => mm(figure + 12.7));
  const found = calibrateBySpacings({
    ...spacings,
    figures: [outsides[0], outsides[1], outsides[2]],
    over: "outsides",
  });
  near(found.circleRadius.value, 59.98670686078485, 1e-12);
  near(
    found.circleRadius.common["ring A ball"],
    -0.002 * 2 / Math.sqrt(3),
    1e-4,
  );
});

Deno.test("calibrateBySpacings() refuses spacings that make no triangle", () => {
  throws(
    () =>
      calibrateBySpacings({ ...spacings, figures: [mm(50), mm(40), mm(95)] }),
    {
      name: "RangeError",
      message:
        "Cannot find a foot circle as the longest spacing must be below the sum of the other two, 90 mm: current value is 95 mm",
    },
  );
});

const plate = (
  id: string,
  radius: number,
  form: "concave" | "convex",
  more: Partial<KnownSurface> = {},
): KnownSurface => {
  const feet = { circleRadius: mm(60), ballRadius: mm(6.35) };
  const sag = sagFromRadius(mm(radius), feet, form);
  return {
    id,
    form,
    radius: mm(radius),
    radiusUncertainty: mm(0),
    sags: [sag, sag, sag],
    ...more,
  };
};
const onSurfaces = (
  surfaces: readonly KnownSurface[],
  more: Partial<SurfaceMeasurement> = {},
): SurfaceMeasurement => ({
  ring: "A",
  surfaces,
  ballRadius: mm(6.35),
  ballRadiusUncertainty: mm(0.001),
  repeatability: { standardDeviation: 0.001 * Math.sqrt(3) },
  ...more,
});

Deno.test("calibrateBySurfaces() gives the circle back from one plate or several, either form", () => {
  for (
    const surfaces of [
      [plate("P", 1500, "concave")],
      [plate("P", 800, "convex")],
      [plate("P", 3000, "concave"), plate("Q", 900, "convex")],
      [
        plate("P", 3000, "concave"),
        plate("Q", 1500, "concave"),
        plate("S", 700, "convex"),
      ],
    ]
  ) {
    const found = calibrateBySurfaces(onSurfaces(surfaces));
    near(found.circleRadius.value, 60, 1e-12);
    ok(found.agreement.chiSquare < 1e-12);
    equal(found.agreement.dof, surfaces.length - 1);
    equal(found.ball.freed, false);
    equal(found.ball.consistent, true);
  }
});

Deno.test("calibrateBySurfaces() gives one plate's uncertainty in closed form, every source by id", () => {
  const surface = plate("P", 1500, "concave", { radiusUncertainty: mm(0.5) });
  const [s] = surface.sags;
  const q = 1500 - 6.35;
  const found = calibrateBySurfaces(onSurfaces([surface], {
    gauge: { id: "G", scaleUncertainty: 0.002 },
    flat: { id: "F", size: mm(150), flatness: mm(0.001) },
    step: mm(0.001),
  }));
  const { common, own } = found.circleRadius;
  const perSag = (q - s) / 60; // r² = 2sq − s²
  near(own, perSag * Math.hypot(0.001, 0.001 / Math.sqrt(6)), 1e-9);
  near(common["plate P radius"], s / 60 * 0.5, 1e-9);
  near(common["ring A ball"], -s / 60 * 0.001, 1e-9);
  near(common["gauge G scale"], perSag * s * 0.002, 1e-9);
  near(
    common["flat F curvature"],
    perSag * 1800 * 2 * 0.001 / 75 ** 2 / Math.sqrt(3),
    1e-9,
  );
});

Deno.test("calibrateBySurfaces() says that plates never beat a micrometer: 3.5 mm at 3000, 0.03 mm at 300", () => {
  const pair = (radius: number) => {
    const surfaces = [
      plate("P", radius, "concave"),
      plate("Q", radius, "convex"),
    ];
    return calibrateBySurfaces(onSurfaces(surfaces)).ball;
  };
  const far = pair(3000);
  const close = pair(300);
  equal(far.freed || close.freed, false);
  // A pair, 1 µm of sag each: u(b) = √2 R²/r² µm.
  near(far.bySurfacesUncertainty, 3.5, 0.02);
  near(close.bySurfacesUncertainty, Math.SQRT2 * 0.025, 0.05);
});

Deno.test("calibrateBySurfaces() frees the ball only when the plates know it better", () => {
  const feet = { circleRadius: mm(60), ballRadius: mm(6.30) };
  const surfaces = (["concave", "convex"] as const).map((form) => {
    const sag = sagFromRadius(mm(200), feet, form);
    return plate(form, 200, form, { sags: [sag, sag, sag] });
  });
  const rough = onSurfaces(surfaces, {
    ballRadiusUncertainty: mm(1),
    repeatability: { standardDeviation: 0.0001 },
  });
  const freed = calibrateBySurfaces(rough);
  equal(freed.ball.freed, true);
  near(freed.ballRadius, 6.3, 1e-5);
  near(freed.circleRadius.value, 60, 1e-6);
  near(
    freed.ballRadiusUncertainty,
    freed.ball.bySurfacesUncertainty ?? 0,
    1e-4,
  );
  const held = calibrateBySurfaces({
    ...rough,
    ballRadiusUncertainty: mm(1e-5),
  });
  equal(held.ball.freed, false);
  equal(held.ballRadius, 6.35);
  equal(held.ball.consistent, false);
});

Deno.test("calibrateBySurfaces() agrees with the inverse of the sum of squares for several plates", () => {
  // Two alike plates, independent readings: u falls by √2, a common scale does not.
  const one = onSurfaces([plate("P", 1500, "concave")], {
    gauge: { id: "G", scaleUncertainty: 0.001 },
  });
  const two = {
    ...one,
    surfaces: [plate("P", 1500, "concave"), plate("Q", 1500, "concave")],
  };
  const [a, b] = [one, two].map((m) => calibrateBySurfaces(m).circleRadius);
  near(b.own, a.own / Math.SQRT2);
  near(b.common["gauge G scale"], a.common["gauge G scale"]);
});

Deno.test("calibrateBySurfaces() notices plates that disagree", () => {
  const wrong = plate("Q", 900, "concave").sags.map((sag) => mm(sag * 1.02));
  const found = calibrateBySurfaces(onSurfaces([
    plate("P", 1500, "concave"),
    plate("Q", 900, "concave", { sags: wrong }),
  ]));
  ok(found.agreement.probability < 0.001);
  ok(
    Math.abs(found.residuals[1].residual) >
      2 * found.residuals[1].standardUncertainty,
  );
});

Deno.test("calibrateBySurfaces() names a plate that would fit if it curved the other way", () => {
  const read = plate("P", 300, "concave");
  const found = calibrateBySurfaces(onSurfaces(
    [{ ...read, form: "convex" }],
    {
      repeatability: { standardDeviation: 0.001 },
      expectedRadius: { value: mm(60.01), standardUncertainty: mm(0.02) },
    },
  ));
  equal(found.suspectedForm.length, 1);
  equal(found.suspectedForm[0].surface, "P");
  near(found.suspectedForm[0].radiusIfOther, 60, 1e-9);
  const right = calibrateBySurfaces(onSurfaces([read], {
    expectedRadius: { value: mm(60.01), standardUncertainty: mm(0.02) },
  }));
  deepEqual(right.suspectedForm, []);
});

Deno.test("calibrateBySurfaces() refuses signs, missing readings and unknown scatter in words", () => {
  const refuse = (surface: Partial<KnownSurface>, message: string) =>
    throws(
      () =>
        calibrateBySurfaces(onSurfaces([plate("P", 1500, "concave", surface)])),
      { name: "RangeError", message: `Cannot calibrate a ring as ${message}` },
    );
  refuse(
    { radius: mm(-1500) },
    "the radius of surface P must be above 0 mm, its form saying concave or convex: current value is -1500 mm",
  );
  refuse(
    { sags: [mm(-1.2)] },
    "every sag on surface P must be above 0 mm, counted for its form: current value is -1.2 mm",
  );
  refuse(
    { sags: [] },
    "surface P must have at least one reading: current value is 0",
  );
  refuse(
    { radiusUncertainty: mm(-1) },
    "the uncertainty of surface P must be at least 0 mm: current value is -1 mm",
  );
  throws(() => calibrateBySurfaces(onSurfaces([])), {
    name: "RangeError",
    message:
      "Cannot calibrate a ring as there must be at least one known surface: current value is 0",
  });
  const once = plate("P", 1500, "concave", { sags: [mm(1.2)] });
  const { repeatability: _, ...unknown } = onSurfaces([once]);
  throws(() => calibrateBySurfaces(unknown), {
    name: "RangeError",
    message:
      "Cannot calibrate a ring as its scatter must be known, from a surface read twice or a stated repeatability: current value is one reading a surface",
  });
});

Deno.test("calibrateBySurfaces() covers the simulated ring in 93 to 97 % of 2000", () => {
  for (const design of ["spacings", "one plate", "three plates"] as const) {
    const { covered, runs } = calibrationCoverage(design, 2000, new Random(1));
    const share = covered / runs;
    ok(share >= 0.93 && share <= 0.97, `${design}: ${share}`);
  }
});

Deno.test("compareCalibrations() takes off what a ring and its twin share", () => {
  const at = (value: number, own: number) => ({
    circleRadius: { value, own, dof: Infinity, common: { plate: 0.05 } },
  });
  const found = compareCalibrations(at(60.02, 0.003), at(60, 0.004));
  near(found.normalisedError, 0.02 / (1.959964 * 0.005), 1e-6);
  equal(found.agree, false);
  deepEqual(found.shared, ["plate"]);
  near(found.relativeChangeOfR, 2 * 0.02 / 60, 1e-9);
  throws(() => compareCalibrations(at(60, 0), at(60, 0)), RangeError);
});

Deno.test("judgeStatedRadius() knows the diameter and the spacing given for the radius", () => {
  const circleRadius = { value: 60, own: 0.02, dof: Infinity, common: {} };
  const judge = (stated: number) =>
    judgeStatedRadius(stated, 0.02, { circleRadius });
  deepEqual([60.03, 60.2, 119.9, 103.9].map(judge), [
    "agrees",
    "differs",
    "diameter for radius",
    "spacing for radius",
  ]);
});

Deno.test("calibrationHistory() orders, finds due dates across short months, and sees a change", () => {
  const at = (on: string, value: number) => ({
    on,
    circleRadius: { value, own: 0.005, dof: Infinity, common: { plate: 1 } },
  });
  const steady = calibrationHistory(
    [at("2031-01-31", 60), at("2030-01-31", 60.003)],
    1,
    "2031-02-28",
  );
  deepEqual(steady.calibrations.map(({ on }) => on), [
    "2030-01-31",
    "2031-01-31",
  ]);
  equal(steady.dueOn, "2031-02-28");
  equal(steady.daysLeft, 0);
  equal(steady.changed, false);
  const creeping = calibrationHistory(
    [at("2029-05-01", 60), at("2030-05-01", 60.01), at("2031-05-01", 60.02)],
    12,
    "2031-06-01",
  );
  equal(creeping.sinceBefore?.agree, true);
  equal(creeping.sinceFirst?.agree, false);
  equal(creeping.changed, true);
  throws(() => calibrationHistory([], 12, "2031-01-01"), RangeError);
  throws(
    () => calibrationHistory([at("2031-01-01", 60)], 0, "2031-01-01"),
    RangeError,
  );
  throws(() => calibrationHistory([at("1 May", 60)], 12, "2031-01-01"), {
    name: "SyntaxError",
    message:
      "Cannot read a date as it must be written YYYY-MM-DD: current value is 1 May",
  });
});

Deno.test("ringFit() compares the feet with flat and work", () => {
  const piece = {
    form: "concave",
    diameter: mm(130),
    bevel: mm(2),
    margin: mm(1),
  } as const;
  const ring = {
    shape: {
      kind: "balls",
      circleRadius: mm(60),
      ballRadius: mm(3),
      probeOffset: mm(0),
    },
    foot: { kind: "feet out" },
  } as const;
  const tight = ringFit(ring, piece, mm(2500), { id: "F", size: mm(150) });
  equal(tight.flat?.fits, true);
  equal(tight.work.fits, true);
  ok((tight.reach ?? 0) > 0 && (tight.reach ?? 0) < 5);
  const small = ringFit(ring, { ...piece, diameter: mm(125) }, mm(2500));
  equal(small.work.fits, false);
  equal(small.reach, undefined);
  equal(small.flat, undefined);
  equal(ringFit(ring, piece, mm(2500), { id: "F" }).flat?.fits, true);
  const edge = {
    shape: { kind: "edge", innerRadius: mm(40), outerRadius: mm(61) },
    foot: { kind: "unknown" },
  } as const;
  equal(
    ringFit(edge, piece, mm(2500), { id: "F", size: mm(121) }).flat?.fits,
    false,
  );
});
