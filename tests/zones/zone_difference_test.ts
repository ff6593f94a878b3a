import { deepEqual, equal } from "node:assert/strict";
import { contrastOf, intervalsOf } from "sagbook/zones/zone_difference.ts";
import { near } from "./_session.ts";

const replicated = {
  mean: 0.01,
  standardError: 0.001,
  dof: 4,
  variance: 5e-6,
  replicates: 5,
};

/** Upper tail of Student's t with 4 degrees of freedom, in closed form. */
function tailOf4(t: number): number {
  const square = t * t / (1 + t * t / 4);
  return 0.5 - 3 / 8 * Math.sqrt(square) * (1 - square / 12);
}

Deno.test("intervalsOf() is Student's interval without a display step", () => {
  const found = intervalsOf(replicated, 0, 3);
  equal(found.rounding, 0);
  const tails = [
    [found.interval90, 0.05],
    [found.interval95, 0.025],
    [found.simultaneous95, 0.025 / 3],
  ] as const;
  for (const [interval, tail] of tails) {
    near(tailOf4((interval!.high - 0.01) / 0.001), tail, 1e-9);
    near(interval!.low, 0.02 - interval!.high, 1e-15);
  }
});

Deno.test("intervalsOf() adds all of the rounding in quadrature when nothing scatters", () => {
  const still = { ...replicated, standardError: 0, variance: 0 };
  const { interval95, rounding } = intervalsOf(still, 0.001, 1);
  equal(rounding, 1);
  near(interval95!.high - 0.01, 0.001 * (1 - Math.sqrt(0.05)), 1e-12);
});

Deno.test("intervalsOf() keeps the rounding that the places keep, however the difference scatters", () => {
  const contrast = { length: Math.SQRT2, rounding: 0.5, progress: 0 };
  const { interval95, rounding } = intervalsOf(replicated, 0.0001, 1, contrast);
  equal(rounding, 0.5);
  const hidden = 0.5 * 0.0001 * (1 - Math.sqrt(0.05));
  near(interval95!.high - 0.01, Math.hypot(2.7764e-3, hidden), 1e-7);
});

Deno.test("intervalsOf() adds what is not known of the drift between the places", () => {
  const drift = { standardError: 0.002, dof: Infinity, rounding: 1 };
  const contrast = { length: Math.SQRT2, rounding: 0, progress: -0.5 };
  const { interval95 } = intervalsOf(replicated, 0, 1, {
    ...contrast,
    drift: drift as Parameters<typeof contrastOf>[3] & object,
  });
  // Half the drift, with the normal factor 1.95996.
  near(interval95!.high - 0.01, Math.hypot(2.7764e-3, 1.95996e-3), 1e-7);
});

Deno.test("intervalsOf() gives no interval without a degree of freedom", () => {
  const single = { mean: 0.01, dof: 0, replicates: 1 };
  deepEqual(intervalsOf(single, 0.001, 3), { rounding: 1 });
});

Deno.test("contrastOf() weighs rounding and progress by place", () => {
  const { length, rounding, progress, drift } = contrastOf(
    [2, -1, -1],
    [0, 1, 1],
    [0.5, 0.25, 0.75],
    undefined,
  );
  // By hand: 4 + 1 + 1 = 6; (1 + 1) / 6; 1 - 0.25 - 0.75 = 0.
  near(length, Math.sqrt(6), 1e-15);
  near(rounding, Math.sqrt(1 / 3), 1e-15);
  equal(progress, 0);
  equal(drift, undefined);
});
