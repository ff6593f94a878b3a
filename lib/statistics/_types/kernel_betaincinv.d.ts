/** Inverse of the regularised incomplete beta function: [x, 1 - x]. */
declare function kernelBetaincinv(
  a: number,
  b: number,
  p: number,
  q: number,
): [number, number];
export default kernelBetaincinv;
