/**
 * Which variances a design can tell apart, whatever the readings are.
 *
 * @module
 */
import type { CodedReadings, FactorCodes } from "./_factor_codes.ts";
import type { ScatterSource } from "./source.ts";

/** A variance that stands for others as well. */
export interface Stand {
  /** The source that is fitted. */
  readonly source: ScatterSource;
  /**
   * Sources it cannot be told from, with how many times their variance is in
   * the fitted one.
   */
  readonly holds: ReadonlyMap<ScatterSource, number>;
}

/** What a design can and cannot tell apart. */
export interface Separability {
  /** Factors that are fitted, in order of preference; `repeat` is always. */
  readonly fitted: readonly FactorCodes[];
  /** Every fitted source with what else is in it. */
  readonly stands: readonly Stand[];
  /** Factors whose shifts the fixed part takes up altogether. */
  readonly hidden: readonly ScatterSource[];
  /** Degrees of freedom left by the fixed part. */
  readonly dof: number;
}

/** Who stands in when several cannot be told apart: the first one named. */
const PREFERENCE: readonly ScatterSource[] = [
  "repeat",
  "zeroing",
  "operator",
  "session",
  "diameter",
  "rotation",
  "zone × zeroing",
];

/** How often levels of two factors meet within each cell of the fixed part. */
function countsByCell(
  codes: Int32Array,
  cells: Int32Array,
  levels: number,
  cellCount: number,
): Float64Array {
  const counts = new Float64Array(levels * cellCount);
  for (let i = 0; i < codes.length; i++) {
    counts[codes[i] * cellCount + cells[i]]++;
  }
  return counts;
}

/**
 * Products of the covariance patterns, `tr(P Gᵢ P Gⱼ)` with `Gᵢ = Zᵢ Zᵢ'` and
 * P the projection that takes the means of the fixed cells out; the residual
 * comes first. Variances are estimable by quadratic forms exactly where this
 * matrix has full rank.
 */
function patternProducts(coded: CodedReadings): number[][] {
  const { cells, cellCount, factors } = coded;
  const n = cells.length;
  const perCell = new Float64Array(cellCount);
  for (const cell of cells) perCell[cell]++;
  const tables = factors.map(({ codes, names }) =>
    countsByCell(codes, cells, names.length, cellCount)
  );
  const size = factors.length + 1;
  const products = Array.from({ length: size }, () => new Array(size).fill(0));
  products[0][0] = n - cellCount;
  factors.forEach(({ names }, k) => {
    const table = tables[k];
    let trace = n;
    for (let a = 0; a < names.length; a++) {
      for (let c = 0; c < cellCount; c++) {
        trace -= table[a * cellCount + c] ** 2 / perCell[c];
      }
    }
    products[0][k + 1] = products[k + 1][0] = trace;
  });
  for (let i = 0; i < factors.length; i++) {
    for (let j = i; j < factors.length; j++) {
      products[i + 1][j + 1] = products[j + 1][i + 1] = pairProduct(
        factors[i],
        factors[j],
        [tables[i], tables[j]],
        perCell,
      );
    }
  }
  return products;
}

/** Squared norm of `Zᵢ' P Zⱼ`, level by level of the first factor. */
function pairProduct(
  first: FactorCodes,
  second: FactorCodes,
  [left, right]: readonly [Float64Array, Float64Array],
  perCell: Float64Array,
): number {
  const cells = perCell.length;
  const width = second.names.length;
  // Products of the fixed cells as the second factor sees them.
  const seen = Array.from({ length: cells }, () => new Float64Array(cells));
  for (let b = 0; b < width; b++) {
    for (let c = 0; c < cells; c++) {
      const count = right[b * cells + c];
      if (count === 0) continue;
      for (let d = 0; d < cells; d++) {
        seen[c][d] += count * right[b * cells + d];
      }
    }
  }
  const members: number[][] = first.names.map(() => []);
  first.codes.forEach((code, index) => members[code].push(index));
  let sum = 0;
  for (let a = 0; a < members.length; a++) {
    const met = new Map<number, number>();
    for (const index of members[a]) {
      const b = second.codes[index];
      met.set(b, (met.get(b) ?? 0) + 1);
    }
    for (const count of met.values()) sum += count * count;
    for (let c = 0; c < cells; c++) {
      const share = left[a * cells + c] / perCell[c];
      if (share === 0) continue;
      for (const [b, count] of met) {
        sum -= 2 * share * count * right[b * cells + c];
      }
      for (let d = 0; d < cells; d++) {
        sum += share * seen[c][d] * left[a * cells + d] / perCell[d];
      }
    }
  }
  return sum;
}

/** A coefficient or a remainder this small, relative, is rounding. */
const ROUNDING = 1e-9;

/**
 * Finds which sources a design can tell apart.
 *
 * Sources are taken up in order of preference; one whose covariance pattern is
 * a combination of those already taken is left out, and everything in that
 * combination is confounded with it.
 */
export function separate(coded: CodedReadings): Separability {
  const { factors, cells, cellCount } = coded;
  const dof = cells.length - cellCount;
  const products = patternProducts(coded);
  const place = (source: ScatterSource): number =>
    source === "repeat"
      ? 0
      : factors.findIndex((factor) => factor.source === source) + 1;
  const hidden: ScatterSource[] = [];
  const taken: number[] = [];
  const holds = new Map<number, Map<ScatterSource, number>>();
  const rows: number[][] = [];
  for (const source of PREFERENCE) {
    const index = place(source);
    if (source !== "repeat" && index === 0) continue;
    const own = products[index][index];
    if (own <= ROUNDING * cells.length) {
      if (source !== "repeat") hidden.push(source);
      continue;
    }
    const row: number[] = [];
    let rest = own;
    taken.forEach((other, k) => {
      let value = products[index][other];
      for (let m = 0; m < k; m++) value -= row[m] * rows[k][m];
      row.push(value / rows[k][k]);
      rest -= row[k] * row[k];
    });
    if (rest > ROUNDING * own) {
      row.push(Math.sqrt(rest));
      taken.push(index);
      rows.push(row);
      holds.set(index, new Map());
      continue;
    }
    // The pattern of this source is a sum of multiples of those taken.
    const parts = new Array(taken.length).fill(0);
    for (let k = taken.length - 1; k >= 0; k--) {
      let value = row[k];
      for (let m = k + 1; m < taken.length; m++) value -= rows[m][k] * parts[m];
      parts[k] = value / rows[k][k];
    }
    parts.forEach((part, k) => {
      if (Math.abs(part) > 1e-6) holds.get(taken[k])!.set(source, part);
    });
  }
  const source = (index: number): ScatterSource =>
    index === 0 ? "repeat" : factors[index - 1].source;
  return {
    fitted: taken.filter((index) => index > 0).map((index) =>
      factors[index - 1]
    ),
    stands: taken.map((index) => ({
      source: source(index),
      holds: holds.get(index)!,
    })),
    hidden,
    dof,
  };
}
