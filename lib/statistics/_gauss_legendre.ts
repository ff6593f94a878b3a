/**
 * Gauss–Legendre quadrature on panels.
 *
 * @module
 */

/** Nodes of one rule; each panel of an integral uses all of them. */
const ORDER = 32;

let rule: { nodes: Float64Array; weights: Float64Array } | undefined;

/** Nodes and weights on [-1, 1] by Newton's method on the Legendre polynomial. */
function nodesAndWeights(): { nodes: Float64Array; weights: Float64Array } {
  if (rule) return rule;
  const nodes = new Float64Array(ORDER);
  const weights = new Float64Array(ORDER);
  for (let i = 0; i < ORDER; i++) {
    let x = Math.cos(Math.PI * (i + 0.75) / (ORDER + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step++) {
      let [previous, value] = [1, x];
      for (let n = 2; n <= ORDER; n++) {
        [previous, value] = [
          value,
          ((2 * n - 1) * x * value - (n - 1) * previous) / n,
        ];
      }
      slope = ORDER * (x * value - previous) / (x * x - 1);
      const change = value / slope;
      x -= change;
      if (Math.abs(change) < 1e-16) break;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return rule = { nodes, weights };
}

/**
 * Integrates a smooth function over consecutive panels between ascending
 * break points, exactly for polynomials up to degree 63 on each panel.
 */
export function integrate(
  integrand: (x: number) => number,
  breaks: readonly number[],
): number {
  const { nodes, weights } = nodesAndWeights();
  let total = 0;
  for (let panel = 1; panel < breaks.length; panel++) {
    const half = (breaks[panel] - breaks[panel - 1]) / 2;
    if (!(half > 0)) continue;
    const middle = breaks[panel - 1] + half;
    let sum = 0;
    for (let i = 0; i < ORDER; i++) {
      sum += weights[i] * integrand(middle + half * nodes[i]);
    }
    total += sum * half;
  }
  return total;
}
