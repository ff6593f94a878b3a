import { deepEqual, equal, ok, throws } from "node:assert/strict";
import {
  focalHabit,
  type HabitPiece,
} from "sagbook/fabrication/focal_habit.ts";
import { groundRadiusFor } from "sagbook/fabrication/ground_radius_for.ts";
import {
  landingProbability,
  predictFocalLength,
} from "sagbook/fabrication/predict_focal_length.ts";
import { Random } from "sagbook/numerics/random.ts";
import { fitDemingLine } from "sagbook/statistics/deming_line.ts";
import { studentInterval } from "sagbook/statistics/student_interval.ts";
import { fitYorkLine } from "sagbook/statistics/york_line.ts";

const close = (found: number, wanted: number, relative = 1e-6): void =>
  ok(
    Math.abs(found - wanted) <= relative * Math.abs(wanted),
    `${found} is not ${wanted}`,
  );

/** Seven invented pieces without uncertainties. */
const PLAIN: HabitPiece[] = [
  [2410, 1203.1],
  [3005, 1500.6],
  [1998, 998.4],
  [2600, 1297.9],
  [3320, 1657.7],
  [2260, 1129.6],
  [2800, 1398.2],
].map(([radius, focalLength]) => ({ radius, focalLength }));

Deno.test("focalHabit() with equal uncertainties gives Student's prediction of the ratio", () => {
  const ratios = PLAIN.map(({ radius, focalLength }) =>
    2 * focalLength / radius - 1
  );
  const { mean, standardDeviation } = studentInterval(ratios);
  const habit = focalHabit(PLAIN);
  // Equal relative uncertainties are all but equal in the ratio.
  close(habit.mean.value, mean, 1e-3);
  equal(habit.used, "mean ratio");
  equal(habit.assumed, 14);
  const { value, interval, dof } = predictFocalLength(habit, 2500);
  equal(dof, 6);
  close(value, 1250 * (1 + mean), 1e-6);
  // t(0.975, 6) = 2.446912 (NIST/SEMATECH e-Handbook 1.3.6.7.2).
  const half = 1250 * standardDeviation * Math.sqrt(1 + 1 / 7) * 2.446912;
  close((interval.high - interval.low) / 2, half, 1e-3);
});

Deno.test("focalHabit() weighs pieces by their uncertainty and what scatters between them", () => {
  const pieces = PLAIN.map((piece, i) => ({
    ...piece,
    radiusUncertainty: piece.radius * (i < 3 ? 2e-4 : 2e-3),
    focalLengthUncertainty: piece.focalLength * 1e-4,
  }));
  const { mean } = focalHabit(pieces);
  // By hand at the scatter found: weighted squares equal n − 1.
  const u2 = pieces.map((p) =>
    (2 * p.focalLengthUncertainty / p.radius) ** 2 +
    (2 * p.focalLength / p.radius ** 2 * p.radiusUncertainty) ** 2
  );
  const q = pieces.map((p) => 2 * p.focalLength / p.radius - 1);
  const w = u2.map((v) => 1 / (v + mean.between ** 2));
  const total = w.reduce((sum, one) => sum + one, 0);
  const value = q.reduce((sum, one, i) => sum + w[i] * one, 0) / total;
  close(mean.value, value, 1e-9);
  const left = q.reduce((sum, one, i) => sum + w[i] * (one - value) ** 2, 0);
  if (mean.between > 0) close(left, 6, 1e-6);
  else close(mean.scale, left / 6);
  close(mean.standardError, Math.sqrt(mean.scale / total), 1e-9);
});

/** Twelve pieces whose later focal length bends away from half the radius. */
function bent(slope: number, scatter: number): HabitPiece[] {
  const random = new Random(712);
  return Array.from({ length: 12 }, (_, i) => {
    const radius = 1800 + 250 * i;
    return {
      radius: radius + 1.2 * random.normal(),
      radiusUncertainty: 1.2,
      focalLength: radius / 2 - 2 + slope * (radius - 3000) +
        scatter * random.normal(),
      focalLengthUncertainty: 0.5,
    };
  });
}

Deno.test("focalHabit() uses a line that earns its place, by York's method, and only then", () => {
  const habit = focalHabit(bent(0.01, 0.5));
  equal(habit.used, "straight line");
  ok(habit.leaveOneOut!.line < 0.5 * habit.leaveOneOut!.mean);
  const { line, between } = habit.line!;
  const pieces = habit.pieces;
  const york = fitYorkLine(
    pieces.map(({ radius }) => radius),
    pieces.map(({ focalLength }) => focalLength),
    {
      x: pieces.map((p) => p.radiusUncertainty),
      y: pieces.map((p) => Math.hypot(p.focalLengthUncertainty, between)),
    },
  );
  close(line.slope, york.slope);
  close(line.intercept, york.intercept);
  equal(
    focalHabit(
      bent(0, 0.5).map((p) => ({
        ...p,
        focalLength: p.focalLength + 2 - p.radius * 0.0007,
      })),
    ).used,
    "mean ratio",
  );
});

Deno.test("focalHabit() tries no line below eight pieces", () => {
  const few = focalHabit(bent(0.01, 0.1).slice(0, 7));
  equal(few.line, undefined);
  equal(few.leaveOneOut, undefined);
  ok(focalHabit(bent(0.01, 0.1).slice(0, 8)).line !== undefined);
});

Deno.test("focalHabit() without uncertainties fits Deming's line at one ratio", () => {
  const pieces = bent(0.01, 1).map(({ radius, focalLength }) => ({
    // One radius scale, so that equal relative errors are equal errors.
    radius: 3000 + (radius - 3000) / 100,
    focalLength: 1500 + (focalLength - 1500) / 100,
  }));
  const { line } = focalHabit(pieces);
  const deming = fitDemingLine(
    pieces.map(({ radius }) => radius),
    pieces.map(({ focalLength }) => focalLength),
    0.25,
  );
  close(line!.line.slope, deming.slope, 1e-3);
});

Deno.test("focalHabit() gives no line where all radii are equal", () => {
  const same = bent(0, 1).map((p) => ({ ...p, radius: 3000 }));
  const habit = focalHabit(same);
  equal(habit.line, undefined);
  equal(habit.used, "mean ratio");
});

Deno.test("focalHabit() refuses one piece and lengths that are none", () => {
  throws(() => focalHabit(PLAIN.slice(0, 1)), {
    name: "RangeError",
    message:
      "Cannot find a shop's habit as there must be two finished pieces or more: current value is 1",
  });
  throws(() => focalHabit([PLAIN[0], { radius: -1, focalLength: 1 }]), {
    name: "RangeError",
    message:
      "Cannot find a shop's habit as radius must be above 0 mm and finite: current value is -1 mm",
  });
});

Deno.test("predictFocalLength() widens for a radius less sure than the shop's usual ones", () => {
  const habit = focalHabit(
    PLAIN.map((p) => ({
      ...p,
      radiusUncertainty: p.radius * 5e-4,
      focalLengthUncertainty: p.focalLength * 2e-4,
    })),
  );
  const usual = predictFocalLength(habit, 2500);
  const worse = predictFocalLength(habit, 2500, 10);
  ok(worse.standardUncertainty > usual.standardUncertainty);
  close(
    worse.standardUncertainty,
    Math.hypot(usual.standardUncertainty, 5),
    0.1,
  );
  throws(() => predictFocalLength(habit, 0), {
    name: "RangeError",
    message:
      "Cannot predict a focal length as the radius must be above 0 mm and finite: current value is 0 mm",
  });
  throws(() => predictFocalLength(habit, 2500, -1), {
    name: "RangeError",
    message:
      "Cannot predict a focal length as the radius's uncertainty must be 0 mm or more: current value is -1 mm",
  });
});

Deno.test("predictFocalLength() covers over seeded shops with three, six and twelve pieces", () => {
  // A small copy of the study; bounds are four simulation errors wide.
  for (const count of [3, 6, 12]) {
    let covered = 0;
    const shops = 1500;
    const random = new Random(77).fork(count);
    for (let k = 0; k < shops; k++) {
      const make = () => {
        const radius = 1800 + 3000 * random.uniform();
        const focus = radius / 2 * (1 - 0.0012 + 1e-3 * random.normal());
        return {
          radius: radius * (1 + 8e-4 * random.normal()),
          focalLength: focus * (1 + 4e-4 * random.normal()),
        };
      };
      const pieces = Array.from({ length: count }, make);
      const next = make();
      const { interval } = predictFocalLength(focalHabit(pieces), next.radius);
      if (
        next.focalLength >= interval.low && next.focalLength <= interval.high
      ) covered++;
    }
    const share = covered / shops;
    ok(share > 0.92 && share < 0.975, `${count} pieces: ${share}`);
  }
});

Deno.test("landingProbability() is the part of the prediction inside the tolerance", () => {
  // Student's t with 1 degree of freedom: P(|T| < 1) = 1/2.
  close(
    landingProbability(
      { value: 1500, standardUncertainty: 2, dof: 1 },
      1500,
      2,
    ),
    0.5,
  );
  equal(
    landingProbability(
      { value: 1500, standardUncertainty: 0, dof: 1 },
      1502,
      1,
    ),
    0,
  );
  throws(
    () =>
      landingProbability(
        { value: 1500, standardUncertainty: 2, dof: 1 },
        1500,
        0,
      ),
    {
      name: "RangeError",
      message:
        "Cannot find a probability of landing as the tolerance must be above 0 mm: current value is 0 mm",
    },
  );
});

Deno.test("groundRadiusFor() is the inverse of the prediction, by either form", () => {
  for (const habit of [focalHabit(PLAIN), focalHabit(bent(0.01, 0.5))]) {
    const { radius, prediction } = groundRadiusFor(habit, {
      focalLength: 1400,
    });
    close(predictFocalLength(habit, radius).value, 1400, 1e-12);
    equal(prediction.value.toFixed(6), "1400.000000");
  }
});

Deno.test("groundRadiusFor() gives the window whose ends have the wanted chance", () => {
  const habit = focalHabit(PLAIN);
  const wish = { focalLength: 1400, tolerance: 8, probability: 0.9 };
  const { probability, window } = groundRadiusFor(habit, wish);
  ok(probability! > 0.9);
  for (const end of [window!.low, window!.high]) {
    close(landingProbability(predictFocalLength(habit, end), 1400, 8), 0.9);
  }
  const narrow = groundRadiusFor(habit, { ...wish, tolerance: 0.2 });
  equal(narrow.window, undefined);
  ok(narrow.probability! < 0.9);
  throws(() => groundRadiusFor(habit, { focalLength: NaN }), {
    name: "RangeError",
    message:
      "Cannot find a radius to aim for as the focal length must be above 0 mm and finite: current value is NaN mm",
  });
});

Deno.test("groundRadiusFor() refuses a line that falls", () => {
  const habit = focalHabit(PLAIN);
  const falling = {
    ...habit,
    used: "straight line" as const,
    line: {
      line: {
        intercept: 3000,
        slope: -0.5,
        interceptError: 1,
        slopeError: 0.1,
        covariance: 0,
        dof: 5,
      },
      dof: 5,
      between: 0,
      scale: 1,
      typicalFocus: 1,
    },
  };
  throws(() => groundRadiusFor(falling, { focalLength: 1400 }), {
    name: "RangeError",
    message:
      "Cannot find a radius to aim for as a longer radius must give a longer focal length: current value of the slope is -0.5",
  });
  deepEqual(Object.keys(habit).sort(), [
    "assumed",
    "mean",
    "pieces",
    "stated",
    "used",
  ]);
});
