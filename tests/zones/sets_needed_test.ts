import { equal, ok, throws } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { chanceToDecide } from "sagbook/zones/chance_to_decide.ts";
import { planStudy } from "sagbook/repeatability/plan_study.ts";
import { compareZones } from "sagbook/zones/compare_zones.ts";
import { judge } from "sagbook/zones/sphericity.ts";
import { setsNeeded } from "sagbook/zones/sets_needed.ts";
import { decidedShare, modelOf } from "../studies/_sets_needed.ts";
import { errorAt } from "../studies/_study.ts";

const design = {
  name: "edge low, diameters differ",
  means: [0.5, 0.3, 0],
  scatter: 1,
  zeroing: 0.7,
  diameter: 0.5,
  tolerance: 3,
} as const;
const sure = { halfWidth: 0.0005, dof: 20 };

Deno.test("setsNeeded() states a number that decides 80 % of fresh sessions, and no more than it takes", async () => {
  const found = setsNeeded(modelOf(design), sure, 1);
  ok(found.kind === "sets");
  const random = new Random(1);
  const [sessions, slack] = [600, 3 * errorAt(0.8, 600)];
  const enough = await decidedShare(design, found.sets, sessions, random);
  ok(enough >= 0.77 - slack, `${found.sets} sets: ${enough}`);
  const fewer = await decidedShare(design, found.sets - 1, sessions, random);
  ok(fewer <= 0.83 + slack, `${found.sets - 1} sets: ${fewer}`);
  ok(Math.abs(enough - found.chance) < 3 * errorAt(0.8, 600) + 0.02);
});

Deno.test("chanceToDecide() agrees with whole sessions on both sides of the limit", async () => {
  for (const tolerance of [3, 6]) {
    const given = { ...design, means: [4, 3, 0], tolerance } as const;
    const { within, outside, decided } = chanceToDecide(
      modelOf(given),
      7,
      new Random(1),
      2000,
    );
    equal(decided, within + outside);
    ok(tolerance === 3 ? outside > within : within > outside);
    const share = await decidedShare(given, 7, 600, new Random(2));
    ok(
      Math.abs(share - decided) < 4 * errorAt(0.5, 600),
      `${share}, ${decided}`,
    );
  }
});

Deno.test("chanceToDecide() errs at the limit in 5 % at most", () => {
  const limit = { ...design, means: [3, 1.5, 0], tolerance: 3 } as const;
  const { within, outside } = chanceToDecide(
    modelOf(limit),
    8,
    new Random(3),
    4000,
  );
  const most = 0.05 + 3 * errorAt(0.05, 4000);
  ok(within <= most && outside <= most, `${within}, ${outside}`);
});

Deno.test("chanceToDecide() refuses fewer than two sets", () => {
  throws(() => chanceToDecide(modelOf(design), 1, new Random(1)), {
    name: "RangeError",
    message:
      "Cannot find the chance to decide as there must be 2 sets or more: current value is 1",
  });
});

Deno.test("setsNeeded() has no practical number at the limit, and none where the display hides the difference", () => {
  const limit = modelOf({ ...design, means: [3, 1.5, 0] });
  const none = setsNeeded(limit, sure, 1);
  ok(none.kind === "no practical number", none.kind);
  // On the limit itself a verdict either way is an error: 5 % at most each.
  ok(none.chance < 0.1, `${none.chance}`);
  const near = setsNeeded(
    modelOf({ ...design, means: [2.6, 1.3, 0] }),
    sure,
    1,
  );
  ok(near.kind === "no practical number", near.kind);
  const again = chanceToDecide(
    modelOf({ ...design, means: [2.6, 1.3, 0] }),
    30,
    new Random(99),
  ).decided;
  ok(Math.abs(near.chance - again) < 0.03, `${near.chance}, ${again}`);
  const hidden = modelOf({
    ...design,
    means: [0, 0, 0],
    scatter: 0.1,
    zeroing: 0,
    diameter: 0,
    tolerance: 0.5,
  });
  equal(setsNeeded(hidden, sure, 1).kind, "display cannot decide");
  // And that is true: sets help only where the zones happen to lie at the edge
  // of a display step, so that the readings flicker.
  for (const sets of [5, 30]) {
    const { decided } = chanceToDecide(hidden, sets, new Random(1), 500);
    ok(decided < 0.15, `${sets} sets: ${decided}`);
  }
});

Deno.test("setsNeeded() has no worst number where the departure may lie on the limit", () => {
  const model = modelOf(design);
  const close = setsNeeded(model, { ...sure, halfWidth: 0.001 }, 1);
  ok(close.kind === "sets" && close.atWorst !== undefined);
  ok(close.atBest <= close.sets && close.sets <= close.atWorst);
  const open = setsNeeded(model, { ...sure, halfWidth: 0.004 }, 1);
  ok(open.kind === "sets" && open.atWorst === undefined);
});

Deno.test("setsNeeded() allows for a departure where none was seen", () => {
  const sphere = modelOf({ ...design, means: [0, 0, 0] });
  const found = setsNeeded(sphere, { halfWidth: 0.001, dof: 60 }, 1);
  ok(found.kind === "sets" && found.atWorst! > found.sets);
});

Deno.test("setsNeeded() gives the same answer for the same seed", () => {
  const model = modelOf(design);
  const [first, again] = [1, 1].map((seed) =>
    JSON.stringify(setsNeeded(model, sure, seed))
  );
  equal(first, again);
});

Deno.test("setsNeeded() and planStudy() give one number for one surface and gauge", () => {
  const scatter = { repeat: 0.001, zeroing: 0.0007, diameter: 0.0005 };
  const zones = [0, 40, 60].map((offset) => ({
    label: `${offset}`,
    offset,
    sag: 0.7,
  }));
  const planned = planStudy(
    {
      zones,
      truth: "within",
      decide: (sets, { step }) =>
        judge(
          compareZones(sets, 3, step, "any diameter"),
          undefined,
          0.003,
        ).verdict,
    },
    { ...scatter, step: 0.001 },
    {
      repeats: [1],
      diameters: ["each"],
      studies: 1000,
    },
  );
  const sphere = modelOf({ ...design, means: [0, 0, 0] });
  const found = setsNeeded(sphere, sure, 1);
  ok(planned.kind === "plan" && found.kind === "sets");
  ok(
    Math.abs(planned.best.zeroings - found.sets) <= 1,
    `${planned.best.zeroings} zeroings, ${found.sets} sets`,
  );
});
