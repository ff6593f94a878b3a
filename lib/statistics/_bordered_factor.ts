/**
 * Cholesky factor of a mixed model's equations, and what follows from it.
 *
 * The equations are those of Henderson, scaled so that a variance of 0 is
 * nothing special: I + Λ Z'Z Λ bordered by the fixed columns and, last, by the
 * readings.
 *
 * @module
 */
import { reduceDense } from "./_dense_reduction.ts";
import type { BorderedPattern } from "./_bordered_pattern.ts";
import { factorInPlace, solveBackward, solveForward } from "./_dense_factor.ts";
import type { MixedDesign } from "./_mixed_design.ts";

/** A factor for one set of variances. */
export class BorderedFactor {
  /** Rows of the border: fixed columns, then the readings. */
  readonly border: number;
  /** Size of the dense part: levels left over, then the border. */
  readonly denseSize: number;
  readonly #design: MixedDesign;
  readonly pattern: BorderedPattern;
  readonly values: Float64Array;
  readonly diagonal: Float64Array;
  readonly borderValues: Float64Array;
  readonly dense: Float64Array;
  readonly #scale: Float64Array;
  readonly #spot: Int32Array;
  readonly #next: Int32Array;
  readonly #head: Int32Array;
  readonly #link: Int32Array;

  constructor(design: MixedDesign, pattern: BorderedPattern) {
    this.#design = design;
    this.pattern = pattern;
    this.border = design.fixed.basis.length + 1;
    this.denseSize = pattern.tail + this.border;
    this.values = new Float64Array(pattern.row.length);
    this.diagonal = new Float64Array(pattern.sparse);
    this.borderValues = new Float64Array(pattern.sparse * this.border);
    this.dense = new Float64Array(this.denseSize * this.denseSize);
    this.#scale = new Float64Array(design.nodes);
    this.#spot = new Int32Array(design.nodes);
    this.#next = new Int32Array(pattern.sparse);
    this.#head = new Int32Array(pattern.sparse);
    this.#link = new Int32Array(pattern.sparse);
  }

  /**
   * Factors the equations for given standard deviations of the factors, each
   * relative to the residual one.
   *
   * @returns Whether all went well; the readings' row cannot vanish.
   */
  factor(ratios: ArrayLike<number>): boolean {
    this.#fill(ratios);
    const { sparse, start, row } = this.pattern;
    const values = this.values;
    const diagonal = this.diagonal;
    const borders = this.borderValues;
    const border = this.border;
    const spot = this.#spot;
    const next = this.#next;
    const link = this.#link;
    const head = this.#head.fill(-1);
    for (let j = 0; j < sparse; j++) {
      const [begin, end] = [start[j], start[j + 1]];
      for (let e = begin; e < end; e++) spot[row[e]] = e;
      let pivot = diagonal[j];
      const mine = j * border;
      for (let k = head[j]; k >= 0;) {
        const following = link[k];
        const at = next[k];
        const factor = values[at];
        pivot -= factor * factor;
        const last = start[k + 1];
        for (let e = at + 1; e < last; e++) {
          values[spot[row[e]]] -= factor * values[e];
        }
        const other = k * border;
        for (let b = 0; b < border; b++) {
          borders[mine + b] -= factor * borders[other + b];
        }
        this.#enqueue(k, at + 1);
        k = following;
      }
      if (!(pivot > 0)) return false;
      const root = Math.sqrt(pivot);
      diagonal[j] = root;
      for (let e = begin; e < end; e++) values[e] /= root;
      for (let b = 0; b < border; b++) borders[mine + b] /= root;
      this.#enqueue(j, begin);
    }
    reduceDense(this);
    return factorInPlace(this.dense, this.denseSize);
  }

  /** Lists a column under the row of its next entry among sparse rows. */
  #enqueue(column: number, entry: number): void {
    const { start, row, sparse } = this.pattern;
    if (entry >= start[column + 1]) return;
    const target = row[entry];
    if (target >= sparse) return;
    this.#next[column] = entry;
    this.#link[column] = this.#head[target];
    this.#head[target] = column;
  }

  /** Puts the unfactored equations in place. */
  #fill(ratios: ArrayLike<number>): void {
    const { factors, offsets, nodes, readings, fixed } = this.#design;
    const { basisSums, residualSums, basisResiduals } = this.#design;
    const { order, sparse, tail, start, row, count } = this.pattern;
    const { tailRow, tailColumn, tailCount } = this.pattern;
    const { border, denseSize: size } = this;
    const dense = this.dense.fill(0);
    const scale = this.#scale;
    const rank = fixed.basis.length;
    const byNode = new Float64Array(nodes);
    factors.forEach((factor, k) =>
      byNode.fill(ratios[k], offsets[k], offsets[k] + factor.labels.length)
    );
    for (let at = 0; at < nodes; at++) {
      const node = order[at];
      const own = byNode[node];
      scale[at] = own;
      const diagonal = 1 + own * own * readings[node];
      if (at < sparse) {
        this.diagonal[at] = diagonal;
        const mine = at * border;
        for (let c = 0; c < rank; c++) {
          this.borderValues[mine + c] = own * basisSums[node * rank + c];
        }
        this.borderValues[mine + rank] = own * residualSums[node];
      } else {
        const t = at - sparse;
        dense[t * size + t] = diagonal;
        for (let c = 0; c < rank; c++) {
          dense[(tail + c) * size + t] = own * basisSums[node * rank + c];
        }
        dense[(tail + rank) * size + t] = own * residualSums[node];
      }
    }
    for (let j = 0; j < sparse; j++) {
      for (let e = start[j]; e < start[j + 1]; e++) {
        this.values[e] = count[e] * scale[j] * scale[row[e]];
      }
    }
    for (let e = 0; e < tailRow.length; e++) {
      dense[tailRow[e] * size + tailColumn[e]] = tailCount[e] *
        scale[sparse + tailRow[e]] * scale[sparse + tailColumn[e]];
    }
    for (let c = 0; c < rank; c++) {
      dense[(tail + c) * size + tail + c] = 1;
      dense[(tail + rank) * size + tail + c] = basisResiduals[c];
    }
    dense[(tail + rank) * size + tail + rank] = this.#design.residualSquares;
  }

  /** Sum of the logarithms of the pivots, twice: of the levels, of the fixed. */
  logDeterminants(): { levels: number; fixed: number } {
    const { tail } = this.pattern;
    let [levels, fixed] = [0, 0];
    for (const root of this.diagonal) levels += Math.log(root);
    for (let t = 0; t < this.denseSize - 1; t++) {
      const root = Math.log(this.dense[t * this.denseSize + t]);
      if (t < tail) levels += root;
      else fixed += root;
    }
    return { levels: 2 * levels, fixed: 2 * fixed };
  }

  /** y'Py times the residual variance: what neither part explains. */
  leftSquares(): number {
    return this.dense[this.denseSize * this.denseSize - 1] ** 2;
  }

  /** Solution for the readings: scaled shifts by place, then coefficients. */
  solveReadings(): Float64Array {
    const { sparse } = this.pattern;
    const { border, denseSize: size } = this;
    const x = new Float64Array(sparse + size - 1);
    for (let j = 0; j < sparse; j++) {
      x[j] = this.borderValues[j * border + border - 1];
    }
    for (let t = 0; t < size - 1; t++) {
      x[sparse + t] = this.dense[(size - 1) * size + t];
    }
    return this.#backward(x);
  }

  /** Solution for a right side over places and coefficients, in place. */
  solve(x: Float64Array): Float64Array {
    const { sparse, start, row, tail } = this.pattern;
    const { border, denseSize: size } = this;
    for (let j = 0; j < sparse; j++) {
      const value = x[j] / this.diagonal[j];
      x[j] = value;
      if (value === 0) continue;
      for (let e = start[j]; e < start[j + 1]; e++) {
        x[row[e]] -= this.values[e] * value;
      }
      for (let b = 0; b < border - 1; b++) {
        x[sparse + tail + b] -= this.borderValues[j * border + b] * value;
      }
    }
    solveForward(this.dense, size, size - 1, x.subarray(sparse));
    return this.#backward(x);
  }

  #backward(x: Float64Array): Float64Array {
    const { sparse, start, row, tail } = this.pattern;
    const { border, denseSize: size } = this;
    solveBackward(this.dense, size, size - 1, x.subarray(sparse));
    for (let j = sparse - 1; j >= 0; j--) {
      let sum = x[j];
      for (let e = start[j]; e < start[j + 1]; e++) {
        sum -= this.values[e] * x[row[e]];
      }
      for (let b = 0; b < border - 1; b++) {
        sum -= this.borderValues[j * border + b] * x[sparse + tail + b];
      }
      x[j] = sum / this.diagonal[j];
    }
    return x;
  }
}
