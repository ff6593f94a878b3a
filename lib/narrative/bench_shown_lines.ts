/**
 * What the gauge should show for a wanted radius, ring by ring.
 *
 * @module
 */
import { ringName } from "../records/ring_name.ts";
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { radiusSensitivities } from "../geometry/sensitivities.ts";
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import { shownByGauge } from "../records/shown_by_gauge.ts";
import { formatLength, groupFigures } from "../units/format_length.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor, roundDecimal } from "../units/round_decimal.ts";
import { stepDecimals } from "./_bench_step_decimals.ts";

/** What the gauge should show under one ring. */
export interface BenchShown {
  /** The ring. */
  readonly ring: string;
  /** Sag in mm; absent where the ring is wider than the sphere. */
  readonly sag?: Millimetres;
  /** What the display shows, in mm or dioptres; absent as `sag` is. */
  readonly shown?: number;
  /** Change of R for 1 mm of sag, as a size. */
  readonly perSag?: number;
}

/**
 * Works out what the gauge should show for a radius with each ring.
 *
 * @param radius The wanted radius in mm, above 0.
 * @param piece The piece, for the form of its surface.
 * @param bench The bench with gauge and rings.
 * @returns One entry for each ring, in the order of the bench.
 *
 * @example
 * ```ts
 * import { benchShown } from "sagbook/narrative/bench_shown_lines.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { piece, bench } = await readPieceFolder("data/metric-250");
 * equal(benchShown(mm(3000), piece, bench)[0].sag?.toFixed(4), "0.4174");
 * ```
 */
export function benchShown(
  radius: Millimetres,
  piece: Pick<Piece, "form">,
  bench: Bench,
): readonly BenchShown[] {
  const { form } = piece;
  return bench.rings.map(({ id, shape }): BenchShown => {
    const feet = effectiveFeet(shape, form);
    try {
      const sag = sagFromRadius(radius, feet, form);
      return {
        ring: id,
        sag,
        shown: shownByGauge(sag, bench.gauge, form),
        perSag: Math.abs(radiusSensitivities(sag, feet, form).sag),
      };
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return { ring: id };
    }
  });
}

/**
 * Writes what the gauge should show, one line for each ring.
 *
 * @param radius The wanted radius in mm.
 * @param piece The piece, with the unit to write in.
 * @param bench The bench.
 * @returns Lines.
 *
 * @example
 * ```ts
 * import { benchShownLines } from "sagbook/narrative/bench_shown_lines.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { ok } from "node:assert/strict";
 *
 * const { piece, bench } = await readPieceFolder("data/metric-250");
 * const [line] = benchShownLines(mm(3000), piece, bench);
 * ok(line.startsWith("ring 100: 0.4174"));
 * ```
 */
export function benchShownLines(
  radius: Millimetres,
  piece: Pick<Piece, "form" | "unit">,
  bench: Bench,
): readonly string[] {
  const { gauge } = bench;
  const unit = gauge.unit ?? piece.unit;
  return benchShown(radius, piece, bench).map((entry) => {
    const { ring, sag, shown, perSag } = entry;
    if (sag === undefined || shown === undefined || perSag === undefined) {
      return `${
        ringName(ring)
      }: no reading; the ring is wider than a ${piece.form} sphere of this radius.`;
    }
    const step = gauge.steps[unit];
    const amount = gauge.shows.kind === "power"
      ? `${
        groupFigures(roundDecimal(shown, gauge.shows.kind === "power" ? 3 : 0))
      }\u00a0D`
      : formatLength(
        millimetres(shown),
        unit,
        stepDecimals(step, unit) + (gauge.shows.kind === "sag" ? 1 : 0),
      );
    const rounded = gauge.shows.kind === "sag" && step !== undefined
      ? ` (the display: ${
        formatLength(
          millimetres(Math.round(shown / step) * step),
          unit,
          stepDecimals(step, unit),
        )
      }; one step is ${perStep(perSag * step, unit)} of R)`
      : gauge.shows.kind === "sag"
      ? ""
      : ` of ${gauge.shows.kind}, from a sag of ${
        formatLength(sag, unit, unit === "mm" ? 4 : 6)
      }`;
    return `${ringName(ring)}: ${amount}${rounded}.`;
  });
}

function perStep(length: number, unit: "mm" | "in"): string {
  const amount = amountIn(millimetres(length), unit);
  return formatLength(
    millimetres(length),
    unit,
    decimalsFor(amount),
  );
}
