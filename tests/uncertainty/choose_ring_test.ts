import { equal, ok, throws } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { chooseRing } from "sagbook/uncertainty/choose_ring.ts";
import {
  chanceToShow,
  detectableDifference,
  studentRule,
} from "sagbook/uncertainty/detection.ts";
import type {
  ComparedRing,
  RingChoice,
  RingChoicePlan,
  RingQuestion,
} from "sagbook/uncertainty/ring_question.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import {
  chanceSeen,
  PLANNED_RULE,
  POWER_PLAN,
  POWER_RING,
} from "../studies/_ring_choice_power.ts";

const near = (found: number | undefined, wanted: number, relative: number) =>
  ok(
    found !== undefined && Math.abs(found / wanted - 1) <= relative,
    `${found} is not ${wanted}`,
  );

const ring = (
  id: string,
  shape: Partial<ComparedRing["shape"]> & { kind?: string },
  foot: ComparedRing["foot"]["kind"] = "foot out",
): ComparedRing => ({
  id,
  radiusUncertainty: mm(0.02),
  radiusUncertaintyAssumed: false,
  ballRadiusUncertainty: mm(0.002),
  expansion: 11.5e-6,
  foot: { kind: foot } as ComparedRing["foot"],
  shape: {
    kind: "balls",
    ballRadius: mm(6.35),
    probeOffset: mm(0),
    ...shape,
  } as ComparedRing["shape"],
});
const balls = (id: string, circle: number, foot?: "foot out" | "feet out") =>
  ring(id, { circleRadius: mm(circle) }, foot);

const plan: RingChoicePlan = {
  work: {
    form: "concave",
    radius: mm(3000),
    diameter: mm(300),
    margin: mm(2),
  },
  scatter: { repeat: 0.0006, zeroing: 0.0008 },
  step: mm(0.0005),
  sets: 5,
};
const pick = (choices: RingChoice[], question: RingQuestion): RingChoice => {
  const found = choices.find((choice) => choice.question === question);
  ok(found);
  return found;
};

Deno.test("chanceToShow() agrees with tables of the power of Student's t test", () => {
  // Standard tables of the paired t test, two-sided 5 %: n = 5, effect 1.682
  // and n = 10, effect 0.996 give 80 % (noncentral t; recomputed by simulation
  // below, so the tables are from memory).
  near(chanceToShow(1.682, { deviation: 1, sets: 5 }), 0.8, 0.003);
  near(chanceToShow(0.996, { deviation: 1, sets: 10 }), 0.8, 0.003);
  near(chanceToShow(0, { deviation: 3, sets: 4 }), 0.05, 0.01);
});

Deno.test("chanceToShow() is what 40 000 simulated comparisons show, with floor and shared parts", () => {
  const random = new Random(1);
  for (
    const { shared, step, sets } of [
      { shared: 0, step: 0, sets: 3 },
      { shared: 0.5, step: 0, sets: 4 },
      { shared: 0, step: 1, sets: 5 },
    ]
  ) {
    const halfWidth = studentRule(0.05, shared, step);
    const difference = 1.5;
    let shown = 0;
    const runs = 40_000;
    for (let run = 0; run < runs; run++) {
      const offset = shared * random.normal();
      let [sum, squares] = [0, 0];
      for (let k = 0; k < sets; k++) {
        const value = difference + random.normal();
        sum += value;
        squares += value * value;
      }
      const variance = (squares - sum * sum / sets) / (sets - 1);
      if (Math.abs(sum / sets + offset) > halfWidth(variance, sets)) shown++;
    }
    const chance = chanceToShow(difference, {
      deviation: 1,
      sets,
      shared,
      halfWidth,
    });
    ok(Math.abs(shown / runs - chance) < 0.009, `${shown / runs}, ${chance}`);
  }
});

Deno.test("detectableDifference() is shown with just the power asked for", () => {
  for (const power of [0.5, 0.8, 0.95]) {
    const halfWidth = studentRule(0.05, 0.3, 0.5);
    const planned = { deviation: 0.7, sets: 4, shared: 0.3, halfWidth };
    const found = detectableDifference(planned, power);
    near(chanceToShow(found, planned), power, 1e-4);
  }
});

Deno.test("detectableDifference() and chanceToShow() refuse what no plan can be", () => {
  throws(() => detectableDifference({ deviation: 1, sets: 1 }), {
    name: "RangeError",
    message:
      "Cannot find a chance as there must be at least 2 sets: current value is 1",
  });
  throws(() => detectableDifference({ deviation: 0, sets: 3 }), {
    name: "RangeError",
    message:
      "Cannot find a chance as the deviation between sets must be finite and above 0: current value is 0",
  });
  throws(() => detectableDifference({ deviation: 1, sets: 3 }, 1), {
    name: "RangeError",
    message:
      "Cannot find a detectable difference as the power must be above 0.06 and below 1: current value is 1",
  });
  throws(
    () =>
      detectableDifference({ deviation: 1, sets: 3, halfWidth: () => 0 }, 0.8),
    RangeError,
  );
});

Deno.test("chooseRing() recommends three different rings for three questions", () => {
  const choices = chooseRing(
    [balls("small", 30), balls("middle", 74), balls("large", 125)],
    plan,
  );
  equal(pick(choices, "radius").recommended, "large");
  equal(pick(choices, "conic").recommended, "middle");
  equal(pick(choices, "edge fault").recommended, "small");
  equal(pick(choices, "astigmatism").recommended, undefined);
});

Deno.test("chooseRing() finds half the usable radius best for the conic, the largest for R", () => {
  const choices = chooseRing([balls("A", 60)], plan);
  near(pick(choices, "conic").best?.circleRadius, 74, 0.03);
  near(pick(choices, "radius").best?.circleRadius, 148, 0.03);
});

Deno.test("chooseRing() turns a difference of sag into a conic by 2R³/(c² r²)", () => {
  const [answer] = pick(chooseRing([balls("A", 60)], plan), "conic").rings;
  const deviation = Math.sqrt(2 * (0.0006 ** 2 + 0.0005 ** 2 / 12));
  const difference = detectableDifference({
    deviation,
    sets: 5,
    halfWidth: studentRule(0.05, 0, 0.0005),
  });
  const touching = 60 * 3000 / (3000 - 6.35);
  near(answer.offset, 148 - touching, 1e-3);
  const c = answer.offset ?? 0;
  near(
    answer.detectable,
    difference * 2 * 3000 ** 3 / (c * touching) ** 2,
    1e-9,
  );
});

Deno.test("chooseRing() shows -0.27 of a turned edge 20 mm wide with one foot out, less with two", () => {
  const choices = chooseRing(
    [balls("one", 60), balls("two", 60, "feet out")],
    { ...plan, edgeWidth: mm(20) },
  );
  const [one, two] = pick(choices, "edge fault").rings;
  const conic = pick(choices, "conic").rings[0];
  const response = 2 * 3000 ** 3 / ((conic.offset ?? 0) * 60.127) ** 2;
  const difference = (conic.detectable ?? 0) / response;
  near(one.detectable, difference / 0.27, 0.01);
  near(one.offset, 88, 0.01);
  // Two feet out reach 108 mm and then put two feet on the edge at once.
  near(two.offset, 108.5, 0.01);
  near(two.detectable, difference / 0.54, 0.02);
});

Deno.test("chooseRing() says why a ring cannot answer", () => {
  const choices = chooseRing([
    balls("huge", 160),
    balls("just", 147.68),
    ring("edge", { kind: "edge", innerRadius: mm(58), outerRadius: mm(60) }),
    ring("bar", { kind: "bar", span: mm(200) }),
  ], plan);
  const reasons = (question: RingQuestion) =>
    pick(choices, question).rings.map(({ reason }) => reason).join("; ");
  equal(reasons("radius"), "does not fit the work; ; ; ");
  equal(
    reasons("edge fault"),
    "does not fit the work; does not touch the fault; does not touch the fault; ",
  );
  equal(
    reasons("astigmatism"),
    "does not fit the work; three feet cannot see it; reads it as a sphere; ",
  );
  equal(pick(choices, "astigmatism").recommended, "bar");
});

Deno.test("chooseRing() gives a bar 2 A a² of astigmatism for 2 A h² between two directions", () => {
  const choices = chooseRing(
    [ring("bar", { kind: "bar", span: mm(200) })],
    plan,
  );
  const [bar] = pick(choices, "astigmatism").rings;
  const [conic] = pick(choices, "conic").rings;
  const touching = 100 * 3000 / (3000 - 6.35);
  const perConic = 6 * ((conic.offset ?? 0) * touching) ** 2 / (8 * 3000 ** 3);
  near(bar.detectable, (conic.detectable ?? 0) * perConic * 2.25, 1e-6);
});

Deno.test("chooseRing() names a ring for the radius where the gauge scatters less than its display shows", () => {
  const still = { ...plan, scatter: { repeat: 0, zeroing: 0 } };
  const [radius] = chooseRing([balls("A", 60), balls("B", 90)], still);
  equal(radius.recommended, "B");
  for (const { detectable, expanded } of radius.rings) {
    // All that is left is shared and normal: 80 % of the power needs the
    // quantiles of 0.975 and 0.8, the interval that of 0.975 alone.
    near(detectable, expanded! * (1.959964 + 0.841621) / 1.959964, 1e-4);
  }
});

Deno.test("chooseRing() refuses to choose from none", () => {
  throws(() => chooseRing([], plan), {
    name: "RangeError",
    message:
      "Cannot choose a ring as there must be at least one: current value is 0",
  });
});

Deno.test("chooseRing()'s detectable amounts are seen by the whole analysis with the power stated", () => {
  // 10 000 seeded sessions: within 2 points and two simulation errors.
  const allowed = 0.02 + 2 * Math.sqrt(0.8 * 0.2 / 10_000);
  const planned = { ...POWER_PLAN, halfWidth: PLANNED_RULE };
  const choices = chooseRing([POWER_RING], planned);
  for (const question of ["conic", "edge fault", "radius"] as const) {
    const [answer] = pick(choices, question).rings;
    const seen = chanceSeen(question, answer, 10_000, new Random(1));
    ok(Math.abs(seen - 0.8) <= allowed, `${question}: ${seen}`);
  }
});

Deno.test("chooseRing() takes no ring for the radius that cannot be zeroed on the flat, but does for differences", () => {
  const rings = [balls("small", 60), balls("large", 100)];
  const of = (size: number, question: RingQuestion) =>
    chooseRing(rings, { ...plan, flat: { id: "F", size: mm(size) } })
      .find((one) => one.question === question)!;
  const radius = of(150, "radius");
  equal(radius.recommended, "small");
  equal(radius.rings[1].reason, "does not fit the flat");
  equal(radius.rings[1].detectable, undefined);
  equal(of(200, "radius").recommended, "large");
  ok(of(150, "conic").rings[1].detectable !== undefined);
  // The best ring there could be may come with a flat of its own.
  ok(radius.best!.circleRadius > 100);
});

Deno.test("chooseRing() says what a two-foot bar would show of astigmatism where three feet show none", () => {
  const found = chooseRing([balls("A", 60)], plan)
    .find(({ question }) => question === "astigmatism")!;
  equal(found.rings[0].reason, "three feet cannot see it");
  equal(found.recommended, undefined);
  // δ = A ρ² cos 2θ: 2 A h² between two directions, 2 A a² peak to valley.
  const { circleRadius, detectable } = found.best!;
  const bar = {
    ...balls("B", 60),
    shape: { kind: "bar", span: mm(2 * circleRadius), ballRadius: mm(6.35) },
  } as const;
  const owned = chooseRing([bar], plan)
    .find(({ question }) => question === "astigmatism")!;
  near(owned.rings[0].detectable, detectable, 1e-9);
  ok(circleRadius > 140);
});
