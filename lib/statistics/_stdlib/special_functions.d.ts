/** Incomplete beta function. */
export declare function betainc(
  x: number,
  a: number,
  b: number,
  regularized: boolean,
  upper: boolean,
): number;

/** Complementary error function. */
export declare function erfc(x: number): number;

/** Inverse of the complementary error function. */
export declare function erfcinv(y: number): number;

/** Incomplete gamma function. */
export declare function gammainc(
  x: number,
  a: number,
  regularized: boolean,
  upper: boolean,
): number;

/** Inverse of the regularised incomplete gamma function. */
export declare function gammaincinv(
  p: number,
  a: number,
  upper: boolean,
): number;

/** Natural logarithm of the gamma function. */
export declare function gammaln(x: number): number;

/** Inverse of the regularised incomplete beta function: [x, 1 - x]. */
export declare function kernelBetaincinv(
  a: number,
  b: number,
  p: number,
  q: number,
): [number, number];
