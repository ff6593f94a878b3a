import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { decideChange } from "sagbook/repeatability/decide_change.ts";
import { decideRadius } from "sagbook/repeatability/decide_radius.ts";
import { planStudy } from "sagbook/repeatability/plan_study.ts";
import type { ScatterModel } from "sagbook/repeatability/scatter_model.ts";
import { simulateSets } from "sagbook/repeatability/simulate_sets.ts";
import {
  type PlanQuestion,
  STUDY_TIMES,
} from "sagbook/repeatability/study_plan.ts";
import {
  powerByZeroings,
  weighStudy,
} from "sagbook/repeatability/weigh_study.ts";
import { compareZones } from "sagbook/zones/compare_zones.ts";
import { judge } from "sagbook/zones/sphericity.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const feet = { circleRadius: mm(60), ballRadius: mm(3) };
const centre = { label: "centre", offset: 0, sag: 0.715 };
/** 3.52 mm of radius for each µm; 0.715 mm is 2520.84 mm. */
const radius = (tolerance: number, target = 2520.84): PlanQuestion => ({
  zones: [centre],
  decide: decideRadius({
    target,
    tolerance,
    feet,
    form: "concave",
  }),
  truth: "within",
});
const steady: ScatterModel = { repeat: 0.001, zeroing: 0.0015, step: 0.001 };

Deno.test("simulateSets() scatters as its model says, rounding of reading and zero included", () => {
  const size = { zeroings: 3, diameters: 3, repeats: 2 };
  const model = {
    repeat: 0.001,
    zeroing: 0.002,
    diameter: 0.003,
    zoneByZeroing: 0.0005,
    step: 0.001,
  };
  const zones = [centre, { label: "edge", offset: 42, sag: 0.714 }];
  const random = new Random(7);
  let [centreSum, edgeSum, product, n] = [0, 0, 0, 0];
  for (let k = 0; k < 4000; k++) {
    for (const { cells } of simulateSets(zones, size, model, random)) {
      const [a, b] = [cells[0].sag - 0.715, cells[1].sag - 0.714];
      centreSum += a * a;
      edgeSum += b * b;
      product += a * b;
      n++;
    }
  }
  // In µm²: zeroing 4 + zero rounded 1/12 + cell 0.25 + (repeat 1 + 1/12) / 2.
  const expected = 4 + 1 / 12 + 0.25 + (1 + 1 / 12) / 2;
  ok(Math.abs(centreSum / n * 1e6 / expected - 1) < 0.04);
  ok(Math.abs(edgeSum / n * 1e6 / (expected + 9) - 1) < 0.04);
  ok(Math.abs(product / n * 1e6 / (4 + 1 / 12) - 1) < 0.08);
});

Deno.test("simulateSets() gives every occasion its change and a shift of its own", () => {
  const size = { zeroings: 2, diameters: 1, repeats: 1 };
  const sets = simulateSets(
    [centre],
    size,
    { repeat: 0, zeroing: 0, step: 0 },
    new Random(1),
    [0, 0.01],
  );
  deepEqual(sets.map(({ occasion }) => occasion), [0, 0, 1, 1]);
  deepEqual(sets.map(({ cells }) => cells[0].sag.toFixed(4)), [
    "0.7150",
    "0.7150",
    "0.7250",
    "0.7250",
  ]);
  const drifting = simulateSets([centre], { ...size, repeats: 2 }, {
    repeat: 0,
    zeroing: 0,
    step: 0,
    driftPerReading: 0.002,
  }, new Random(1));
  equal(drifting[0].cells[0].sag.toFixed(4), "0.7180");
});

Deno.test("decideRadius() keeps 5 % at the limit of its tolerance and refuses a tolerance of nothing", () => {
  const size = { zeroings: 5, diameters: 1, repeats: 1 };
  const question = radius(20);
  const atLimit = {
    ...question,
    zones: [{ ...centre, sag: 0.715 - 20 / 3520.5 }],
  };
  const fine = { ...steady, step: 0 };
  const decide = decideRadius({
    target: 2520.84,
    tolerance: 20,
    feet,
    form: "concave",
  });
  const { chance } = weighStudy({ ...atLimit, decide }, fine, size, {
    studies: 4000,
  });
  ok(chance > 0.035 && chance < 0.065, `${chance}`);
  throws(() => radius(0), {
    name: "RangeError",
    message:
      "Cannot decide on a radius as the tolerance must be above 0 and below the target of 2520.84 mm: current value is 0 mm",
  });
});

Deno.test("decideChange() finds changes in 5 % of unchanged surfaces, and refuses an amount of nothing", () => {
  const question: PlanQuestion = {
    zones: [centre],
    decide: decideChange(0.005),
    truth: "outside",
    changes: [0, 0],
  };
  const { chance } = weighStudy(question, { ...steady, step: 0 }, {
    zeroings: 4,
    diameters: 1,
    repeats: 1,
  }, { studies: 4000 });
  ok(chance > 0.035 && chance < 0.065, `${chance}`);
  equal(decideChange(0.005)([], { step: 0 }), "undecided");
  throws(() => decideChange(0), {
    name: "RangeError",
    message:
      "Cannot decide on a change as the amount that matters must be above 0 mm: current value is 0 mm",
  });
});

Deno.test("planStudy() finds a plan that reaches the wanted chance in fresh simulation, and cheaper ones do not", () => {
  const question = radius(8);
  const answer = planStudy(question, steady, { wanted: 0.8, studies: 1000 });
  ok(answer.kind === "plan");
  const { best, alternatives } = answer;
  const fresh = weighStudy(question, steady, best, { seed: 99, studies: 4000 });
  ok(fresh.chance > 0.8 - 4 * best.chanceError, `${fresh.chance}`);
  const fewer = weighStudy(question, steady, {
    ...best,
    zeroings: best.zeroings - 1,
    diameters: 1,
  }, { seed: 99, studies: 4000 });
  ok(fewer.chance < 0.8 + 4 * best.chanceError, `${fewer.chance}`);
  ok(alternatives.length > 0);
  ok(alternatives.every(({ minutes }) => minutes >= best.minutes));
  ok(alternatives.every(({ chance }) => chance >= 0.8));
});

Deno.test("planStudy() needs more zeroings, not more repeats, where the zeroing scatters", () => {
  const answer = planStudy(radius(10), {
    repeat: 0.0002,
    zeroing: 0.003,
    step: 0.0001,
  }, { studies: 400 });
  ok(answer.kind === "plan");
  equal(answer.best.repeats, 1);
  equal(answer.best.diameters, 1);
  const repeated = planStudy(radius(10), {
    repeat: 0.004,
    zeroing: 0.0002,
    step: 0.0001,
  }, { studies: 400 });
  ok(repeated.kind === "plan");
  ok(
    repeated.best.repeats > 1,
    "where the repeat scatters, repeats are cheaper",
  );
});

Deno.test("planStudy() says why nothing decides: the display, the occasion, what readings share, or too many", () => {
  const quick = { studies: 200, mostZeroings: 12 };
  const coarse = planStudy(radius(2), {
    repeat: 0.0001,
    zeroing: 0.0001,
    step: 0.001,
  }, quick);
  deepEqual([coarse.kind, coarse.kind === "no plan" && coarse.reason], [
    "no plan",
    "display",
  ]);
  const change: PlanQuestion = {
    zones: [centre],
    decide: decideChange(0.003),
    truth: "outside",
    changes: [0, 0.003],
  };
  const days = planStudy(change, {
    repeat: 0.0005,
    zeroing: 0.0005,
    occasion: 0.01,
    step: 0.0001,
  }, { ...quick, wanted: 0.95 });
  deepEqual([days.kind, days.kind === "no plan" && days.reason], [
    "no plan",
    "occasion",
  ]);
  // 10 mm of tolerance are 2.84 µm; 2 µm shared by all would need 5.9 µm.
  const shared = planStudy(radius(10), { ...steady, common: 0.002 }, quick);
  deepEqual([shared.kind, shared.kind === "no plan" && shared.reason], [
    "no plan",
    "common",
  ]);
  equal(planStudy(radius(10), steady, quick).kind, "plan");
  const wide = planStudy(radius(5), { ...steady, zeroing: 0.02 }, quick);
  deepEqual([wide.kind, wide.kind === "no plan" && wide.reason], [
    "no plan",
    "too many",
  ]);
});

Deno.test("simulateSets() shifts every set alike by what all readings share", () => {
  const random = new Random(3);
  const size = { zeroings: 3, diameters: 1, repeats: 1 };
  const model = { repeat: 0, zeroing: 0, common: 0.002, step: 0 };
  const shifts = Array.from({ length: 2000 }, () => {
    const sags = simulateSets([centre], size, model, random)
      .map(({ cells }) => cells[0].sag - 0.715);
    ok(Math.abs(sags[0] - sags[2]) < 1e-12);
    return sags[0];
  });
  const variance = shifts.reduce((sum, one) => sum + one * one, 0) / 2000;
  ok(Math.abs(variance / 0.002 ** 2 - 1) < 0.1);
});

Deno.test("planStudy() decides through the very analysis it is given: zones compared within sets", () => {
  const zones = [centre, { label: "edge", offset: 42, sag: 0.712 }];
  const question: PlanQuestion = {
    zones,
    decide: (sets, { step }) =>
      judge(
        compareZones(sets, zones.length, step, "any diameter"),
        undefined,
        0.0015,
      ).verdict,
    truth: "outside",
  };
  const model = {
    repeat: 0.0006,
    zeroing: 0.01,
    diameter: 0.0003,
    step: 0.001,
  };
  const answer = planStudy(question, model, {
    studies: 400,
    diameters: ["each"],
  });
  ok(answer.kind === "plan");
  // The zeroing's 10 µm cancel within sets: a few sets do.
  ok(answer.best.zeroings <= 10, `${answer.best.zeroings} zeroings`);
  equal(answer.best.diameters, answer.best.zeroings);
});

Deno.test("planStudy() is fixed by its seed and refuses what cannot be planned", () => {
  const run = (seed: number) =>
    planStudy(radius(12), steady, { seed, studies: 200 });
  deepEqual(run(3), run(3));
  throws(() => planStudy(radius(12), steady, { wanted: 1 }), {
    name: "RangeError",
    message:
      "Cannot plan a study as the wanted probability must be above 0 and below 1: current value is 1",
  });
  throws(() => planStudy({ ...radius(12), zones: [] }, steady), {
    name: "RangeError",
    message:
      "Cannot plan a study as it must read a zone: current value is 0 zones",
  });
});

Deno.test("weighStudy() counts readings, looks and minutes as they will be spent", () => {
  const plan = weighStudy({ ...radius(30), changes: [0, 0] }, steady, {
    zeroings: 5,
    diameters: 1,
    repeats: 2,
  }, { studies: 20 });
  deepEqual([plan.occasions, plan.readings, plan.looks], [2, 20, 20]);
  const { zeroing, look, reading, diameter } = STUDY_TIMES;
  equal(plan.minutes, 10 * zeroing + 20 * look + 20 * reading + 2 * diameter);
});

Deno.test("powerByZeroings() grows with the zeroings and shares the wrong verdicts", () => {
  const plans = powerByZeroings(radius(10), steady, [2, 4, 8, 16], {
    repeats: 1,
    diameters: "each",
  }, { studies: 600 });
  for (let k = 1; k < plans.length; k++) {
    ok(plans[k].chance >= plans[k - 1].chance);
  }
  deepEqual(plans.map(({ diameters }) => diameters), [2, 4, 8, 16]);
  ok(plans.every(({ wrong }) => wrong < 0.05));
});
