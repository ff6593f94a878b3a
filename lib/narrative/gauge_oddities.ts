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
import { zeroingLabel } from "../records/zeroing_label.ts";
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

/** A reading with its sag, corrected for drift where that was seen. */
export interface CorrectedSag {
  /** Where and when it was taken. */
  readonly reading: Pick<
    Reading,
    "session" | "zeroing" | "zone" | "ring" | "diameterDegrees"
  >;
  /** In mm. */
  readonly sag: number;
}

/** So rarely chance alone may do it in one of all series looked at. */
const BY_CHANCE = 0.02;

/**
 * Says where readings of one place climb or fall steadily within a zeroing.
 *
 * Only a series of five or more can show it; the more series there are, the
 * longer it must be, since one of many climbs by chance.
 *
 * @param readings Readings of the work in order, corrected for drift.
 * @param step Display step in mm, 0 where none is known.
 * @param unit The user's unit.
 * @returns One sentence, about the largest change, or none.
 *
 * @example
 * ```ts
 * import { creepSentences } from "sagbook/narrative/gauge_oddities.ts";
 * import { match } from "node:assert/strict";
 *
 * const reading = { session: "S1", zeroing: "S1 / 1", ring: "A" };
 * const zone = { label: "centre", distance: 0 as never };
 * const climb = [0.712, 0.714, 0.716, 0.718, 0.72].map((sag) => ({
 *   reading: { ...reading, zone },
 *   sag,
 * }));
 * match(creepSentences(climb, 0.001, "mm")[0], /^Within zeroing 1 .* by 8\.0/);
 * ```
 */
export function creepSentences(
  readings: readonly CorrectedSag[],
  step: number,
  unit: LengthUnit,
): readonly string[] {
  const series = new Map<string, CorrectedSag[]>();
  for (const one of readings) {
    const { zeroing, zone, ring, diameterDegrees } = one.reading;
    const key = [zeroing, ring, zone.label, diameterDegrees].join("\u0000");
    const list = series.get(key);
    if (list === undefined) series.set(key, [one]);
    else list.push(one);
  }
  const long = [...series.values()].filter(({ length }) => length > 4);
  const [most] = long.flatMap((list) => {
    const trend = steadyTrend(list.slice(0, 1000).map(({ sag }) => sag));
    return trend === undefined || Math.abs(trend.change) < 2 * step ||
        trend.chance * long.length > BY_CHANCE
      ? []
      : [{ ...trend, first: list[0].reading }];
  }).sort((a, b) => Math.abs(b.change) - Math.abs(a.change));
  if (most === undefined) return [];
  const { first, change } = most;
  return [
    `Within zeroing ${
      zeroingLabel(first)
    } the readings at ${first.zone.label} ${
      change > 0 ? "climb" : "fall"
    } one after another, by ${
      writeSmall(Math.abs(change), unit)
    } from the first to the last: scatter does not do that, a warm hand or a creeping zero does. Look at the flat before and after, wear gloves, let gauge and glass come to rest, and read a fresh set.`,
  ];
}
