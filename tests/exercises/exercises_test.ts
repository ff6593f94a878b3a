import { deepEqual, equal, notDeepEqual, ok, throws } from "node:assert/strict";
import {
  centreRadiusOf,
  diametersOf,
  drawClass,
  drawExercise,
  EXERCISE_NOTE,
  exerciseFiles,
  halfDiameterOf,
  HIDDEN_KINDS,
  hiddenShape,
  placesOfExercise,
  sessionPlanOf,
  smallestFound,
  statedChances,
  statedRing,
  STRENGTHS,
  verdictPlanOf,
} from "sagbook/exercises/mod.ts";
import {
  ballRing,
  conicSurface,
  contactCircleRadius,
  paraboloidRadiusGrowth,
  reach,
  simulateSession,
  threeFootMean,
} from "sagbook/geometry/mod.ts";
import { Random } from "sagbook/numerics/random.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { trueDepartures } from "sagbook/zones/chance_of_verdict.ts";

const draw = (seed: number, kind: typeof HIDDEN_KINDS[number], strength = 2) =>
  drawExercise(new Random(seed), "student-01", { kind, strength });

Deno.test("drawExercise() hides a shape that shows the wanted number of tolerances", () => {
  for (const kind of ["conic", "turned edge", "coma"] as const) {
    for (const strength of STRENGTHS) {
      for (let seed = 1; seed <= 10; seed++) {
        const exercise = draw(seed, kind, strength);
        const { zones, ends } = trueDepartures(verdictPlanOf(exercise));
        const shows = Math.max(zones, ends) / exercise.disc.sagTolerance;
        ok(Math.abs(shows - strength) < 0.02 * strength, `${kind} ${shows}`);
      }
    }
  }
});

Deno.test("drawExercise() tells a student nothing that depends on what is hidden", () => {
  for (let seed = 1; seed <= 20; seed++) {
    const told = HIDDEN_KINDS.map((kind) => {
      const { disc, gauge, sets } = draw(seed, kind);
      return { disc, gauge, sets };
    });
    for (const one of told) deepEqual(one, told[0]);
  }
});

Deno.test("drawExercise() keeps to metric discs of 150 to 450 mm, f/4 to f/8", () => {
  const seen = new Set<string>();
  for (let seed = 1; seed <= 60; seed++) {
    const { disc, gauge } = drawExercise(new Random(seed), "A");
    const ratio = disc.targetRadius / 2 / disc.diameter;
    ok(disc.diameter >= 150 && disc.diameter <= 450);
    ok(ratio >= 4 && ratio <= 8, `${ratio}`);
    seen.add(`${disc.diameter}`).add(gauge.unit).add(disc.glass);
    seen.add(gauge.scatter.driftPerReading === 0 ? "still" : "drifts");
  }
  equal(seen.size, 7 + 2 + 2 + 2);
});

Deno.test("drawExercise() refuses a strength that is not above 0", () => {
  throws(() => draw(1, "coma", 0), {
    name: "RangeError",
    message:
      "Cannot draw an exercise as its strength must be above 0: current value is 0",
  });
});

Deno.test("verdictPlanOf() lays out what the readings see, and agrees with the three-foot mean to 2 per cent of the fault", () => {
  for (const kind of HIDDEN_KINDS) {
    const exercise = draw(4, kind, 3);
    const plan = verdictPlanOf(exercise);
    const none = { repeat: mm(0), zeroing: mm(0), diameter: mm(0) };
    const session = { ...sessionPlanOf(exercise), scatter: none, step: mm(0) };
    const readings = simulateSession(session, new Random(1));
    const columns = plan.places.length;
    const allowed = 0.02 * 3 * exercise.disc.sagTolerance;
    const sphere = conicSurface(exercise.trueRadius, 0);
    const departure = (x: number, y: number): number =>
      session.surface(x, y).height - sphere(x, y).height;
    readings.forEach(({ zone, truth, diameterDegrees, footDegrees }, k) => {
      if (zone === "flat") return;
      const sags = plan.sags[Math.floor(k / columns)];
      ok(Math.abs(sags[k % columns] - truth) < 1e-12, `${kind} ${zone}`);
      const mean = (place: number, foot: number): number =>
        threeFootMean(departure, {
          circleRadius: contactCircleRadius(
            ballRing(
              mm(exercise.gauge.trueRadius),
              mm(exercise.gauge.ballRadius),
            ),
            "concave",
            mm(exercise.trueRadius),
          ),
          offset: plan.places[place].offset,
          diameterDegrees,
          footDegrees: foot,
        });
      const theory = mean(k % columns, footDegrees) - mean(0, diameterDegrees);
      const found = sags[k % columns] - sags[0];
      ok(Math.abs(found - theory) < allowed, `${kind} ${zone} ${found}`);
    });
  }
});

Deno.test("verdictPlanOf() has a paraboloid read longer towards the edge by c²/R", () => {
  const exercise = {
    ...draw(4, "conic"),
    hidden: { kind: "conic", conic: -1 },
  } as const;
  const { sags, places } = verdictPlanOf(exercise);
  const edge = places.findIndex(({ zone }) => zone === "edge");
  const { trueRadius, gauge } = exercise;
  const fall = sags[0][edge] - sags[0][0];
  const grown = -fall * 2 * trueRadius ** 2 / gauge.statedRadius ** 2;
  const formula = paraboloidRadiusGrowth(places[edge].offset, mm(trueRadius));
  ok(Math.abs(grown / formula - 1) < 0.01, `${grown} ${formula}`);
});

Deno.test("statedChances() calls a sphere, astigmatism and a fault inside the tolerance right when within", () => {
  equal(statedChances(draw(1, "sphere"), new Random(1), 10).right, "within");
  const large = draw(1, "astigmatism", 100);
  equal(statedChances(large, new Random(1), 10).right, "within");
  for (const kind of ["conic", "turned edge", "coma"] as const) {
    const right = (strength: number) =>
      statedChances(draw(1, kind, strength), new Random(1), 10).right;
    deepEqual([right(0.5), right(1.25)], ["within", "outside"], kind);
  }
});

Deno.test("statedChances() states a power that grows with the fault and is the chance of the right verdict", () => {
  const powers = [1.25, 1.75, 3].map((strength) => {
    const { power, chances, right } = statedChances(
      draw(2, "conic", strength),
      new Random(1),
      400,
    );
    equal(power, chances[right]);
    return power;
  });
  ok(powers[0] < powers[1] && powers[1] <= powers[2], powers.join(" "));
  ok(powers[2] > 0.9);
});

Deno.test("smallestFound() names the amount that 80 % of fresh sessions find, and none for what nobody sees", () => {
  for (const kind of ["conic", "turned edge", "coma"] as const) {
    const exercise = draw(6, kind);
    const hidden = smallestFound(exercise, 1, 0.8, 600)!;
    equal(hidden.kind, kind);
    const { outside } = statedChances(
      { ...exercise, hidden },
      new Random(99),
      600,
    ).chances;
    // Two simulations of 600: three errors of their difference, rounded sizes.
    ok(Math.abs(outside - 0.8) < 0.08, `${kind} ${outside}`);
  }
  equal(smallestFound(draw(6, "sphere"), 1), undefined);
  equal(smallestFound(draw(6, "astigmatism"), 1), undefined);
});

Deno.test("placesOfExercise() reads both ends as far out as one foot reaches, the flat last", () => {
  const exercise = draw(3, "sphere");
  const { disc } = exercise;
  const places = placesOfExercise(exercise);
  const usable = mm(disc.diameter / 2 - disc.bevel - disc.margin);
  const radius = mm(disc.targetRadius);
  const edge = reach(statedRing(exercise), "concave", radius, usable, 0)!;
  deepEqual(
    places.map(({ offset }) => Number((offset / edge).toFixed(9))),
    [0, 0.5, -0.5, 1, -1, 0],
  );
  equal(places.at(-1)!.zone, "flat");
  equal(halfDiameterOf(exercise), disc.diameter / 2 - disc.bevel);
  const diameters = diametersOf(exercise);
  equal(new Set(diameters).size, exercise.sets);
  ok(diameters.every((degrees) => degrees >= 0 && degrees < 180));
});

Deno.test("placesOfExercise() refuses a ring that does not fit on the disc", () => {
  const exercise = draw(3, "sphere");
  const gauge = { ...exercise.gauge, statedRadius: 900 };
  throws(() => placesOfExercise({ ...exercise, gauge }), {
    name: "RangeError",
    message:
      `Cannot make an exercise as its ring must fit on the disc of ${exercise.disc.diameter} mm: current value is 900 mm`,
  });
});

Deno.test("centreRadiusOf() is the radius itself on a sphere and differs on a conic", () => {
  const sphere = draw(3, "sphere");
  ok(Math.abs(centreRadiusOf(sphere) - sphere.trueRadius) < 1e-6);
  const conic = draw(3, "conic", 3);
  ok(Math.abs(centreRadiusOf(conic) - conic.trueRadius) > 0.1);
});

Deno.test("hiddenShape() raises and lowers the rim by the stated amounts", () => {
  const [radius, a] = [3000, 148.5];
  const sphere = hiddenShape({ kind: "sphere" }, radius, a);
  const at = (
    hidden: Parameters<typeof hiddenShape>[0],
    degrees: number,
  ): string => {
    const turn = degrees * Math.PI / 180;
    const [x, y] = [a * Math.cos(turn), a * Math.sin(turn)];
    const { height } = hiddenShape(hidden, radius, a)(x, y);
    return (1000 * (height - sphere(x, y).height)).toFixed(6);
  };
  const edge = { kind: "turned edge", width: 20, depth: 0.012 } as const;
  equal(at(edge, 77), "-12.000000");
  const coma = { kind: "coma", rise: 0.012, degrees: 40 } as const;
  deepEqual([at(coma, 40), at(coma, 220)], ["12.000000", "-12.000000"]);
  const astigmatism = { ...coma, kind: "astigmatism" } as const;
  deepEqual(
    [at(astigmatism, 40), at(astigmatism, 220), at(astigmatism, 130)],
    ["12.000000", "12.000000", "-12.000000"],
  );
});

Deno.test("exerciseFiles() gives the same bytes for the same seed and tells nothing of what is hidden", () => {
  for (const kind of HIDDEN_KINDS) {
    const files = exerciseFiles(draw(8, kind, 3), new Random(2));
    deepEqual(exerciseFiles(draw(8, kind, 3), new Random(2)), files);
    const text = [...files.values()].join("\n");
    ok(text.includes(EXERCISE_NOTE) && text.includes('"invented": true'));
    ok(!/conic|turned edge|coma\b|astigmat|trueRadius|strength/.test(text));
    ok(!text.includes(String(draw(8, kind, 3).trueRadius)));
  }
});

Deno.test("drawClass() begins a larger class with the exercises of a smaller one, five kinds in each five", () => {
  const [small, large] = [drawClass(11, 6), drawClass(11, 12)];
  deepEqual(
    large.slice(0, 6).map(({ exercise }) => exercise),
    small.map(({ exercise }) => exercise),
  );
  for (const from of [0, 5]) {
    const kinds = large.slice(from, from + 5).map(({ exercise }) =>
      exercise.hidden.kind
    );
    equal(new Set(kinds).size, 5);
  }
  notDeepEqual(drawClass(12, 1)[0].exercise, small[0].exercise);
  throws(() => drawClass(1, 0), {
    name: "RangeError",
    message:
      "Cannot draw exercises as the students must be a whole number from 1 to 200: current value is 0",
  });
});
