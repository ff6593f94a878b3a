import { ok, throws } from "node:assert/strict";
import { findRoot } from "sagbook/numerics/root.ts";

Deno.test("findRoot() finds roots in closed form to the last digit or two", () => {
  const cases: [(x: number) => number, number, number, number][] = [
    [(x) => x * x - 2, 0, 2, Math.SQRT2],
    [(x) => Math.exp(x) - 3, -5, 5, Math.log(3)],
    [(x) => Math.cos(x), 3, 0, Math.PI / 2],
    [(x) => x ** 3, -1, 2, 0],
    [(x) => Math.tanh(40 * x), -1, 2, 0],
    [(x) => x - 1, 1, 9, 1],
    [(x) => x - 1, -9, 1, 1],
    [(x) => 1 / (x - 0.3) + 1000, -1, 0.2999, 0.299],
  ];
  for (const [f, low, high, root] of cases) {
    const found = findRoot(f, low, high);
    ok(
      Math.abs(found - root) <= 1e-15 * Math.max(1, Math.abs(root)),
      `${found}`,
    );
  }
});

Deno.test("findRoot() stops within the stated tolerance and needs few evaluations", () => {
  let evaluations = 0;
  const found = findRoot(
    (x) => {
      evaluations++;
      return Math.atan(x - 0.7) + 1e-3 * (x - 0.7) ** 9;
    },
    -10,
    30,
    { tolerance: 1e-6 },
  );
  ok(Math.abs(found - 0.7) <= 1e-6);
  ok(evaluations < 40, `${evaluations}`);
});

Deno.test("findRoot() finds a jump of sign as well as a zero", () => {
  const found = findRoot((x) => x < 2.5 ? -1 : 1, 0, 10);
  ok(Math.abs(found - 2.5) < 1e-14);
});

Deno.test("findRoot() refuses a bracket without a change, values that are no numbers, and a search without end", () => {
  throws(() => findRoot((x) => x * x + 1, -1, 2), {
    name: "RangeError",
    message:
      "Cannot find a root as the function must change sign between -1 and 2: current value is 2 and 5",
  });
  throws(() => findRoot((x) => x, -Infinity, 2), {
    name: "RangeError",
    message:
      "Cannot find a root as both ends of the bracket must be finite: current value is -Infinity to 2",
  });
  throws(() => findRoot(Math.sqrt, -1, 2), {
    name: "RangeError",
    message:
      "Cannot find a root as the function must give a number everywhere in the bracket: current value at -1 is NaN",
  });
  throws(() => findRoot((x) => x - 0.1, -1, 2e9, { maximumEvaluations: 2 }), {
    name: "RangeError",
    message:
      "Cannot find a root as the search must end within 2 evaluations: current value is 2000000000",
  });
});

Deno.test("findRoot() stays in its bracket and arrives for functions that mislead secants", () => {
  const nasty: ((x: number) => number)[] = [
    (x) => x ** 9,
    (x) => Math.atan(1e6 * x),
    (x) => Math.sign(x) * Math.sqrt(Math.abs(x)),
    (x) => x < 0 ? -1e-9 : 1e9 * x + 1e-9,
    (x) => Math.expm1(30 * x),
    (x) => x * Math.exp(-x * x * 20) + 1e-12 * x,
    (x) => Math.sin(0.7 * x) + x ** 3,
  ];
  for (const f of nasty) {
    for (const [low, high] of [[-1, 1.7], [-0.9, 3], [-4, 0.3]]) {
      const root = findRoot(
        (x) => {
          ok(x >= low && x <= high, `${x} lies outside`);
          return f(x);
        },
        low,
        high,
        { tolerance: 1e-12 },
      );
      ok(Math.abs(root) < 1e-9 || Math.abs(f(root)) < 1e-12, `${f}: ${root}`);
    }
  }
});
