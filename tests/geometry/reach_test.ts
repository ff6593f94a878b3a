import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { contactCircleRadius } from "sagbook/geometry/contact_circle.ts";
import {
  contactPoints,
  contactRadii,
} from "sagbook/geometry/contact_points.ts";
import { relativeFootDegrees } from "sagbook/geometry/foot_direction.ts";
import { reach } from "sagbook/geometry/reach.ts";
import type { RingShape } from "sagbook/geometry/ring.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const balls = (circle: number, ball: number): RingShape => ({
  kind: "balls",
  circleRadius: mm(circle),
  ballRadius: mm(ball),
  probeOffset: mm(0),
});
const points = balls(60, 0);
const edge: RingShape = {
  kind: "edge",
  innerRadius: mm(48),
  outerRadius: mm(50),
};
const bar: RingShape = { kind: "bar", span: mm(120), ballRadius: mm(0) };

Deno.test("contactCircleRadius() gives the derived check values for both forms", () => {
  const ring = balls(60, 6.35);
  const at = (form: "concave" | "convex") =>
    contactCircleRadius(ring, form, mm(3000)).toFixed(3);
  equal(at("concave"), "60.127");
  equal(at("convex"), "59.873");
  equal(contactCircleRadius(edge, "concave", mm(3000)), 50);
  equal(contactCircleRadius(edge, "convex", mm(3000)), 48);
  equal(contactCircleRadius(bar, "convex", mm(3000)), 60);
  throws(() => contactCircleRadius(ring, "concave", mm(6)), {
    name: "RangeError",
    message:
      "Cannot find where the feet touch as the radius of curvature must exceed the ball radius of 6.35 mm: current value is 6 mm",
  });
});

Deno.test("reach() gives the derived check values, and the smaller one when unknown", () => {
  equal(reach(points, "concave", mm(3000), mm(148), 0), 88);
  equal(
    reach(points, "concave", mm(3000), mm(148), 180)?.toFixed(1),
    "108.6",
  );
  equal(reach(points, "concave", mm(3000), mm(148)), 88);
  // The balls touch 0.127 mm farther out than they stand.
  const withBalls = reach(balls(60, 6.35), "concave", mm(3000), mm(148), 0);
  equal(withBalls?.toFixed(3), "87.873");
});

Deno.test("reach() puts the outermost foot on the limit at any angle", () => {
  for (const shape of [points, bar, edge]) {
    for (let angle = 0; angle < 360; angle += 7) {
      const c = reach(shape, "concave", mm(3000), mm(148), angle);
      ok(c !== undefined);
      const { outermost } = contactRadii(
        shape,
        "concave",
        mm(3000),
        c,
        angle,
      );
      ok(Math.abs(outermost - 148) < 1e-12, `${shape.kind} ${angle}`);
    }
  }
});

Deno.test("reach() is undefined where the ring is larger than the work, 0 where it just fits", () => {
  equal(reach(points, "concave", mm(3000), mm(59), 0), undefined);
  equal(reach(points, "concave", mm(3000), mm(60), 0), 0);
});

Deno.test("contactRadii() gives the four points a reading sees at 85 mm", () => {
  const seen = (angle: number) => {
    const found = contactRadii(points, "concave", mm(3000), mm(-85), angle);
    return [found.probe, ...found.feet].map(Math.round);
  };
  deepEqual(seen(180), [85, 126, 126, 25]);
  deepEqual(seen(0), [85, 145, 76, 76]);
  const unknown = contactRadii(points, "concave", mm(3000), mm(85));
  deepEqual(unknown, { probe: 85, feet: [], innermost: 25, outermost: 145 });
});

Deno.test("contactPoints() lays probe and feet out in the work's axes", () => {
  const { probe, feet } = contactPoints(
    points,
    "concave",
    mm(3000),
    mm(-80),
    90,
    270,
  );
  deepEqual([probe.x, probe.y].map(Math.round), [-0, -80]);
  deepEqual([feet[0].x, feet[0].y].map(Math.round), [-0, -140]);
  deepEqual([feet[1].x, feet[1].y].map(Math.round), [52, -50]);
  deepEqual(contactPoints(edge, "convex", mm(900), mm(0), 0, 0).feet, []);
});

Deno.test("relativeFootDegrees() turns the work's axes into the nearest rim's", () => {
  const angle = (degrees: number) => ({ kind: "angle", degrees } as const);
  equal(relativeFootDegrees(angle(90), 60, mm(40)), 30);
  equal(relativeFootDegrees(angle(90), 60, mm(-40)), 210);
  equal(relativeFootDegrees(angle(10), 60, mm(40)), 310);
  equal(relativeFootDegrees(angle(10), undefined, mm(40)), undefined);
  equal(relativeFootDegrees({ kind: "foot out" }, 60, mm(-40)), 0);
  equal(relativeFootDegrees({ kind: "feet out" }, undefined, mm(40)), 180);
  equal(relativeFootDegrees({ kind: "unknown" }, 60, mm(40)), undefined);
});
