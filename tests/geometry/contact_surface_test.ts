import { equal, ok, throws } from "node:assert/strict";
import {
  astigmatism,
  coma,
  deepCentre,
  evenTerm,
  trefoil,
  turnedEdge,
} from "sagbook/geometry/contact_departures.ts";
import {
  conicSurface,
  insideOut,
  toricSurface,
  withDepartures,
} from "sagbook/geometry/contact_surface.ts";

const surfaces = {
  sphere: conicSurface(500, 0),
  hyperboloid: conicSurface(500, -1.7),
  oblate: conicSurface(500, 0.6),
  dome: insideOut(conicSurface(500, -1)),
  toric: toricSurface(500, 800),
  even: evenTerm(6, 1e-11),
  astigmatism: astigmatism(1e-4, 25),
  coma: coma(1e-6, 110),
  trefoil: trefoil(1e-6, -40),
  edge: turnedEdge({ halfDiameter: 100, width: 40, depth: 0.5 }),
  corner: turnedEdge({ halfDiameter: 100, width: 40, depth: 0.5, power: 2 }),
  hole: deepCentre({ radius: 70, depth: 0.3 }),
  sum: withDepartures(conicSurface(500, 0), coma(1e-6), trefoil(1e-6, 3)),
};

Deno.test("every surface has the slopes of its own height, by central differences", () => {
  const h = 1e-3;
  for (const [name, surface] of Object.entries(surfaces)) {
    for (const [x, y] of [[0, 0], [31, -12], [-50, 60], [3, 88]]) {
      const { slopeX, slopeY } = surface(x, y);
      const alongX = (surface(x + h, y).height - surface(x - h, y).height) /
        (2 * h);
      const alongY = (surface(x, y + h).height - surface(x, y - h).height) /
        (2 * h);
      ok(Math.abs(alongX - slopeX) < 1e-9, `${name} ${x} ${y}`);
      ok(Math.abs(alongY - slopeY) < 1e-9, `${name} ${x} ${y}`);
    }
  }
});

Deno.test("toricSurface() is a sphere when its radii are equal", () => {
  for (const [x, y] of [[10, 20], [-70, 5]]) {
    const [toric, sphere] = [toricSurface(500, 500), conicSurface(500, 0)]
      .map((surface) => surface(x, y));
    ok(Math.abs(toric.height - sphere.height) < 1e-14);
    ok(Math.abs(toric.slopeX - sphere.slopeX) < 1e-16);
    ok(Math.abs(toric.slopeY - sphere.slopeY) < 1e-16);
  }
});

Deno.test("turnedEdge() begins with continuous curvature, or slope only, as asked", () => {
  const bend = (power: 2 | 3) => {
    const edge = turnedEdge({ halfDiameter: 100, width: 20, depth: 1, power });
    return edge(80 + 1e-4, 0).slopeX / 1e-4;
  };
  ok(Math.abs(bend(3)) < 1e-6);
  ok(Math.abs(bend(2) + 2 / 400) < 1e-6);
  equal(
    turnedEdge({ halfDiameter: 100, width: 20, depth: 1 })(0, 100).height,
    -1,
  );
});

Deno.test("surfaces refuse shapes that cannot be", () => {
  throws(() => conicSurface(0, 0), {
    name: "RangeError",
    message:
      "Cannot make a conic as its vertex radius must be above 0 mm and its constant finite: current value is 0 mm and 0",
  });
  throws(() => toricSurface(100, -5), {
    name: "RangeError",
    message:
      "Cannot make a toric surface as its radii must be finite and above 0 mm: current value is -5 mm",
  });
  throws(() => evenTerm(5, 1), {
    name: "RangeError",
    message:
      "Cannot make a term of revolution as its power must be even and at least 2: current value is 5",
  });
  throws(() => deepCentre({ radius: 0, depth: 1 }), {
    name: "RangeError",
    message:
      "Cannot make a hole as its radius must be above 0 mm: current value is 0 mm",
  });
  throws(() => turnedEdge({ halfDiameter: 100, width: 0, depth: 1 }), {
    name: "RangeError",
    message:
      "Cannot make a turned edge as its width must be above 0 mm and at most the half diameter of 100 mm: current value is 0 mm",
  });
});
