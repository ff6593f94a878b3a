/**
 * Root of a continuous function inside a bracket.
 *
 * @module
 */

/**
 * Finds a zero of `f` between two arguments at which its signs differ, by
 * regula falsi with the Illinois weights, guarded by bisection.
 *
 * @param f Continuous function.
 * @param from One end of the bracket.
 * @param to The other end.
 * @param relative Width of the final bracket relative to the root.
 * @returns The root.
 */
export function findRoot(
  f: (x: number) => number,
  from: number,
  to: number,
  relative: number,
): number {
  let [a, b] = [from, to];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) {
    throw new RangeError(
      `Cannot find a root as the function must change sign between ${from} and ${to}: current values are ${fa} and ${fb}`,
    );
  }
  let kept = 0;
  for (let step = 0; step < 200; step++) {
    const width = Math.abs(b - a);
    if (width <= relative * Math.max(Math.abs(a), Math.abs(b))) break;
    let x = step % 4 === 3 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    if (!(x > Math.min(a, b) && x < Math.max(a, b))) x = (a + b) / 2;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0 === fb > 0) {
      [b, fb] = [x, fx];
      if (kept === 1) fa /= 2;
      kept = 1;
    } else {
      [a, fa] = [x, fx];
      if (kept === 2) fb /= 2;
      kept = 2;
    }
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
