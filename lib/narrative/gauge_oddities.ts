/**
 * What a study of the gauge holds besides scatter: a reading that stands
 * apart, zeroings that climb one after another.
 *
 * @module
 */
import type { PieceFolder } from "../records/folder.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { estimateComponents } from "../repeatability/estimate_components.ts";
import {
  type FlaggedReading,
  flagReadings,
} from "../repeatability/flag_readings.ts";
import type { SurfaceComponents } from "../repeatability/surface_components.ts";
import { steadyTrend } from "../zones/steady_trend.ts";
import { writeSmall } from "./sag_words.ts";

/** What stands apart in a study, and the study without it. */
export interface GaugeOutliers {
  /** Readings that stand apart, the farthest first. */
  readonly flags: readonly FlaggedReading[];
  /** The components of that surface without them. */
  readonly without?: SurfaceComponents;
}

/**
 * Finds readings of a study that stand apart, and estimates without them.
 *
 * @param folder The folder.
 * @param sag Corrected sags of its readings, in mm.
 * @param main The components the answer is about.
 * @returns Nothing flagged, or the flags with the other answer beside.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function gaugeOutliers(
  { readings, piece, bench }: PieceFolder,
  sag: readonly number[],
  main: SurfaceComponents,
): GaugeOutliers {
  const flags = flagReadings(readings, sag).filter(({ index }) =>
    readings[index].ring === main.ring && readings[index].grade === main.grade
  );
  if (flags.length === 0) return { flags };
  const odd = new Set(flags.map(({ index }) => index));
  const kept: Reading[] = [];
  const sags: number[] = [];
  readings.forEach((reading, index) => {
    if (odd.has(index)) return;
    kept.push(reading);
    sags.push(sag[index]);
  });
  const without = estimateComponents(kept, { sag: sags, piece, bench })
    .find(({ ring, grade }) => ring === main.ring && grade === main.grade);
  return without === undefined ? { flags } : { flags, without };
}

/**
 * Says which readings stand apart, and what they do to the answer.
 *
 * @param outliers What was found.
 * @param main The components with them.
 * @param readings The folder's readings.
 * @param unit The user's unit.
 * @returns One sentence, or none.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function outlierSentences(
  { flags, without }: GaugeOutliers,
  main: SurfaceComponents,
  readings: readonly Reading[],
  unit: LengthUnit,
): readonly string[] {
  if (flags.length === 0) return [];
  const [{ index, from }] = flags;
  const { line, file, zone } = readings[index];
  const more = flags.length - 1;
  const spread = without?.total?.sag.deviation;
  const other = main.total === undefined || spread === undefined
    ? ""
    : ` Without ${more === 0 ? "it" : "them"} one reading scatters by ${
      writeSmall(spread, unit)
    } instead of ${writeSmall(main.total.sag.deviation, unit)}.`;
  return [
    `One reading stands ${
      writeSmall(from, unit)
    } from the others of its place and zeroing (${zone.label}, ${file}, line ${line})${
      more === 0
        ? "; it is kept, and counts"
        : `, and ${more} more like it; they are kept, and count`
    }.${other}`,
  ];
}

/**
 * Says where values taken one after another climb or fall steadily.
 *
 * @param values Mean sag of each zeroing in mm, in order, as differences.
 * @param step Display step in mm, 0 where none is known.
 * @param unit The user's unit.
 * @returns One sentence, or none.
 *
 * @example
 * ```ts
 * import { trendSentences } from "sagbook/narrative/gauge_oddities.ts";
 * import { match } from "node:assert/strict";
 *
 * const climb = [0.715, 0.716, 0.717, 0.718, 0.719];
 * match(trendSentences(climb, 0.001, "mm")[0], /climb one after another, by 4\.0/);
 * ```
 */
export function trendSentences(
  values: readonly number[],
  step: number,
  unit: LengthUnit,
): readonly string[] {
  const trend = steadyTrend(values.slice(0, 1000));
  if (trend === undefined || Math.abs(trend.change) < 2 * step) return [];
  return [
    `The zeroings ${
      trend.change > 0 ? "climb" : "fall"
    } one after another, by ${
      writeSmall(trend.change, unit)
    } from the first to the last: scatter does not do that, work or gauge that is still warming or cooling does. The mean stands for no moment of it, and no interval here covers it: let both come to rest and read again.`,
  ];
}
