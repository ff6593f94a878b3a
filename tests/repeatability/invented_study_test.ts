import { deepEqual, equal, ok } from "node:assert/strict";
import { inventStudy } from "sagbook/repeatability/invented_study.ts";
import { describeDesign } from "sagbook/repeatability/describe_design.ts";
import { diagnoseDisplay } from "sagbook/repeatability/diagnose_display.ts";

Deno.test("inventStudy() gives a study in which every component can be told apart", () => {
  const [design] = describeDesign(inventStudy({ seed: 1 }).readings);
  deepEqual(design.estimable, [
    "repeat",
    "zeroing",
    "operator",
    "diameter",
    "zone × zeroing",
  ]);
  deepEqual(design.confounded, []);
  equal(design.factors.find(({ source }) => source === "zeroing")?.levels, 24);
  equal(design.balanced, true);
});

Deno.test("inventStudy() lets the zero drift for one operator, and for nobody after the cure", () => {
  const moved = (cured: boolean) => {
    const { readings } = inventStudy({ seed: 2, cured });
    const closing = readings.filter(({ on }, k) =>
      on === "flat" && readings[k - 1]?.on === "work"
    );
    const mean = (who: string) => {
      const own = closing.filter(({ operator }) => operator === who);
      return own.reduce((sum, { sag }) => sum + sag, 0) / own.length;
    };
    return [mean("A"), mean("B"), mean("C")];
  };
  const [a, b, c] = moved(false);
  ok(Math.abs(a) < 0.001 && Math.abs(b) < 0.001 && c > 0.003, `${a} ${b} ${c}`);
  ok(Math.abs(moved(true)[2]) < 0.001);
});

Deno.test("inventStudy() is marked as invented, rounds to the step and is fixed by its seed", () => {
  const study = inventStudy({ seed: 3 });
  equal(study.piece.invented, true);
  ok(
    study.readings.every(({ sag }) =>
      Number.isInteger(Math.round(sag * 1e6) / 1000)
    ),
  );
  deepEqual(study, inventStudy({ seed: 3 }));
  equal(study.csv.trim().split("\n").length, study.readings.length + 1);
  equal(diagnoseDisplay(study.readings).verdict, "coarse");
  const scatter = diagnoseDisplay(
    inventStudy({ seed: 3, cured: true }).readings,
  ).scatter!;
  ok(scatter.low < study.truth.repeat && scatter.high > study.truth.repeat);
});
