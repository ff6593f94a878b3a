import { equal, ok } from "node:assert/strict";
import { benchSheetCsv } from "sagbook/repeatability/bench_sheet_csv.ts";
import { correctByOperator } from "sagbook/repeatability/correct_by_operator.ts";
import { decideRadius } from "sagbook/repeatability/decide_radius.ts";
import { estimateComponents } from "sagbook/repeatability/estimate_components.ts";
import { inventStudy } from "sagbook/repeatability/invented_study.ts";
import { planStudy } from "sagbook/repeatability/plan_study.ts";
import { scatterModelOf } from "sagbook/repeatability/scatter_model_of.ts";
import { writeBenchSheet } from "sagbook/repeatability/bench_sheet.ts";
import { effectiveFeet } from "sagbook/geometry/effective_feet.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { correctDrift } from "sagbook/zones/drift.ts";

Deno.test("estimateComponents(), scatterModelOf(), planStudy() and writeBenchSheet() lead from a study to a sheet", () => {
  const { readings, piece, bench } = inventStudy({ seed: 1, cured: true });
  const [components] = estimateComponents(readings, {
    ...correctByOperator(readings, correctDrift),
    piece,
    bench,
  });
  // One operator on one day: what differs between people does not enter.
  const model = { ...scatterModelOf(components).model, occasion: 0 };
  const feet = effectiveFeet(bench.rings[0].shape, piece.form);
  const { radius, tolerance } = piece.target!;
  const zones = [{
    label: "centre",
    offset: 0,
    sag: sagFromRadius(radius, feet, piece.form),
  }];
  const answer = planStudy(
    {
      zones,
      decide: decideRadius({
        target: radius,
        tolerance: tolerance!,
        feet,
        form: piece.form,
      }),
      truth: "within",
    },
    model,
    { studies: 400 },
  );
  ok(answer.kind === "plan");
  ok(answer.best.chance >= 0.8 && answer.best.minutes < 60);
  const sheet = writeBenchSheet({
    session: "S3",
    zones,
    size: answer.best,
    foot: { kind: "angle", degrees: 0 },
    seed: 1,
  });
  equal(
    benchSheetCsv(sheet).trim().split("\n").length,
    1 + answer.best.readings + answer.best.looks,
  );
});
