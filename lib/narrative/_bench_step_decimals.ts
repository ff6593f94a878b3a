/**
 * How many figures a display shows.
 *
 * @module
 */
import type { Millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";

/** Figures after the point that a display step shows. */
export function stepDecimals(
  step: Millimetres | undefined,
  unit: "mm" | "in",
): number {
  if (step === undefined) return unit === "mm" ? 3 : 5;
  const amount = Number(amountIn(step, unit).toPrecision(9));
  const [mantissa, exponent] = amount.toExponential().split("e");
  const after = (mantissa.split(".")[1] ?? "").length - Number(exponent);
  return Math.min(9, Math.max(0, after));
}
