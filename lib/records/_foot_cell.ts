/**
 * Where foot 1 pointed, as people write it.
 *
 * @module
 */
import type { FootDirection } from "../geometry/feet.ts";
import { type FileDecimal, readNumber } from "./_read_cell.ts";

/** Reads degrees, `foot out`, `feet out` or `unknown`. */
export function parseFoot(
  typed: string,
  decimal: FileDecimal,
): FootDirection | undefined {
  const text = typed.toLowerCase().replace(/[\s_-]+/g, " ").trim();
  if (/^(?:one |1 )?foot out$/.test(text)) return { kind: "foot out" };
  if (/^(?:two |2 )?feet out$/.test(text)) return { kind: "feet out" };
  if (/^(?:unknown|\?)$/.test(text)) return { kind: "unknown" };
  const number = readNumber(
    typed.trim().replace(/\s*(?:°|deg|degrees?)$/i, ""),
    decimal,
  );
  return number.kind === "number"
    ? { kind: "angle", degrees: number.value }
    : undefined;
}
