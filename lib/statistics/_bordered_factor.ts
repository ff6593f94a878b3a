/**
 * Cholesky factor of a mixed model's equations, and what follows from it.
 *
 * The equations are those of Henderson, scaled so that a variance of 0 is
 * nothing special: I + Λ Z'Z Λ bordered by the fixed columns and, last, by the
 * readings.
 *
 * @module
 */
import type { BorderedPattern } from "./_bordered_pattern.ts";
import {
  factorInPlace,
  invertLeading,
  solveBackward,
  solveForward,
} from "./_dense_factor.ts";
import type { MixedDesign } from "./_mixed_design.ts";

/** A factor for one set of variances. */
export class BorderedFactor {
  /** Rows of the border: fixed columns, then the readings. */
  readonly border: number;
  /** Size of the dense part: levels left over, then the border. */
  readonly denseSize: number;
  readonly #design: MixedDesign;
  readonly #pattern: BorderedPattern;
  readonly #values: Float64Array;
  readonly #diagonal: Float64Array;
  readonly #borderValues: Float64Array;
  readonly #dense: Float64Array;
  readonly #scale: Float64Array;
  readonly #spot: Int32Array;
  readonly #next: Int32Array;
  readonly #head: Int32Array;
  readonly #link: Int32Array;

  constructor(design: MixedDesign, pattern: BorderedPattern) {
    this.#design = design;
    this.#pattern = pattern;
    this.border = design.fixed.basis.length + 1;
    this.denseSize = pattern.tail + this.border;
    this.#values = new Float64Array(pattern.row.length);
    this.#diagonal = new Float64Array(pattern.sparse);
    this.#borderValues = new Float64Array(pattern.sparse * this.border);
    this.#dense = new Float64Array(this.denseSize * this.denseSize);
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
    const { sparse, start, row } = this.#pattern;
    const values = this.#values;
    const diagonal = this.#diagonal;
    const borders = this.#borderValues;
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
    this.#reduceDense();
    return factorInPlace(this.#dense, this.denseSize);
  }

  /** Lists a column under the row of its next entry among sparse rows. */
  #enqueue(column: number, entry: number): void {
    const { start, row, sparse } = this.#pattern;
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
    const { order, sparse, tail, start, row, count } = this.#pattern;
    const { tailRow, tailColumn, tailCount } = this.#pattern;
    const { border, denseSize: size } = this;
    const dense = this.#dense.fill(0);
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
        this.#diagonal[at] = diagonal;
        const mine = at * border;
        for (let c = 0; c < rank; c++) {
          this.#borderValues[mine + c] = own * basisSums[node * rank + c];
        }
        this.#borderValues[mine + rank] = own * residualSums[node];
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
        this.#values[e] = count[e] * scale[j] * scale[row[e]];
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

  /** Takes the outer products of the sparse columns off the dense part. */
  #reduceDense(): void {
    const { sparse, tail, start, tailStart, row } = this.#pattern;
    const { border, denseSize: size } = this;
    const dense = this.#dense;
    const buffer = new Float64Array(4 * size);
    let held = 0;
    const flush = () => {
      subtractFour(dense, size, buffer);
      buffer.fill(0);
      held = 0;
    };
    const index = new Int32Array(size);
    const value = new Float64Array(size);
    for (let j = 0; j < sparse; j++) {
      const from = tailStart[j];
      const length = start[j + 1] - from;
      if (2 * length > tail) {
        const base = held * size;
        for (let e = 0; e < length; e++) {
          buffer[base + row[from + e] - sparse] = this.#values[from + e];
        }
        for (let b = 0; b < border; b++) {
          buffer[base + tail + b] = this.#borderValues[j * border + b];
        }
        if (++held === 4) flush();
        continue;
      }
      for (let e = 0; e < length; e++) {
        index[e] = row[from + e] - sparse;
        value[e] = this.#values[from + e];
      }
      for (let b = 0; b < border; b++) {
        index[length + b] = tail + b;
        value[length + b] = this.#borderValues[j * border + b];
      }
      for (let a = 0; a < length + border; a++) {
        const at = index[a] * size;
        const factor = value[a];
        for (let b = 0; b <= a; b++) dense[at + index[b]] -= factor * value[b];
      }
    }
    if (held > 0) flush();
  }

  /** Sum of the logarithms of the pivots, twice: of the levels, of the fixed. */
  logDeterminants(): { levels: number; fixed: number } {
    const { tail } = this.#pattern;
    let [levels, fixed] = [0, 0];
    for (const root of this.#diagonal) levels += Math.log(root);
    for (let t = 0; t < this.denseSize - 1; t++) {
      const root = Math.log(this.#dense[t * this.denseSize + t]);
      if (t < tail) levels += root;
      else fixed += root;
    }
    return { levels: 2 * levels, fixed: 2 * fixed };
  }

  /** y'Py times the residual variance: what neither part explains. */
  leftSquares(): number {
    return this.#dense[this.denseSize * this.denseSize - 1] ** 2;
  }

  /** Solution for the readings: scaled shifts by place, then coefficients. */
  solveReadings(): Float64Array {
    const { sparse } = this.#pattern;
    const { border, denseSize: size } = this;
    const x = new Float64Array(sparse + size - 1);
    for (let j = 0; j < sparse; j++) {
      x[j] = this.#borderValues[j * border + border - 1];
    }
    for (let t = 0; t < size - 1; t++) {
      x[sparse + t] = this.#dense[(size - 1) * size + t];
    }
    return this.#backward(x);
  }

  /** Solution for a right side over places and coefficients, in place. */
  solve(x: Float64Array): Float64Array {
    const { sparse, start, row, tail } = this.#pattern;
    const { border, denseSize: size } = this;
    for (let j = 0; j < sparse; j++) {
      const value = x[j] / this.#diagonal[j];
      x[j] = value;
      if (value === 0) continue;
      for (let e = start[j]; e < start[j + 1]; e++) {
        x[row[e]] -= this.#values[e] * value;
      }
      for (let b = 0; b < border - 1; b++) {
        x[sparse + tail + b] -= this.#borderValues[j * border + b] * value;
      }
    }
    solveForward(this.#dense, size, size - 1, x.subarray(sparse));
    return this.#backward(x);
  }

  #backward(x: Float64Array): Float64Array {
    const { sparse, start, row, tail } = this.#pattern;
    const { border, denseSize: size } = this;
    solveBackward(this.#dense, size, size - 1, x.subarray(sparse));
    for (let j = sparse - 1; j >= 0; j--) {
      let sum = x[j];
      for (let e = start[j]; e < start[j + 1]; e++) {
        sum -= this.#values[e] * x[row[e]];
      }
      for (let b = 0; b < border - 1; b++) {
        sum -= this.#borderValues[j * border + b] * x[sparse + tail + b];
      }
      x[j] = sum / this.#diagonal[j];
    }
    return x;
  }

  /**
   * Inverse of the equations: its diagonal by place, and its dense part.
   *
   * @param withFixed Whether the fixed columns belong to the equations.
   */
  invert(
    withFixed: boolean,
  ): { diagonal: Float64Array; dense: Float64Array; size: number } {
    const pattern = this.#pattern;
    const { sparse, start, tailStart, row, tail, referenced } = pattern;
    const border = withFixed ? this.border - 1 : 0;
    const size = tail + border;
    const dense = invertLeading(this.#dense, this.denseSize, size);
    const diagonal = new Float64Array(sparse + tail);
    for (let t = 0; t < tail; t++) diagonal[sparse + t] = dense[t * size + t];
    const inverse = new Float64Array(this.#values.length);
    const inverseBorder = new Float64Array(sparse * border);
    const weight = new Float64Array(sparse + size);
    const sum = new Float64Array(sparse + size);
    const index = new Int32Array(size);
    const mark = this.#spot.fill(-1);
    for (let j = sparse - 1; j >= 0; j--) {
      const [begin, middle, end] = [start[j], tailStart[j], start[j + 1]];
      const root = this.#diagonal[j];
      for (let e = begin; e < end; e++) {
        weight[row[e]] = this.#values[e] / root;
        mark[row[e]] = j;
        sum[row[e]] = 0;
      }
      let dots = 0;
      let held = 0;
      for (let e = middle; e < end; e++) index[held++] = row[e];
      for (let b = 0; b < border; b++) {
        const at = sparse + tail + b;
        weight[at] = this.#borderValues[j * this.border + b] / root;
        sum[at] = 0;
        index[held++] = at;
      }
      for (let e = begin; e < middle; e++) {
        const i = row[e];
        const own = weight[i];
        let total = sum[i] + diagonal[i] * own;
        for (let f = start[i]; f < start[i + 1]; f++) {
          const r = row[f];
          if (mark[r] !== j) continue;
          total += inverse[f] * weight[r];
          sum[r] += inverse[f] * own;
        }
        for (let b = 0; b < border; b++) {
          const at = sparse + tail + b;
          const entry = inverseBorder[i * border + b];
          total += entry * weight[at];
          sum[at] += entry * own;
        }
        sum[i] = total;
        dots += total * own;
      }
      if (referenced[j] || middle > begin) {
        for (let a = 0; a < held; a++) {
          const at = (index[a] - sparse) * size;
          let total = sum[index[a]];
          for (let b = 0; b < held; b++) {
            total += dense[at + index[b] - sparse] * weight[index[b]];
          }
          sum[index[a]] = total;
          dots += total * weight[index[a]];
        }
        for (let e = begin; e < end; e++) inverse[e] = -sum[row[e]];
        for (let b = 0; b < border; b++) {
          inverseBorder[j * border + b] = -sum[sparse + tail + b];
        }
      } else dots += quadraticForm(dense, size, index, held, sparse, weight);
      diagonal[j] = 1 / (root * root) + dots;
    }
    return { diagonal, dense, size };
  }
}

/** Takes four outer products off the lower half of a dense matrix. */
function subtractFour(
  dense: Float64Array,
  size: number,
  four: Float64Array,
): void {
  for (let a = 0; a < size; a++) {
    const at = a * size;
    const f0 = four[a], f1 = four[size + a];
    const f2 = four[2 * size + a], f3 = four[3 * size + a];
    if (f0 === 0 && f1 === 0 && f2 === 0 && f3 === 0) continue;
    for (let b = 0; b <= a; b++) {
      dense[at + b] -= f0 * four[b] + f1 * four[size + b] +
        f2 * four[2 * size + b] + f3 * four[3 * size + b];
    }
  }
}

/** w'Sw over the places listed, from the lower half of S. */
function quadraticForm(
  dense: Float64Array,
  size: number,
  index: Int32Array,
  held: number,
  offset: number,
  weight: Float64Array,
): number {
  let total = 0;
  for (let a = 0; a < held; a++) {
    const at = (index[a] - offset) * size - offset;
    const own = weight[index[a]];
    let half = 0;
    for (let b = 0; b < a; b++) half += dense[at + index[b]] * weight[index[b]];
    total += own * (2 * half + dense[at + index[a]] * own);
  }
  return total;
}
