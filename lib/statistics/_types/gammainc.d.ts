/** Incomplete gamma function. */
declare function gammainc(
  x: number,
  a: number,
  regularized: boolean,
  upper: boolean,
): number;
export default gammainc;
