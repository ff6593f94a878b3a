import { equal } from "node:assert/strict";
import {
  againstTarget,
  type RadiusRange,
  type TargetVerdict,
  type WantedRadius,
} from "sagbook/fabrication/mod.ts";

const judged = (low: number, high?: number, tolerance?: number): string => {
  const range: RadiusRange = high === undefined ? { low } : { low, high };
  const target: WantedRadius = tolerance === undefined
    ? { radius: 2200 }
    : { radius: 2200, tolerance };
  return againstTarget(range, target);
};

Deno.test("againstTarget() decides by both ends of the range, on either side, and at the ends of the tolerance", () => {
  const cases: readonly [number, number | undefined, TargetVerdict][] = [
    [2190, 2210, "within"],
    [2189.9, 2210, "not decided"],
    [2190, 2210.1, "not decided"],
    [2158, 2245, "not decided"],
    [2210, 2230, "not decided"],
    [2210.1, 2230, "longer"],
    [2170, 2190, "not decided"],
    [2170, 2189.9, "shorter"],
    [2195, undefined, "not decided"],
    [2211, undefined, "longer"],
  ];
  for (const [low, high, verdict] of cases) {
    equal(judged(low, high, 10), verdict, `${low} to ${high}`);
  }
});

Deno.test("againstTarget() never calls a radius reached without a tolerance or without a range", () => {
  equal(judged(2199, 2201), "not decided");
  equal(judged(2201, 2203), "longer");
  equal(
    againstTarget(undefined, { radius: 2200, tolerance: 10 }),
    "not decided",
  );
});
