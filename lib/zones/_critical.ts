/**
 * Quantiles that every interval of a session asks for, computed once.
 *
 * @module
 */
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import { fQuantile } from "../statistics/f_distribution.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";

/** Remembers a function of a probability and degrees of freedom. */
function remembered(
  find: (tail: number, dof: number) => number,
): (tail: number, dof: number) => number {
  const byTail = new Map<number, Map<number, number>>();
  return (tail, dof) => {
    let byDof = byTail.get(tail);
    if (!byDof) byTail.set(tail, byDof = new Map());
    let value = byDof.get(dof);
    if (value === undefined) byDof.set(dof, value = find(tail, dof));
    return value;
  };
}

/** Student's t exceeded with probability `tail`; the normal one for endless dof. */
export const studentT: (tail: number, dof: number) => number = remembered(
  (tail, dof) => studentTQuantile(tail, dof, "upper"),
);

const chiSquareUpper = remembered(
  (tail, dof) => chiSquareQuantile(tail, dof, "upper"),
);

/** Chi-square exceeded with probability 0.05. */
export function chiSquareUpper5(dof: number): number {
  return chiSquareUpper(0.05, dof);
}

/** F exceeded with probability `tail`. */
export function fUpper(tail: number, first: number, second: number): number {
  return fQuantile(tail, first, second, "upper");
}
