/**
 * What is answered to a reading at once, in one line.
 *
 * @module
 */
import type { Ring } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { formatLength, groupFigures } from "../units/format_length.ts";
import { centreOf, quickRadius, signedSmall } from "./_bench_quick.ts";

/**
 * Answers one reading in one line: what was kept, R, and how far its sag lies
 * from the centre of this set.
 *
 * @param reading The reading.
 * @param set The other readings of its zeroing so far.
 * @param piece The piece.
 * @param ring Its ring.
 * @param typed The figures as they were typed; the number's own unless given.
 * @returns One line without a full stop's worth of doubt: R of one reading, to
 * the figures of its display step, with no interval.
 *
 * @example
 * ```ts
 * import { benchEcho } from "sagbook/narrative/bench_echo.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { ok } from "node:assert/strict";
 *
 * const { piece, bench, readings } = await readPieceFolder("data/metric-250");
 * const line = benchEcho(readings[1], [readings[0]], piece, bench.rings[0]);
 * ok(line.includes("from the centre of this set"), line);
 * ```
 */
export function benchEcho(
  reading: Reading,
  set: readonly Reading[],
  piece: Piece,
  ring: Ring,
  typed: string = `${reading.shown?.amount ?? ""}`,
): string {
  const { on, zone, offset, sag, shown, unit } = reading;
  const amount = shown === undefined
    ? formatLength(sag, unit, unit === "mm" ? 3 : 5)
    : `${groupFigures(typed)}\u00a0${shown.unit}`;
  if (on === "flat") {
    const moved = sag === 0
      ? "the zero stands"
      : `the zero has moved ${signedSmall(sag, piece.unit)}`;
    return `flat ${amount}: ${moved}.`;
  }
  const place = `${offset < 0 ? "−" : ""}${zone.label}`;
  const radius = quickRadius(reading, piece, ring);
  const said = radius === undefined ? "no radius" : `R ${radius}`;
  const centre = offset === 0 ? undefined : centreOf(set);
  const apart = centre === undefined
    ? ""
    : `, ${signedSmall(sag - centre, piece.unit)} from the centre of this set`;
  return `${place} ${amount}: ${said}${apart}.`;
}
