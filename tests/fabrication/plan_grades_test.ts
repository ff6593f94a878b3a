import { equal, ok, throws } from "node:assert/strict";
import { fitProgress } from "sagbook/fabrication/fit_progress.ts";
import { planGrades } from "sagbook/fabrication/plan_grades.ts";
import { rateChange } from "sagbook/fabrication/rate_change.ts";
import { compareRate, learnRates } from "sagbook/fabrication/shop_rates.ts";
import { Random } from "sagbook/numerics/random.ts";

const sure = (value: number, own = 0) => ({
  value,
  own,
  dof: 8,
  common: {} as Record<string, number>,
});
const AHEAD = [
  { grade: "F320", work: 10, rate: sure(0.001, 0.0001) },
  { grade: "F500", work: 12, rate: sure(0.0005, 0.0001) },
];

Deno.test("planGrades() takes what later grades usually do off the target, backward", () => {
  const plan = planGrades(sure(3.7), sure(3.75), AHEAD);
  equal(plan.leaveNow.value.toFixed(6), (3.75 - 0.01 - 0.006).toFixed(6));
  equal(plan.toGo.value.toFixed(6), "0.034000");
  equal(plan.advice, "go on");
  equal(plan.grades[0].leave.value, plan.grades[1].enter.value);
  equal(plan.grades[1].leave.value, 3.75);
  // 10 wets and 12 wets at 0.1 µm each, in quadrature.
  equal(plan.leaveNow.own.toFixed(6), Math.hypot(0.001, 0.0012).toFixed(6));
});

Deno.test("planGrades() says stop when the grades to come do the rest, and when they do too much", () => {
  equal(planGrades(sure(3.734), sure(3.75), AHEAD).advice, "stop");
  equal(planGrades(sure(3.745), sure(3.75), AHEAD).advice, "too far");
  // Toward a shallower surface they work against the target.
  equal(planGrades(sure(3.8), sure(3.75), AHEAD).advice, "go on");
  equal(planGrades(sure(3.7), sure(3.75), []).leaveNow.value, 3.75);
});

Deno.test("planGrades() keeps shared errors by id, and refuses work below 0", () => {
  const ring = { ...sure(3.7), common: { ring: 0.002 } };
  const plan = planGrades(ring, sure(3.75), [
    {
      grade: "F320",
      work: 10,
      rate: { ...sure(0.001), common: { ring: 1e-6 } },
    },
  ]);
  equal(plan.toGo.common.ring.toFixed(6), "-0.002010");
  throws(
    () => planGrades(ring, sure(3.75), [{ ...AHEAD[0], work: -2 }]),
    {
      name: "RangeError",
      message:
        "Cannot plan the grades as the work of F320 must be 0 or more and finite: current value is -2",
    },
  );
});

const run = (sags: readonly number[], own = 0.001) =>
  sags.map((value, i) => ({
    session: `S${i + 1}`,
    work: 10 * i,
    sag: { value, own, dof: Infinity, common: {} },
  }));

Deno.test("rateChange() finds the session and the rates on both sides", () => {
  const found = rateChange([
    run([3.4, 3.4405, 3.4795, 3.5205, 3.5295, 3.5405, 3.5498]),
  ]);
  ok(found.kind === "changed");
  equal(found.at, "S4");
  ok(Math.abs(found.before - 0.004) < 1e-4);
  ok(Math.abs(found.after - 0.001) < 1e-4);
  ok(found.p < 0.05);
});

Deno.test("rateChange() calls an even rate steady, and few sessions too few", () => {
  equal(
    rateChange([run([3.4, 3.4405, 3.4795, 3.5205, 3.5595, 3.6005])]).kind,
    "steady",
  );
  equal(rateChange([run([3.4, 3.44, 3.45, 3.46])]).kind, "too few sessions");
});

Deno.test("rateChange() cries wolf in no more than 5 % of even pieces", () => {
  const random = new Random(4_711);
  for (const work of [0, 0.003]) {
    let cried = 0;
    const pieces = 600;
    for (let k = 0; k < pieces; k++) {
      let sag = 3.4;
      const sags = Array.from({ length: 7 }, () => {
        sag += 0.04 + work * random.normal();
        return sag + 0.002 * random.normal();
      });
      if (rateChange([run(sags, 0.002)]).kind === "changed") cried++;
    }
    // Three simulation errors of 5 % in 600.
    ok(cried / pieces < 0.05 + 0.027, `${cried / pieces}`);
  }
});

const stage = (rate: number, grade = "80") => ({
  grade,
  position: "mirror on top" as const,
  fit: fitProgress([
    run([3.4, 3.4 + 10 * rate, 3.4 + 20 * rate, 3.4 + 30 * rate + 0.0005]),
  ]),
  unit: "wets" as const,
  halfDiameter: 150,
  work: 30,
});

Deno.test("learnRates() keeps one piece's rate and averages several with their scatter", () => {
  const one = learnRates([stage(0.004)]);
  equal(one[0].pieces, 1);
  equal(one[0].rate, stageRate(one));
  const rates = [0.004, 0.0046, 0.0037];
  const [all, other] = learnRates([
    ...rates.map((rate) => stage(rate)),
    stage(0.001, "F320"),
  ]);
  equal(other.grade, "F320");
  equal(all.pieces, 3);
  const found = rates.map((rate) => stage(rate).fit.rate.value);
  const mean = found.reduce((sum, rate) => sum + rate, 0) / 3;
  equal(all.rate.value.toFixed(9), mean.toFixed(9));
  const deviation = Math.sqrt(
    found.reduce((sum, rate) => sum + (rate - mean) ** 2, 0) / 2 / 3,
  );
  equal(all.rate.own.toFixed(9), deviation.toFixed(9));
  equal(all.rate.dof, 2);
});

/** The rate as it stands in the only entry. */
function stageRate(learned: ReturnType<typeof learnRates>) {
  return learned[0].rate;
}

Deno.test("compareRate() tells faster, slower, the other way, and as expected", () => {
  const expected = sure(0.004, 0.0002);
  const cases = [
    [0.0041, "as expected"],
    [0.006, "faster"],
    [0.002, "slower"],
    [-0.002, "other way"],
  ] as const;
  for (const [value, verdict] of cases) {
    const found = compareRate(sure(value, 0.0002), expected);
    equal(found.verdict, verdict);
    equal(found.ratio, value / 0.004);
  }
  // t = 0.0004/(0.0002 √2) = 1.41421 at 16 degrees of freedom: two-sided
  // 0.17646 (Student's t; checked in statistics against its own reference).
  const { p } = compareRate(sure(0.0044, 0.0002), expected);
  ok(Math.abs(p - 0.1765) < 2e-4, `${p}`);
  equal(compareRate(sure(0.004), sure(0.004)).p, 1);
});
