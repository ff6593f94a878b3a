import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { budgetOf, effectiveDofOf } from "sagbook/uncertainty/budget.ts";
import {
  type Distribution,
  dofFromDoubt,
  dofOf,
  standardDeviationOf,
  type UncertainInput,
} from "sagbook/uncertainty/distribution.ts";
import { secondOrderOf } from "sagbook/uncertainty/second_order.ts";
import { toleranceOf } from "sagbook/uncertainty/numerical_tolerance.ts";

const input = (
  value: number,
  distribution: Distribution,
  more: Partial<UncertainInput> = {},
): UncertainInput => ({ source: "x", unit: "", value, distribution, ...more });
const normal = (value: number, standardDeviation: number, more = {}) =>
  input(value, { kind: "normal", standardDeviation }, more);
const near = (found: number, wanted: number, relative = 1e-9) =>
  ok(
    Math.abs(found - wanted) <= relative * Math.max(1e-300, Math.abs(wanted)),
    `${found} is not ${wanted}`,
  );

Deno.test("standardDeviationOf() divides half widths as the GUM does", () => {
  near(
    standardDeviationOf({ kind: "rectangular", halfWidth: 3 }),
    Math.sqrt(3),
  );
  near(standardDeviationOf({ kind: "triangular", halfWidth: 6 }), Math.sqrt(6));
  near(standardDeviationOf({ kind: "arcsine", halfWidth: 2 }), Math.SQRT2);
  equal(standardDeviationOf({ kind: "student", scale: 2, dof: 3 }), 2);
  throws(() => standardDeviationOf({ kind: "normal", standardDeviation: -1 }), {
    name: "RangeError",
    message:
      "Cannot find a standard uncertainty as the width of a normal distribution must be finite and at least 0: current value is -1",
  });
  throws(() => standardDeviationOf({ kind: "student", scale: 1, dof: 0 }), {
    name: "RangeError",
    message:
      "Cannot find a standard uncertainty as the degrees of freedom must be above 0: current value is 0",
  });
});

Deno.test("dofFromDoubt() and dofOf() follow formula (G.3)", () => {
  equal(dofFromDoubt(0.25), 8);
  equal(dofFromDoubt(0.5), 2);
  equal(dofOf(normal(0, 1)), Infinity);
  equal(dofOf(normal(0, 1, { dof: 50 })), 50);
  throws(() => dofFromDoubt(0), RangeError);
});

Deno.test("budgetOf() finds sensitivities of smooth models to 1e-9", () => {
  const model = ([a, b, c]: Float64Array) => Math.exp(a) * Math.sin(b) / c;
  const at = [0.7, 1.1, 40];
  const { lines, value } = budgetOf(
    model,
    at.map((x) => normal(x, 0.01 * x)),
  );
  const [a, b, c] = at;
  near(value, Math.exp(a) * Math.sin(b) / c);
  near(lines[0].sensitivity, Math.exp(a) * Math.sin(b) / c);
  near(lines[1].sensitivity, Math.exp(a) * Math.cos(b) / c);
  near(lines[2].sensitivity, -Math.exp(a) * Math.sin(b) / (c * c));
  near(lines.reduce((sum, line) => sum + line.share, 0), 1);
});

Deno.test("secondOrderOf() finds the terms of polynomials in closed form", () => {
  const [u, v] = [0.3, 0.2];
  // x²y: fx = 2xy, fy = x², fxx = 2y, fxy = 2x, fxxy = fxyx = 2.
  const product = ([x, y]: Float64Array) => x * x * y;
  const inputs = [normal(1, u), normal(2, v)];
  const first = 16 * u * u + v * v;
  near(budgetOf(product, inputs).standardUncertainty, Math.sqrt(first));
  const second = 0.5 * 16 * u ** 4 + 4 * u * u * v * v + // ½ Σ f_ij²
    1 * 2 * v * v * u * u; // f_y f_yxx u_y² u_x²
  const found = secondOrderOf(product, inputs);
  near(found.bias, 2 * u * u);
  near(found.standardUncertainty, Math.sqrt(first + second));
  // x³ alone: fx fxxx u⁴ + ½ fxx² u⁴.
  const cubic = secondOrderOf(([x]) => x ** 3, [normal(1, u)]);
  near(cubic.standardUncertainty, Math.sqrt(9 * u * u + 36 * u ** 4), 1e-8);
});

Deno.test("budgetOf() takes correlation into account, and the least degrees of freedom with it", () => {
  const inputs = [normal(1, 3, { dof: 9 }), normal(1, 4, { dof: 5 })];
  const sum = (correlation: number) =>
    budgetOf(([x, y]) => x + y, inputs, {
      correlation: [[1, correlation], [correlation, 1]],
    });
  near(sum(1).standardUncertainty, 7);
  near(sum(-1).standardUncertainty, 1, 1e-8);
  near(sum(0).standardUncertainty, 5);
  equal(sum(1).dof, 5);
  throws(() => budgetOf(([x]) => x, [normal(0, 1)], { correlation: [] }), {
    name: "TypeError",
    message:
      "Cannot draw up a budget as the correlation matrix must be 1 by 1: current value is 0 by 0",
  });
});

Deno.test("budgetOf() keeps what is common by id, with its sign, and the rest as own", () => {
  const { estimate } = budgetOf(([x, y, z]) => x - 2 * y + z, [
    normal(5, 1, { common: "flat" }),
    normal(1, 1, { common: "ring" }),
    normal(0, 3, { dof: 4 }),
  ]);
  equal(estimate.value, 3);
  near(estimate.common.flat, 1);
  near(estimate.common.ring, -2);
  near(estimate.own, 3);
  near(estimate.dof, 4);
});

Deno.test("effectiveDofOf() is between the least and the sum, and infinite for what is known", () => {
  equal(effectiveDofOf([{ contribution: 2, dof: Infinity }]), Infinity);
  near(effectiveDofOf([{ contribution: 2, dof: 7 }]), 7);
  const mixed = effectiveDofOf([
    { contribution: 2, dof: 7 },
    { contribution: -1, dof: 3 },
  ]);
  ok(mixed > 3 && mixed < 10);
});

Deno.test("budgetOf() refuses a result that is not finite", () => {
  throws(() => budgetOf(([x]) => 1 / x, [normal(0, 1)]), {
    name: "RangeError",
    message:
      "Cannot draw up a budget as the result must be finite at the inputs' values: current value is Infinity",
  });
});

Deno.test("toleranceOf() follows the examples of JCGM 101, 7.9.2", () => {
  // u = 0.00035 with two figures: 35 × 10⁻⁵, δ = ½ × 10⁻⁵; with one: ½ × 10⁻⁴.
  equal(toleranceOf(0.00035, 2), 0.000005);
  equal(toleranceOf(0.00035, 1), 0.00005);
  // u = 2 K with one figure: 2 × 10⁰, δ = ½ × 10⁰.
  equal(toleranceOf(2, 1), 0.5);
  equal(toleranceOf(0.0996, 2), 0.005); // kept as 0.10 = 10 × 10⁻²
  deepEqual([1e4, 1e-4].map((u) => toleranceOf(u, 2)), [500, 5e-6]);
  throws(() => toleranceOf(0, 2), RangeError);
});
