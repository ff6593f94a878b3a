import { equal, ok } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { diagnoseDisplay } from "sagbook/repeatability/diagnose_display.ts";
import { readCase, readingsOf } from "./_readings.ts";

/** Zeroings of rounded normal readings; deviation and readings in µm. */
function rounded(
  deviation: number,
  zeroings: number,
  repeats: number,
  seed: number,
) {
  const random = new Random(seed);
  return readingsOf(
    Array.from({ length: zeroings }, (_, zeroing) => {
      const mean = 10 * random.uniform();
      return Array.from({ length: repeats }, () => ({
        zeroing,
        sag: Math.round(mean + deviation * random.normal()),
      }));
    }).flat(),
  );
}

Deno.test("diagnoseDisplay() calls all equal readings limited by the display and says what scatter is still possible (B03)", async () => {
  const { readings } = await readCase("B03-all-equal");
  const found = diagnoseDisplay(readings);
  equal(found.verdict, "limited");
  equal(found.allEqual, true);
  equal(found.step, 0.001);
  ok(Math.abs(found.floor! - 0.000408248) < 1e-9, "√2 · 0.001 / √12");
  equal(found.scatter?.deviation, 0);
  equal(found.scatter?.shown, 0);
  equal(found.scatter?.low, 0);
  ok(found.scatter!.high > 0.0002 && found.scatter!.high < 0.0005);
  equal(found.survives, 1);
});

Deno.test("diagnoseDisplay() agrees with Sheppard's correction where the scatter is well above the step", () => {
  for (const seed of [1, 2, 3]) {
    const { scatter } = diagnoseDisplay(rounded(3, 40, 4, seed));
    const corrected = Math.sqrt(scatter!.shown ** 2 - 1e-6 / 12);
    ok(Math.abs(scatter!.deviation / corrected - 1) < 2e-3, `seed ${seed}`);
    equal(scatter!.dof, 120);
  }
});

Deno.test("diagnoseDisplay() finds a scatter below the step without bias, and covers it", () => {
  // The plain formula would read rounding as scatter. With ten pairs coverage
  // wavers, as it does for any interval from a few counts.
  const studies = [
    { truth: 0.35, zeroings: 10, repeats: 2, least: 0.88 },
    { truth: 0.35, zeroings: 30, repeats: 2, least: 0.93 },
    { truth: 0.7, zeroings: 10, repeats: 3, least: 0.93 },
  ];
  for (const { truth, zeroings, repeats, least } of studies) {
    let [squares, shown, count, covered] = [0, 0, 0, 0];
    for (let seed = 0; seed < 600; seed++) {
      const readings = rounded(truth, zeroings, repeats, seed);
      const scatter = diagnoseDisplay(readings).scatter!;
      squares += (scatter.deviation * 1000) ** 2;
      shown += (scatter.shown * 1000) ** 2;
      const holds = scatter.low <= truth / 1000 && scatter.high >= truth / 1000;
      covered += holds ? 1 : 0;
      count++;
    }
    const found = Math.sqrt(squares / count);
    ok(Math.abs(found / truth - 1) < 0.08, `${found} for ${truth}`);
    ok(
      Math.sqrt(shown / count) > 1.07 * truth,
      "rounding adds to what is shown",
    );
    ok(covered / count > least, `covers ${covered / count} of ${truth}`);
  }
});

Deno.test("diagnoseDisplay() tells limited, coarse and fine apart and refuses to guess", () => {
  const verdict = (deviation: number) =>
    diagnoseDisplay(rounded(deviation, 60, 3, 5)).verdict;
  equal(verdict(0.2), "limited");
  equal(verdict(1), "coarse");
  equal(verdict(4), "fine");
  equal(diagnoseDisplay(rounded(1, 5, 1, 1)).reason, "no repeated readings");
  const stepless = readingsOf([{}, {}]).map(({ step: _, ...rest }) => rest);
  equal(diagnoseDisplay(stepless).reason, "no display step");
  equal(diagnoseDisplay([]).verdict, "unknown");
});
