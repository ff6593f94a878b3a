/**
 * What the sparse columns of a mixed model's factor leave of its dense part.
 *
 * @module
 */
import type { BorderedFactor } from "./_bordered_factor.ts";

/** Takes the outer products of the sparse columns off the dense part. */
export function reduceDense(parts: BorderedFactor): void {
  const { sparse, tail, start, tailStart, row } = parts.pattern;
  const { border, denseSize: size } = parts;
  const dense = parts.dense;
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
        buffer[base + row[from + e] - sparse] = parts.values[from + e];
      }
      for (let b = 0; b < border; b++) {
        buffer[base + tail + b] = parts.borderValues[j * border + b];
      }
      if (++held === 4) flush();
      continue;
    }
    for (let e = 0; e < length; e++) {
      index[e] = row[from + e] - sparse;
      value[e] = parts.values[from + e];
    }
    for (let b = 0; b < border; b++) {
      index[length + b] = tail + b;
      value[length + b] = parts.borderValues[j * border + b];
    }
    for (let a = 0; a < length + border; a++) {
      const at = index[a] * size;
      const factor = value[a];
      for (let b = 0; b <= a; b++) dense[at + index[b]] -= factor * value[b];
    }
  }
  if (held > 0) flush();
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
