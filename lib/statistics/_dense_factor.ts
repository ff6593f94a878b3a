/**
 * Cholesky factor, inverse and solutions of a dense symmetric matrix.
 *
 * Matrices are stored by rows in one array; of a symmetric or lower triangular
 * one only the lower half is read.
 *
 * @module
 */

/**
 * Replaces the lower half of a positive definite matrix by its factor L.
 *
 * @returns Whether the matrix was positive definite.
 */
export function factorInPlace(a: Float64Array, size: number): boolean {
  for (let i = 0; i < size; i++) {
    const row = i * size;
    let j = 0;
    for (; j + 3 < i; j += 4) {
      const r0 = j * size, r1 = r0 + size, r2 = r1 + size, r3 = r2 + size;
      let s0 = a[row + j], s1 = a[row + j + 1];
      let s2 = a[row + j + 2], s3 = a[row + j + 3];
      for (let k = 0; k < j; k++) {
        const x = a[row + k];
        s0 -= x * a[r0 + k];
        s1 -= x * a[r1 + k];
        s2 -= x * a[r2 + k];
        s3 -= x * a[r3 + k];
      }
      s0 /= a[r0 + j];
      s1 = (s1 - s0 * a[r1 + j]) / a[r1 + j + 1];
      s2 = (s2 - s0 * a[r2 + j] - s1 * a[r2 + j + 1]) / a[r2 + j + 2];
      s3 = (s3 - s0 * a[r3 + j] - s1 * a[r3 + j + 1] - s2 * a[r3 + j + 2]) /
        a[r3 + j + 3];
      a[row + j] = s0;
      a[row + j + 1] = s1;
      a[row + j + 2] = s2;
      a[row + j + 3] = s3;
    }
    for (; j <= i; j++) {
      const other = j * size;
      let sum = a[row + j];
      for (let k = 0; k < j; k++) sum -= a[row + k] * a[other + k];
      if (j < i) a[row + j] = sum / a[other + j];
      else if (sum > 0) a[row + j] = Math.sqrt(sum);
      else return false;
    }
  }
  return true;
}

/** Inverse of the leading part of a factored matrix, both halves filled. */
export function invertLeading(
  factor: Float64Array,
  size: number,
  leading: number,
): Float64Array {
  // Row c of `columns` is column c of the inverse of L, from c on.
  const columns = new Float64Array(leading * leading);
  for (let c = 0; c < leading; c++) {
    const at = c * leading;
    columns[at + c] = 1 / factor[c * size + c];
    for (let i = c + 1; i < leading; i++) {
      const row = i * size;
      let sum = 0;
      for (let k = c; k < i; k++) sum += factor[row + k] * columns[at + k];
      columns[at + i] = -sum / factor[row + i];
    }
  }
  const inverse = new Float64Array(leading * leading);
  for (let i = 0; i < leading; i++) {
    const a = i * leading;
    for (let j = 0; j <= i; j++) {
      const b = j * leading;
      let sum = 0;
      for (let k = i; k < leading; k++) sum += columns[a + k] * columns[b + k];
      inverse[a + j] = sum;
      inverse[b + i] = sum;
    }
  }
  return inverse;
}

/** Solves L x = b in place for the leading part. */
export function solveForward(
  factor: Float64Array,
  size: number,
  leading: number,
  x: Float64Array,
): void {
  for (let i = 0; i < leading; i++) {
    let sum = x[i];
    const row = i * size;
    for (let k = 0; k < i; k++) sum -= factor[row + k] * x[k];
    x[i] = sum / factor[row + i];
  }
}

/** Solves L' x = b in place for the leading part. */
export function solveBackward(
  factor: Float64Array,
  size: number,
  leading: number,
  x: Float64Array,
): void {
  for (let i = leading - 1; i >= 0; i--) {
    const row = i * size;
    const value = x[i] / factor[row + i];
    x[i] = value;
    for (let k = 0; k < i; k++) x[k] -= factor[row + k] * value;
  }
}

/** Inverse of a small positive definite matrix; undefined if it is not one. */
export function invertSmall(
  matrix: readonly (readonly number[])[],
): number[][] | undefined {
  const size = matrix.length;
  // Scaled to ones on the diagonal, so that units do not matter.
  const scale = matrix.map((row, i) => Math.sqrt(row[i]));
  const a = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      a[i * size + j] = matrix[i][j] / (scale[i] * scale[j]);
    }
  }
  if (!scale.every((value) => value > 0) || !factorInPlace(a, size)) {
    return undefined;
  }
  for (let i = 0; i < size; i++) {
    if (a[i * size + i] < 1e-7) return undefined;
  }
  const inverse = invertLeading(a, size, size);
  return scale.map((rowScale, i) =>
    scale.map((columnScale, j) =>
      inverse[i * size + j] / (rowScale * columnScale)
    )
  );
}
