/** Incomplete beta function. */
declare function betainc(
  x: number,
  a: number,
  b: number,
  regularized: boolean,
  upper: boolean,
): number;
export default betainc;
