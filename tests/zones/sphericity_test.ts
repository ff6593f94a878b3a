import { equal } from "node:assert/strict";
import { farthest, judge, nearest } from "sagbook/zones/sphericity.ts";
import type { ZoneDifference } from "sagbook/zones/zone_difference.ts";

const around = (
  mean: number,
  half90: number,
  simultaneous: number,
  changes: Partial<ZoneDifference> = {},
): ZoneDifference => ({
  first: 0,
  second: 1,
  sets: 3,
  mean,
  dof: 2,
  rounding: 0,
  interval90: { low: mean - half90, high: mean + half90 },
  simultaneous95: { low: mean - simultaneous, high: mean + simultaneous },
  ...changes,
});

const ends = {
  pairs: 6,
  dof: 4,
  amplitude: 0.004,
  allDirections: true,
};

Deno.test("farthest() and nearest() find the largest and smallest size inside an interval", () => {
  equal(farthest({ low: -3, high: 2 }), 3);
  equal(nearest({ low: -3, high: 2 }), 0);
  equal(nearest({ low: 1, high: 2 }), 1);
  equal(nearest({ low: -2, high: -1 }), 1);
});

Deno.test("judge() says within when every 90 % interval lies inside, ends of the interval included", () => {
  const pair = [around(0.25, 0.5, 1), around(-0.25, 0.25, 1, { second: 2 })];
  equal(judge(pair, undefined, 0.75).verdict, "within");
  const { verdict, deciding } = judge(pair, undefined, 0.74);
  equal(verdict, "undecided");
  equal(deciding?.second, 1);
});

Deno.test("judge() says outside when one simultaneous interval lies beyond, on either side", () => {
  for (const mean of [2, -2]) {
    const pair = [around(0, 0.1, 0.2), around(mean, 0.3, 0.5, { second: 2 })];
    const { verdict, deciding } = judge(pair, undefined, 1);
    equal(verdict, "outside");
    equal(deciding?.second, 2);
    equal(judge(pair, undefined, 1.5).verdict, "undecided");
  }
});

Deno.test("judge() is never within on a difference without an interval", () => {
  const open = { ...around(0, 0, 0), interval90: undefined };
  equal(judge([open], undefined, 1).verdict, "undecided");
  equal(judge([], undefined, 1).verdict, "undecided");
});

Deno.test("judge() lets the two ends of a diameter decide, or keep it open", () => {
  const zones = [around(0, 0.1, 0.2)];
  const out = judge(zones, { ...ends, lower: 1.1, upper: 3 }, 1);
  equal(out.verdict, "outside");
  equal(out.byEnds, true);
  const open = judge(zones, { ...ends, lower: 0, upper: 1.1 }, 1);
  equal(open.verdict, "undecided");
  equal(open.byEnds, true);
  equal(judge(zones, ends, 1).byEnds, true);
  const passed = judge(zones, { ...ends, lower: 0, upper: 1 }, 1);
  equal(passed.verdict, "within");
  equal(passed.byEnds, false);
});
