import { deepEqual, equal } from "node:assert/strict";
import {
  COMMON_STROKES,
  nextStep,
  type SurfaceState,
} from "sagbook/fabrication/next_step.ts";

const state = (more: Partial<SurfaceState>): SurfaceState => ({
  form: "concave",
  sphericity: "within",
  ...more,
});

/** Position and kind of a step, where it has them. */
function shortOf(more: Partial<SurfaceState>): string {
  const step = nextStep(state(more));
  return "stroke" in step ? `${step.kind}: ${step.stroke.position}` : step.kind;
}

Deno.test("nextStep() follows the table of concave work in common use, line by line", () => {
  const off = (centreLessEdge: number, radiusLessTarget: number) =>
    shortOf({ sphericity: "outside", centreLessEdge, radiusLessTarget });
  const sure = (off: number) => ({
    radiusLessTarget: off,
    range: { low: off, high: off },
  });
  equal(off(0.01, 40), "to a sphere: alternate");
  equal(off(0.01, -40), "to a sphere: tool on top");
  equal(off(-0.01, -40), "to a sphere: alternate");
  equal(off(-0.01, 40), "to a sphere: mirror on top");
  equal(shortOf(sure(40)), "shorten: mirror on top");
  equal(shortOf(sure(-40)), "lengthen: tool on top");
});

Deno.test("nextStep() turns mirror and tool round on convex work, and leaves alternate", () => {
  const convex = { form: "convex" } as const;
  const sure = (off: number) => ({
    ...convex,
    radiusLessTarget: off,
    range: { low: off - 1, high: off + 1 },
  });
  equal(shortOf(sure(40)), "shorten: tool on top");
  equal(
    shortOf(sure(-40)),
    "lengthen: mirror on top",
  );
  equal(
    shortOf({ ...convex, sphericity: "outside", centreLessEdge: 0.01 }),
    "to a sphere: alternate",
  );
});

Deno.test("nextStep() never gives a stroke while the verdict is open", () => {
  deepEqual(
    nextStep(state({ sphericity: "undecided", radiusLessTarget: 40 })),
    {
      kind: "measure more",
      why: "undecided",
    },
  );
  deepEqual(nextStep(state({ sphericity: "none", radiusLessTarget: 40 })), {
    kind: "measure more",
    why: "untested",
  });
});

Deno.test("nextStep() evens out lopsided wear and wear without a direction", () => {
  equal(
    shortOf({ sphericity: "outside", centreLessEdge: 0.01, lopsided: true }),
    "even out",
  );
  equal(shortOf({ sphericity: "outside" }), "even out");
});

Deno.test("nextStep() advises no deeper or longer side where a zone between centre and edge stands apart", () => {
  const found = nextStep(state({ sphericity: "outside", zoneApart: true }));
  equal(found.kind === "to a sphere" && found.shape, "zone apart");
  equal(
    shortOf({ sphericity: "outside", zoneApart: true }),
    "to a sphere: alternate",
  );
  equal(
    shortOf({ sphericity: "outside", zoneApart: true, lopsided: true }),
    "even out",
  );
});

Deno.test("nextStep() calls a radius on target, near it, or without one by all that it may be", () => {
  const even = (radiusLessTarget: number, uncertainty: number) => ({
    radiusLessTarget,
    range: {
      low: radiusLessTarget - uncertainty,
      high: radiusLessTarget + uncertainty,
    },
    tolerance: 10,
  });
  const near = (off: number, uncertainty: number) =>
    shortOf(even(off, uncertainty));
  equal(near(3, 6), "on target");
  equal(near(3, 8), "near target");
  equal(near(17, 8), "near target");
  equal(near(19, 8), "shorten: mirror on top");
  equal(near(-19, 8), "lengthen: tool on top");
  const beyond = (off: number, uncertainty: number) =>
    nextStep(state(even(off, uncertainty)));
  deepEqual(beyond(-3, 8), { kind: "near target" });
  deepEqual(beyond(-9, 8), { kind: "near target", beyond: true });
  equal(shortOf({}), "no target");
});

Deno.test("nextStep() calls no radius on target by an uneven range that leaves the tolerance, nor by one without an upper end, nor without any", () => {
  const off = (low: number, high?: number) =>
    nextStep(state({
      radiusLessTarget: 1,
      tolerance: 10,
      range: high === undefined ? { low } : { low, high },
    }));
  deepEqual(off(-42, 45), { kind: "near target" });
  deepEqual(off(-2, 45), { kind: "near target" });
  deepEqual(off(0.5, 45), { kind: "near target", beyond: true });
  deepEqual(off(-2), { kind: "near target" });
  equal(off(11).kind, "shorten");
  equal(off(-2, 5).kind, "on target");
  equal(shortOf({ radiusLessTarget: 1, tolerance: 10 }), "near target");
  equal(shortOf({ radiusLessTarget: 90, tolerance: 10 }), "near target");
});

Deno.test("nextStep() uses the bench's own strokes", () => {
  const own = {
    ...COMMON_STROKES,
    shorten: { position: "alternate", stroke: "our own" },
  } as const;
  const step = nextStep(
    state({ radiusLessTarget: 40, range: { low: 38, high: 42 } }),
    own,
  );
  deepEqual("stroke" in step && step.stroke, own.shorten);
});
