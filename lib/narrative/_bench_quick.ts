/**
 * Quick figures of one reading, for a line at the bench.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { radiusSensitivities } from "../geometry/sensitivities.ts";
import type { Ring } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { formatLength } from "../units/format_length.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import { smallUnit } from "./sag_words.ts";

/** What the readings of a set at its centre average to, in mm. */
export function centreOf(set: readonly Reading[]): Millimetres | undefined {
  const centre = set.filter(({ on, offset }) => on === "work" && offset === 0);
  return centre.length === 0 ? undefined : millimetres(
    centre.reduce((sum, { sag }) => sum + sag, 0) / centre.length,
  );
}

/** A difference of sag with its sign, to a tenth of a display step. */
export function signedSmall(length: number, unit: Piece["unit"]): string {
  const small = smallUnit(unit);
  const text = formatLength(millimetres(length), small, unit === "mm" ? 1 : 2);
  return text.startsWith("−") || length === 0 ? text : `+${text}`;
}

/** R of one reading, to the figures that its display step supports. */
export function quickRadius(
  { sag, step }: Pick<Reading, "sag" | "step">,
  { form, unit }: Pick<Piece, "form" | "unit">,
  ring: Ring,
): string | undefined {
  const feet = effectiveFeet(ring.shape, form);
  if (!(sag > 0 && sag <= feet.circleRadius)) return undefined;
  const radius = radiusFromSag(sag, feet, form);
  const perSag = Math.abs(radiusSensitivities(sag, feet, form).sag);
  // Reading and zero are each rounded to the display step.
  const doubt = perSag * (step ?? 0.001) / Math.sqrt(6);
  const decimals = decimalsFor(amountIn(millimetres(doubt), unit));
  return formatLength(radius, unit, Math.min(3, decimals));
}
