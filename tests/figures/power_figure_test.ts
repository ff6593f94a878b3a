import { match, ok, rejects } from "node:assert/strict";
import { powerFigure } from "sagbook/figures/power_figure.ts";
import { textsOf } from "./_picture.ts";

const plan = {
  label: "one diameter",
  points: [{ zeroings: 8, power: 0.9 }, { zeroings: 3, power: 0.4 }],
};

Deno.test("powerFigure() says from how many zeroings the wanted chance is reached, or that it is not", async () => {
  match(
    (await powerFigure({ plans: [plan], wanted: 0.8 })).description,
    /one diameter: 80 % from 8 zeroings/,
  );
  match(
    (await powerFigure({ plans: [plan], wanted: 0.95 })).description,
    /one diameter: 95 % is not reached/,
  );
});

Deno.test("powerFigure() shows the number that is proposed only where there is one", async () => {
  ok(
    textsOf(await powerFigure({ plans: [plan], wanted: 0.8, chosen: 8 }))
      .includes("proposed, 8 zeroings"),
  );
  ok(
    !textsOf(await powerFigure({ plans: [plan], wanted: 0.8 })).join().includes(
      "proposed",
    ),
  );
});

Deno.test("powerFigure() refuses a chance above 1 and a plan without points", async () => {
  await rejects(
    powerFigure({
      plans: [{ ...plan, points: [{ zeroings: 3, power: 80 }] }],
      wanted: 0.8,
    }),
    {
      name: "RangeError",
      message:
        "Cannot draw the power as a chance of one diameter must be 0 to 1: current value is 80",
    },
  );
  await rejects(
    powerFigure({ plans: [{ ...plan, points: [] }], wanted: 0.8 }),
    {
      name: "RangeError",
      message:
        "Cannot draw the power as there must be at least one point: current value is 0 of them",
    },
  );
});
