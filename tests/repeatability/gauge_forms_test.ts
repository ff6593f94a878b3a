import { deepEqual, equal, ok, throws } from "node:assert/strict";
import {
  fillGaugeForms,
  fillRangeForms,
  type GaugeForms,
  type NoGaugeForms,
  type SurfaceReading,
} from "sagbook/repeatability/gauge_forms.ts";

/** A worked example with the standard's own words for its sources. */
interface Example {
  data: { part: string; operator: string; y: number }[];
  constants?: { K1: number; K2: number; K3: number };
  // deno-lint-ignore no-explicit-any
  expected: any;
  // deno-lint-ignore no-explicit-any
  tolerance: any;
}

const example = (name: string): Example =>
  JSON.parse(
    Deno.readTextFileSync(
      new URL(`../references/${name}.json`, import.meta.url),
    ),
  );

const readingsOf = ({ data }: Example): SurfaceReading[] =>
  data.map(({ part, operator, y }) => ({ surface: part, operator, value: y }));

const NAMES = {
  total_gauge_rr: "gauge",
  repeatability: "repeatability",
  reproducibility: "reproducibility",
  operator: "operator",
  operator_by_part: "interaction",
  part_to_part: "surface",
  total_variation: "total",
} as const;

function filled(form: GaugeForms | NoGaugeForms): GaugeForms {
  ok(form.method !== "none");
  return form;
}

const close = (
  found: number,
  expected: number,
  relative: number,
  what: string,
) =>
  ok(
    Math.abs(found - expected) <= relative * Math.max(Math.abs(expected), 1e-9),
    `${what}: ${found}, not ${expected}`,
  );

for (const name of ["grr-aiag-10x3x3", "grr-montgomery-runger-20x3x2"]) {
  Deno.test(`fillGaugeForms() gives every line of ${name}, with and without the interaction`, () => {
    const study = example(name);
    for (
      const [interaction, key] of [["separate", "with_interaction"], [
        "pooled",
        "interaction_pooled",
      ]] as const
    ) {
      const form = filled(fillGaugeForms(readingsOf(study), { interaction }));
      const expected = study.expected[key];
      for (const [theirs, ours] of Object.entries(NAMES)) {
        const line = form.lines.find((one) => one.name === ours)!;
        close(
          form.contributions[ours],
          expected.percent_contribution[theirs],
          1e-9,
          `${theirs} contribution`,
        );
        close(line.deviation, expected.sd[theirs], 1e-9, `${theirs} deviation`);
        close(
          line.sixSigma,
          expected.study_variation_6sd[theirs],
          1e-9,
          `${theirs} spread`,
        );
        close(
          line.percentOfStudy,
          expected.percent_study_variation[theirs],
          1e-9,
          `${theirs} of study`,
        );
      }
      equal(form.distinctCategories, expected.ndc);
      close(
        form.distinctCategoriesUnrounded!,
        expected.ndc_unrounded,
        1e-9,
        "categories",
      );
      equal(form.enoughSurfaces, true);
    }
    const { intervals_95: intervals } = study.expected;
    const { gauge, total } = filled(
      fillGaugeForms(readingsOf(study), { interaction: "separate" }),
    ).intervals!;
    close(gauge.low, intervals.gauge_mls.lower, 1e-9, "gauge low");
    close(gauge.high, intervals.gauge_mls.upper, 1e-9, "gauge high");
    close(total.low, intervals.total_mls.lower, 1e-9, "total low");
    close(total.high, intervals.total_mls.upper, 1e-9, "total high");
  });
}

Deno.test("fillGaugeForms() pools an interaction that the test does not see, and says so", () => {
  const readings = readingsOf(example("grr-aiag-10x3x3"));
  deepEqual(
    fillGaugeForms(readings),
    fillGaugeForms(readings, { interaction: "pooled" }),
  );
  equal(filled(fillGaugeForms(readings)).pooled, true);
  // An operator who reads one surface quite differently: the interaction stays.
  const odd = readings.map((one) =>
    one.operator === "B" && one.surface === "3"
      ? { ...one, value: one.value + 5 }
      : one
  );
  equal(filled(fillGaugeForms(odd)).pooled, false);
});

Deno.test("fillRangeForms() gives the printed form of averages and ranges", () => {
  const study = example("grr-aiag-average-range");
  const { K1, K2, K3 } = study.constants!;
  const printed = filled(
    fillRangeForms(readingsOf(study), {
      factors: { repeats: K1, operators: K2, surfaces: K3 },
    }),
  );
  const line = (name: string) =>
    printed.lines.find((one) => one.name === name)!;
  const { recomputed, published } = study.expected;
  const { published_absolute: within } = study.tolerance;
  const pairs = [
    ["repeatability", "ev"],
    ["reproducibility", "av"],
    ["gauge", "grr"],
    ["surface", "pv"],
    ["total", "tv"],
  ];
  for (const [ours, theirs] of pairs) {
    close(line(ours).deviation, recomputed[theirs], 1e-9, theirs);
  }
  for (
    const [ours, theirs] of [["repeatability", "percent_ev"], [
      "gauge",
      "percent_grr",
    ], ["surface", "percent_pv"]]
  ) {
    close(line(ours).percentOfStudy, recomputed[theirs], 1e-9, theirs);
  }
  close(
    printed.distinctCategoriesUnrounded!,
    recomputed.ndc_unrounded,
    1e-9,
    "ndc",
  );
  equal(printed.distinctCategories, published.ndc);
  // With the factors computed from the distribution of the range.
  const computed = filled(fillRangeForms(readingsOf(study)));
  for (const [ours, theirs] of pairs) {
    const found = computed.lines.find((one) => one.name === ours)!.deviation;
    ok(Math.abs(found - published[theirs]) <= within[theirs], theirs);
  }
});

Deno.test("fillGaugeForms() sets six sigma against the width of a tolerance", () => {
  const readings = readingsOf(example("grr-aiag-10x3x3"));
  const line = filled(fillGaugeForms(readings, { toleranceWidth: 4 })).lines
    .find(({ name }) => name === "gauge")!;
  close(line.percentOfTolerance!, 100 * line.sixSigma / 4, 1e-12, "tolerance");
  throws(() => fillGaugeForms(readings, { toleranceWidth: 0 }), {
    name: "RangeError",
    message:
      "Cannot fill in a gauge form as the tolerance must be above 0: current value is 0",
  });
});

Deno.test("fillGaugeForms() and fillRangeForms() say why there is no form", () => {
  const one = (surface: string, operator: string, value: number) => ({
    surface,
    operator,
    value,
  });
  for (const fill of [fillGaugeForms, fillRangeForms]) {
    deepEqual(fill([one("1", "A", 1), one("1", "B", 2)]), {
      method: "none",
      reason: "one surface",
    });
    deepEqual(fill([one("1", "A", 1), one("2", "A", 2)]), {
      method: "none",
      reason: "one operator",
    });
    const same = ["1", "2"].flatMap((s) =>
      ["A", "B"].flatMap((o) => [one(s, o, 5), one(s, o, 5)])
    );
    deepEqual(fill(same), { method: "none", reason: "no variation" });
  }
  const few = ["1", "2"].flatMap((s, k) =>
    ["A", "B"].flatMap((o) => [one(s, o, k), one(s, o, k + 0.1)])
  );
  equal(filled(fillGaugeForms(few)).enoughSurfaces, false);
});
