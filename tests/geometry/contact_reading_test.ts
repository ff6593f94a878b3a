import { equal, ok, throws } from "node:assert/strict";
import {
  astigmatism,
  coma,
  evenTerm,
  trefoil,
  turnedEdge,
} from "sagbook/geometry/contact_departures.ts";
import {
  type ContactGauge,
  ringGauge,
} from "sagbook/geometry/contact_gauge.ts";
import {
  type ContactReading,
  contactReading,
} from "sagbook/geometry/contact_reading.ts";
import { contactSag } from "sagbook/geometry/contact_sag.ts";
import {
  conicSurface,
  type ContactSurface,
  flatSurface,
  insideOut,
  toricSurface,
  withDepartures,
} from "sagbook/geometry/contact_surface.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const feet = (circle: number, ball: number) => ({
  circleRadius: mm(circle),
  ballRadius: mm(ball),
});
const near = (found: number, wanted: number, within: number) =>
  ok(Math.abs(found - wanted) <= within, `${found} is not ${wanted}`);

/** Ball centres and probe, rebuilt from the points that touch alone. */
function rebuilt(
  surface: ContactSurface,
  gauge: ContactGauge,
  { feet, probe }: ContactReading,
) {
  const lifted = (point: { x: number; y: number; z: number }, by: number) => {
    const { height, slopeX, slopeY } = surface(point.x, point.y);
    near(point.z, height, 1e-12);
    const n = by / Math.hypot(1, slopeX, slopeY);
    return [point.x - n * slopeX, point.y - n * slopeY, point.z + n];
  };
  return {
    centres: feet.map((point, i) => lifted(point, gauge.feet[i].ballRadius)),
    tip: lifted(probe, gauge.probe.tipRadius),
  };
}

Deno.test("contactReading() finds the sag of spheres to 1e-12 mm at any place and rotation", () => {
  const rings = [[60, 6.35, 3000], [25, 2, 400], [10, 1.5, 50], [40, 0, 900]];
  for (const [circle, ball, radius] of rings) {
    const sphere = conicSurface(radius, 0);
    for (const form of ["concave", "convex"] as const) {
      const work = form === "concave" ? sphere : insideOut(sphere);
      const wanted = sagFromRadius(mm(radius), feet(circle, ball), form);
      for (const tip of [0, 1]) {
        for (
          const [x, y, footDegrees] of [[0, 0, 0], [6, 3, 77], [-9, 4, 180]]
        ) {
          const gauge = ringGauge(circle, ball, tip);
          const place = { x, y, footDegrees };
          near(contactSag(work, form, gauge, place), wanted, 1e-12);
        }
      }
    }
  }
});

Deno.test("contactReading() keeps every ball within 1e-12 mm of touching, and the gauge rigid, on any surface", () => {
  const worn = withDepartures(
    conicSurface(2400, -0.8),
    evenTerm(6, 1e-15),
    coma(2e-9, 40),
    trefoil(1e-9, 10),
    astigmatism(3e-7, 70),
    turnedEdge({ halfDiameter: 150, width: 12, depth: 0.007 }),
  );
  const equalFeet = ringGauge(50, 5, 2);
  const unequal: ContactGauge = {
    feet: [
      { x: 55, y: 2, ballRadius: 6 },
      { x: -20, y: 48, ballRadius: 4.5 },
      { x: -31, y: -39, ballRadius: 5.2, height: 5.9 },
    ],
    probe: { tipRadius: 1.5 },
  };
  for (const surface of [worn, insideOut(worn), toricSurface(900, 1400)]) {
    for (const gauge of [equalFeet, unequal]) {
      for (
        const [x, y, footDegrees] of [[0, 0, 0], [60, 70, 31], [-97, 5, 200]]
      ) {
        const reading = contactReading(surface, gauge, { x, y, footDegrees });
        ok(reading.residual < 1e-12, `${reading.residual}`);
        const { centres, tip } = rebuilt(surface, gauge, reading);
        for (const [i, j] of [[0, 1], [1, 2], [2, 0]]) {
          const [a, b] = [gauge.feet[i], gauge.feet[j]];
          const apart = Math.hypot(
            a.x - b.x,
            a.y - b.y,
            (a.height ?? a.ballRadius) - (b.height ?? b.ballRadius),
          );
          const found = Math.hypot(
            ...centres[i].map((value, axis) => value - centres[j][axis]),
          );
          near(found, apart, 2e-12);
        }
        // The probe's axis goes through (x, y) on the surface, along upright.
        const [up, at] = [reading.upright, [x, y, surface(x, y).height]];
        const along = tip.map((value, axis) => value - at[axis]);
        const travel = along.reduce((sum, v, axis) => sum + v * up[axis], 0);
        along.forEach((v, axis) => near(v, travel * up[axis], 2e-12));
        // Each ball centre stands as far along upright as the body says.
        const heights = centres.map((centre, i) =>
          centre.reduce((sum, v, axis) => sum + (v - at[axis]) * up[axis], 0) -
          (gauge.feet[i].height ?? gauge.feet[i].ballRadius)
        );
        for (const height of heights) near(height, heights[0], 2e-12);
      }
    }
  }
});

Deno.test("contactReading() agrees with the closed form for unequal balls on a sphere", () => {
  const [R, r] = [800, 40];
  const balls = [6, 5, 4.2];
  const gauge: ContactGauge = {
    feet: [0, 1, 2].map((i) => ({
      x: r * Math.cos(2 * Math.PI * i / 3),
      y: r * Math.sin(2 * Math.PI * i / 3),
      ballRadius: balls[i],
    })) as unknown as ContactGauge["feet"],
    probe: { tipRadius: 0 },
  };
  // In the gauge's axes the sphere's centre (X, Y, R + W) is R − bᵢ from each
  // ball centre (uᵢ, vᵢ, bᵢ); the balls' first harmonic gives X and Y.
  const lever = (axis: "x" | "y") =>
    gauge.feet.reduce((sum, foot) => sum + foot[axis] * foot.ballRadius, 0);
  const mean = (balls[0] + balls[1] + balls[2]) / 3;
  let [X, Y, W] = [0, 0, 0];
  for (let turn = 0; turn < 100; turn++) {
    X = -2 * W / (3 * r * r) * lever("x");
    Y = -2 * W / (3 * r * r) * lever("y");
    W = (2 * mean * W - r * r - X * X - Y * Y - W * W) / (2 * R);
  }
  const bottom = R + W - Math.sqrt(R * R - X * X - Y * Y);
  const { travel } = contactReading(conicSurface(R, 0), gauge, {
    x: 30,
    y: -20,
    footDegrees: 12,
  });
  near(travel, -bottom, 1e-12);
});

Deno.test("contactReading() shows the mean of both curvatures on toric work, whatever the rotation", () => {
  const [circle, ball] = [20, 2];
  const [long, short] = [1010, 990];
  const mean = (sagFromRadius(mm(long), feet(circle, ball), "concave") +
    sagFromRadius(mm(short), feet(circle, ball), "concave")) / 2;
  const gauge = ringGauge(circle, ball);
  for (const footDegrees of [0, 20, 45, 90]) {
    const { travel } = contactReading(toricSurface(long, short), gauge, {
      x: 0,
      y: 0,
      footDegrees,
    });
    // Second order in the difference: (1 %)² of 0.2 mm.
    near(travel, mean, 2e-5 * 1e-2);
  }
});

Deno.test("contactReading() with a probe off the circumcentre reads r² − d²", () => {
  const [R, d] = [3000, 1];
  const centred = ringGauge(60, 6.35, 6.35);
  const shifted = (angle: number): ContactGauge => ({
    ...centred,
    feet: centred.feet.map((foot) => ({
      ...foot,
      x: foot.x - d * Math.cos(angle),
      y: foot.y - d * Math.sin(angle),
    })) as unknown as ContactGauge["feet"],
  });
  const circle = Math.sqrt(60 ** 2 - d * d);
  for (const angle of [0, 1, 2.5]) {
    const sag = contactReading(conicSurface(R, 0), shifted(angle), {
      x: 20,
      y: 0,
      footDegrees: 0,
    }).travel;
    const folded = sagFromRadius(mm(R), feet(circle, 6.35), "concave");
    // The folded form leaves R short by d²/(2R), 3e-8 of the sag's 0.6 mm.
    near(sag, folded, folded * d * d / (2 * R * R) * 1.1);
  }
});

Deno.test("contactReading() along a stem that leans reads longer by 1/cos θ", () => {
  const lean = Math.tan(3 * Math.PI / 180);
  const upright = ringGauge(60, 3);
  const leaning = { ...upright, probe: { tipRadius: 0, leanX: lean } };
  const place = { x: 0, y: 0, footDegrees: 0 };
  const sphere = conicSurface(2520.774, 0);
  const ratio = contactReading(sphere, upright, place).travel /
    contactReading(sphere, leaning, place).travel;
  // The tip is carried 0.04 mm sideways, 2e-7 of r² each way.
  near(ratio, Math.cos(3 * Math.PI / 180), 1e-6);
});

Deno.test("contactReading() reads 0 on the flat it was zeroed on, balls unequal or not", () => {
  const gauge: ContactGauge = {
    feet: [
      { x: 50, y: 0, ballRadius: 5, height: 5.3 },
      { x: -25, y: 44, ballRadius: 4 },
      { x: -25, y: -40, ballRadius: 6 },
    ],
    probe: { tipRadius: 2 },
  };
  const place = { x: 17, y: -3, footDegrees: 50 };
  near(contactReading(flatSurface, gauge, place).travel, 0, 1e-13);
});

Deno.test("contactReading() refuses a foot past the surface, and a ball sharper than it", () => {
  const place = { x: 60, y: 0, footDegrees: 0 };
  throws(() => contactReading(conicSurface(100, 0), ringGauge(50, 2), place), {
    name: "RangeError",
    message:
      /^Cannot let a ball down on a surface as the surface must be there/,
  });
  throws(
    () =>
      contactReading(toricSurface(900, 4), ringGauge(3, 5), {
        x: 0,
        y: 0,
        footDegrees: 0,
      }),
    RangeError,
  );
  throws(() => ringGauge(0, 3), {
    name: "RangeError",
    message:
      "Cannot make a gauge as its foot circle must be above 0 mm: current value is 0 mm",
  });
  equal(ringGauge(60, 3).feet.length, 3);
});
