import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { chanceToDecide } from "sagbook/zones/chance_to_decide.ts";
import {
  chanceOfVerdict,
  trueDepartures,
  type VerdictPlan,
} from "sagbook/zones/chance_of_verdict.ts";

const DIAMETERS = [0, 30, 60, 90, 120, 150];
const place = (zone: string, offset: number) => ({ zone, offset: mm(offset) });
const ONE_END = [place("centre", 0), place("50%", 75), place("edge", 88)];
const BOTH_ENDS = [
  place("centre", 0),
  place("edge", 88),
  place("-edge", -88),
  place("flat", 0),
];

function planOf(
  sags: readonly number[],
  places: VerdictPlan["places"],
  more: Partial<VerdictPlan> = {},
): VerdictPlan {
  return {
    diameters: DIAMETERS,
    places,
    foot: "foot out",
    sags: DIAMETERS.map(() => sags),
    scatter: { repeat: mm(0.001), zeroing: mm(0.002), diameter: mm(0.0005) },
    step: 0.001,
    tolerance: 0.003,
    ...more,
  };
}

Deno.test("chanceOfVerdict() agrees with the planner of sets where nobody looks back and one end is read", () => {
  // Two programs, one question: the planner draws from a covariance.
  const sessions = 3000;
  for (const edge of [0, -0.0045, -0.006]) {
    const means = [0, edge / 2, edge];
    const plan = planOf(means, ONE_END);
    const own = chanceOfVerdict(plan, new Random(1), sessions);
    const covariance = means.map((_, i) =>
      means.map((_, j) =>
        4e-6 + (i > 0 && j > 0 ? 0.25e-6 : 0) + (i === j ? 1e-6 : 0)
      )
    );
    const planner = chanceToDecide(
      { means, covariance, step: plan.step, tolerance: plan.tolerance },
      DIAMETERS.length,
      new Random(2),
      sessions,
    );
    for (const verdict of ["within", "outside"] as const) {
      const [a, b] = [own[verdict], planner[verdict]];
      const error = Math.sqrt((a * (1 - a) + b * (1 - b)) / sessions);
      ok(Math.abs(a - b) <= 4 * error + 0.003, `${edge} ${verdict} ${a} ${b}`);
    }
  }
});

Deno.test("chanceOfVerdict() finds lopsided wear by the two ends alone", () => {
  const worn = planOf([0, 0, 0, 0], BOTH_ENDS, {
    sags: DIAMETERS.map((degrees) => {
      const along = Math.cos(degrees * Math.PI / 180);
      return [0, 0.01 * along, -0.01 * along, 0];
    }),
  });
  ok(chanceOfVerdict(worn, new Random(1), 200).outside > 0.99);
  const { zones, ends } = trueDepartures(worn);
  ok(zones < 1e-15 && Math.abs(ends - 0.02) < 1e-12, `${zones} ${ends}`);
});

Deno.test("chanceOfVerdict() is not misled by a drift that the looks at the flat show", () => {
  const scatter = planOf([0, 0, 0, 0], BOTH_ENDS).scatter;
  const still = planOf([0, 0, 0, 0], BOTH_ENDS, { tolerance: 0.006 });
  const creeping = {
    ...still,
    scatter: { ...scatter, driftPerReading: mm(0.004) },
  };
  const unseen = {
    ...creeping,
    places: BOTH_ENDS.slice(0, 3),
    sags: DIAMETERS.map(() => [0, 0, 0]),
  };
  ok(chanceOfVerdict(still, new Random(1), 300).within > 0.9);
  ok(chanceOfVerdict(creeping, new Random(1), 300).within > 0.9);
  ok(chanceOfVerdict(unseen, new Random(1), 300).within < 0.1);
});

Deno.test("chanceOfVerdict() gives shares that add up to 1, the same for the same seed", () => {
  const plan = planOf([0, 0, -0.0045], ONE_END);
  const found = chanceOfVerdict(plan, new Random(5), 200);
  equal(found.within + found.outside + found.undecided, 1);
  equal(found.sessions, 200);
  deepEqual(chanceOfVerdict(plan, new Random(5), 200), found);
});

Deno.test("chanceOfVerdict() takes scatter of diameters by zone and at opposite ends", () => {
  const scatter = { repeat: mm(0), zeroing: mm(0), diameter: mm(0.004) };
  const of = (diameterPattern: "common" | "by zone" | "opposite ends") =>
    chanceOfVerdict(
      planOf([0, 0, 0, 0], BOTH_ENDS, {
        scatter: { ...scatter, diameterPattern },
        step: 0,
        tolerance: 0.003,
      }),
      new Random(3),
      200,
    );
  // Of opposite sign at the two ends it cancels in the mean of the place.
  ok(of("opposite ends").within < 0.1, "the ends differ from set to set");
  ok(of("common").within < 0.2 && of("by zone").within < 0.2);
});

Deno.test("chanceOfVerdict() refuses sags that do not fit and a diameter read twice", () => {
  const plan = planOf([0, 0], ONE_END);
  throws(() => chanceOfVerdict(plan, new Random(1), 1), {
    name: "RangeError",
    message:
      "Cannot find the chance of a verdict as there must be a sag for each of 6 sets and 3 places: current value is 6 rows",
  });
  const twice = planOf([0, 0, 0], ONE_END, {
    diameters: [0, 180],
    sags: [[0, 0, 0], [0, 0, 0]],
  });
  throws(() => chanceOfVerdict(twice, new Random(1), 1), {
    name: "RangeError",
    message:
      "Cannot find the chance of a verdict as every set must have a diameter of its own: current value is 0, 180 degrees",
  });
});
