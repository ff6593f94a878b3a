/**
 * Quantiles that every interval of a session asks for, computed once.
 *
 * @module
 */
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import { fQuantile } from "../statistics/f_distribution.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";

const remembered = new Map<string, number>();

function once(key: string, make: () => number): number {
  let value = remembered.get(key);
  if (value === undefined) remembered.set(key, value = make());
  return value;
}

/** Student's t exceeded with probability `tail`; the normal one for endless dof. */
export function studentT(tail: number, dof: number): number {
  return once(`t ${tail} ${dof}`, () => studentTQuantile(tail, dof, "upper"));
}

/** Chi-square exceeded with probability 0.05. */
export function chiSquareUpper5(dof: number): number {
  return once(`c ${dof}`, () => chiSquareQuantile(0.05, dof, "upper"));
}

/** F exceeded with probability `tail`. */
export function fUpper(tail: number, first: number, second: number): number {
  return once(
    `F ${tail} ${first} ${second}`,
    () => fQuantile(tail, first, second, "upper"),
  );
}
