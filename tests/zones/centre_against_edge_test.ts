import { deepEqual } from "node:assert/strict";
import { centreAgainstEdge } from "sagbook/zones/centre_against_edge.ts";
import type { ZoneDifference } from "sagbook/zones/zone_difference.ts";

const pair = (
  first: number,
  second: number,
  mean: number,
  half = 1,
): ZoneDifference => ({
  first,
  second,
  mean,
  sets: 5,
  dof: 4,
  rounding: 0,
  interval95: { low: mean - half, high: mean + half },
});

Deno.test("centreAgainstEdge() takes the sign of centre less edge only where it is sure and tells the shape", () => {
  const told = (edge: number, half = 1, middle = 0) =>
    centreAgainstEdge([
      pair(0, 1, middle),
      pair(0, 2, edge, half),
      pair(1, 2, edge - middle),
    ], 3);
  deepEqual(told(6), { difference: 6, farthest: 2 });
  deepEqual(told(-6), { difference: -6, farthest: 2 });
  // Not clear of 0; less than half of what the middle departs.
  deepEqual(told(6, 7), { farthest: 2 });
  deepEqual(told(1.5, 1, 8), { farthest: 1 });
  deepEqual(told(4.5, 1, 8), { difference: 4.5, farthest: 2 });
});

Deno.test("centreAgainstEdge() knows no difference of places that no set holds together, nor of one set", () => {
  deepEqual(centreAgainstEdge([pair(0, 1, 8)], 3), { farthest: 1 });
  deepEqual(centreAgainstEdge([pair(1, 2, 8)], 3), { farthest: 2 });
  deepEqual(centreAgainstEdge([], 1), { farthest: 0 });
  const { interval95: _, ...alone } = pair(0, 1, 8);
  deepEqual(centreAgainstEdge([alone], 2), { farthest: 1 });
});
