/**
 * Which variances a design can tell apart, and a first guess at them.
 *
 * @module
 */
import type { MixedDesign } from "./_mixed_design.ts";

/** Below this share of its own size what is left of a source is nothing. */
const NEGLIGIBLE = 1e-9;

/** Which factors can be estimated and what stands in for the others. */
export interface Identifiability {
  /** Positions of the factors that can be estimated. */
  readonly kept: readonly number[];
  /** For each other factor, the sources it cannot be told from. */
  readonly dropped: ReadonlyMap<number, readonly string[]>;
  /** First guess at the ratios of the kept factors to the residual. */
  readonly guess: readonly number[];
}

/**
 * Compares what each source adds to the expected squares of the residuals: the
 * matrices M Z Z' M, M taking off the fixed part, and M itself for the residual.
 * Sources whose matrices depend linearly cannot be told apart by any estimator
 * of second order. Solving their normal equations gives a first guess.
 *
 * @see C. R. Rao (1971), Journal of Multivariate Analysis 1, 445-456 (MINQUE).
 */
export function identify(design: MixedDesign): Identifiability {
  const { factors, residualSums, observations, fixed } = design;
  const count = factors.length;
  const products = gram(design);
  const rank = fixed.basis.length;
  const squares = factors.map((factor, k) => {
    const from = design.offsets[k];
    let sum = 0;
    for (let i = 0; i < factor.labels.length; i++) {
      sum += residualSums[from + i] ** 2;
    }
    return sum;
  });
  squares.push(design.residualSquares);
  // The residual first: it stands in for a factor with one reading a level.
  const sequence = [count, ...factors.keys()];
  const accepted: number[] = [];
  const dropped = new Map<number, readonly string[]>();
  const nameOf = (k: number) => k === count ? "residual" : factors[k].name;
  for (const k of sequence) {
    const whole = k === count ? observations - rank : wholeOf(design, k);
    if (products[k][k] <= NEGLIGIBLE * whole) {
      dropped.set(k, ["the fixed part"]);
      continue;
    }
    const weights = solveSymmetric(
      accepted.map((i) => accepted.map((j) => products[i][j])),
      accepted.map((i) => products[i][k]),
    );
    let left = products[k][k];
    accepted.forEach((i, at) => left -= weights[at] * products[i][k]);
    if (left <= NEGLIGIBLE * products[k][k]) {
      const size = Math.sqrt(products[k][k]);
      const involved = accepted.filter((i, at) =>
        Math.abs(weights[at]) * Math.sqrt(products[i][i]) > 1e-4 * size
      );
      dropped.set(k, involved.map(nameOf));
    } else accepted.push(k);
  }
  const kept = accepted.slice(1).sort((a, b) => a - b);
  const solved = solveSymmetric(
    accepted.map((i) => accepted.map((j) => products[i][j])),
    accepted.map((i) => squares[i]),
  );
  const floor = 0.01 * design.residualSquares /
    Math.max(1, observations - rank);
  const residual = Math.max(solved[0] ?? 0, floor);
  const guess = kept.map((k) => {
    const variance = solved[accepted.indexOf(k)];
    const perLevel = observations / factors[k].labels.length;
    const ratio = variance / residual;
    return Math.min(Math.max(ratio, 0.05 / perLevel), 1e6);
  });
  return { kept, dropped, guess };
}

/** Σ over levels of squared numbers of readings: tr((ZZ')²). */
function wholeOf(design: MixedDesign, k: number): number {
  const from = design.offsets[k];
  const to = from + design.factors[k].labels.length;
  let sum = 0;
  for (let node = from; node < to; node++) sum += design.readings[node] ** 2;
  return sum;
}

/** tr(M V_k M V_l) for each two sources, the residual last. */
function gram(design: MixedDesign): number[][] {
  const { factors, offsets, readings, meetings, basisSums, fixed } = design;
  const rank = fixed.basis.length;
  const count = factors.length;
  const owner = new Int32Array(design.nodes);
  factors.forEach((factor, k) =>
    owner.fill(k, offsets[k], offsets[k] + factor.labels.length)
  );
  const products = Array.from(
    { length: count + 1 },
    () => new Array<number>(count + 1).fill(0),
  );
  const inner = (a: number, b: number) => {
    let sum = 0;
    for (let c = 0; c < rank; c++) {
      sum += basisSums[a * rank + c] * basisSums[b * rank + c];
    }
    return sum;
  };
  for (let node = 0; node < design.nodes; node++) {
    const k = owner[node];
    const own = readings[node];
    const fixedShare = inner(node, node);
    products[k][k] += own * own - 2 * own * fixedShare;
    products[k][count] += own - fixedShare;
    for (let e = meetings.start[node]; e < meetings.start[node + 1]; e++) {
      const met = meetings.count[e];
      products[k][owner[meetings.node[e]]] += met * met -
        2 * met * inner(node, meetings.node[e]);
    }
  }
  const outer = factors.map((factor, k) => {
    const sums = Array.from({ length: rank }, () => new Array(rank).fill(0));
    for (let i = 0; i < factor.labels.length; i++) {
      const at = (offsets[k] + i) * rank;
      for (let c = 0; c < rank; c++) {
        for (let d = 0; d < rank; d++) {
          sums[c][d] += basisSums[at + c] * basisSums[at + d];
        }
      }
    }
    return sums;
  });
  for (let k = 0; k < count; k++) {
    for (let l = k; l < count; l++) {
      for (let c = 0; c < rank; c++) {
        for (let d = 0; d < rank; d++) {
          products[k][l] += outer[k][c][d] * outer[l][c][d];
        }
      }
      products[l][k] = products[k][l];
    }
    products[count][k] = products[k][count];
  }
  products[count][count] = design.observations - rank;
  return products;
}

/** Solves a small symmetric positive definite system, scaled. */
function solveSymmetric(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): number[] {
  const size = matrix.length;
  const scale = matrix.map((row, i) => Math.sqrt(row[i]));
  const a = matrix.map((row, i) =>
    row.map((x, j) => x / (scale[i] * scale[j]))
  );
  const x = right.map((value, i) => value / scale[i]);
  for (let j = 0; j < size; j++) {
    for (let i = j + 1; i < size; i++) {
      const factor = a[i][j] / a[j][j];
      for (let k = j; k < size; k++) a[i][k] -= factor * a[j][k];
      x[i] -= factor * x[j];
    }
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i] -= a[i][k] * x[k];
    x[i] /= a[i][i];
  }
  return x.map((value, i) => value / scale[i]);
}
