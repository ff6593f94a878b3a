/**
 * How amounts of a benchmark are written.
 *
 * @module
 */
import type { BenchRow, GrowthPoint } from "./_benchmark.ts";

/** Three figures, without an exponent. */
function figures(value: number): string {
  if (value === 0) return "0";
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  return value.toFixed(Math.min(digits, 3));
}

/** An amount in its unit: µs, ms or s for a time. */
export function amountText(value: number, unit: BenchRow["unit"]): string {
  if (unit === "MB") return `${figures(value)} MB`;
  if (value < 1) return `${figures(value * 1000)} µs`;
  return value < 1000 ? `${figures(value)} ms` : `${figures(value / 1000)} s`;
}

/** A factor with two figures. */
export function factorText(value: number): string {
  if (value >= 10) return value.toFixed(0);
  return value >= 1 ? value.toFixed(1) : value.toFixed(value < 0.1 ? 3 : 2);
}

/** A size: whole powers of ten are written as such from a thousand on. */
export function sizeText(n: number): string {
  const power = Math.log10(n);
  if (power < 3 || !Number.isInteger(power)) return n.toLocaleString("en");
  return `10${[...String(power)].map((d) => "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(d)]).join("")}`;
}

/** The power of n that the last step of growth follows. */
export function lastExponent(
  points: readonly GrowthPoint[],
  of: (point: GrowthPoint) => number | undefined,
): number | undefined {
  const known = points.filter((point) => (of(point) ?? 0) > 0);
  const [before, last] = known.slice(-2);
  if (last === undefined) return undefined;
  return Math.log(of(last)! / of(before)!) / Math.log(last.n / before.n);
}

/** Growth in few words: the factor of each step, and the power of the last. */
export function growthText({ growth = [] }: BenchRow): string {
  const exponent = lastExponent(growth, ({ ours }) => ours);
  if (exponent === undefined) return "";
  const factors = growth.slice(1).map(({ ours }, k) =>
    `×${factorText(ours / growth[k].ours)}`
  );
  return `${factors.join(", ")} (n^${exponent.toFixed(2)})`;
}

/** Memory of ours and the peer's, in MB. */
export function memoryText({ memory, peer }: BenchRow): string {
  const text = (mb: number | undefined): string =>
    mb === undefined || mb === 0 ? "?" : mb.toFixed(0);
  if (memory === undefined) return "";
  return peer === undefined
    ? text(memory.ours)
    : `${text(memory.ours)} / ${text(memory.peer)}`;
}
