/** Inverse of the regularised incomplete gamma function. */
declare function gammaincinv(p: number, a: number, upper: boolean): number;
export default gammaincinv;
