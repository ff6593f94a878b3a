/**
 * Inverse of a mixed model's equations from their factor.
 *
 * @module
 */
import type { BorderedFactor } from "./_bordered_factor.ts";
import { invertLeading } from "./_dense_factor.ts";

/** What is kept of an inverse. */
export interface BorderedInverse {
  /** Its diagonal over the levels, by place. */
  readonly diagonal: Float64Array;
  /** All of it over the dense levels and, if wanted, the fixed columns. */
  readonly dense: Float64Array;
  /** Rows of `dense`. */
  readonly size: number;
}

/**
 * Inverse of the equations: its diagonal by place, and its dense part.
 *
 * Selected entries only, by Takahashi's recursion from the last column to the
 * first: those in the pattern of the factor and on the diagonal.
 *
 * @param withFixed Whether the fixed columns belong to the equations.
 */
export function invertBordered(
  parts: BorderedFactor,
  withFixed: boolean,
): BorderedInverse {
  const { pattern } = parts;
  const { sparse, start, tailStart, row, tail, referenced } = pattern;
  const border = withFixed ? parts.border - 1 : 0;
  const size = tail + border;
  const dense = invertLeading(parts.dense, parts.denseSize, size);
  const diagonal = new Float64Array(sparse + tail);
  for (let t = 0; t < tail; t++) diagonal[sparse + t] = dense[t * size + t];
  const inverse = new Float64Array(parts.values.length);
  const inverseBorder = new Float64Array(sparse * border);
  const weight = new Float64Array(sparse + size);
  const sum = new Float64Array(sparse + size);
  const index = new Int32Array(size);
  const mark = new Int32Array(pattern.order.length).fill(-1);
  for (let j = sparse - 1; j >= 0; j--) {
    const [begin, middle, end] = [start[j], tailStart[j], start[j + 1]];
    const root = parts.diagonal[j];
    for (let e = begin; e < end; e++) {
      weight[row[e]] = parts.values[e] / root;
      mark[row[e]] = j;
      sum[row[e]] = 0;
    }
    let dots = 0;
    let held = 0;
    for (let e = middle; e < end; e++) index[held++] = row[e];
    for (let b = 0; b < border; b++) {
      const at = sparse + tail + b;
      weight[at] = parts.borderValues[j * parts.border + b] / root;
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
