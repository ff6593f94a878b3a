/**
 * Where the scatter of readings comes from, and how much from each source.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { radiusSensitivities } from "../geometry/sensitivities.ts";
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import type { Interval } from "../statistics/interval.ts";
import { millimetres } from "../units/length.ts";
import { balancedChain, byAnova } from "./_by_anova.ts";
import { byLikelihood } from "./_by_likelihood.ts";
import { limitsOf } from "./_component_limits.ts";
import { describeDesign } from "./describe_design.ts";
import { diagnoseDisplay } from "./diagnose_display.ts";
import {
  type DriftFigure,
  type DriftSeen,
  sumUpDrift,
} from "./drift_figure.ts";
import { codeReadings } from "./_factor_codes.ts";
import { groupReadings } from "./group_readings.ts";
import { figureOf, MICROMETRES, type RawFigures } from "./_raw_figure.ts";
import { separate } from "./_separability.ts";
import type { DesignOptions } from "./source.ts";
import { summariseZeroings } from "./_summarise_zeroings.ts";
import type { ScatterFigure, SurfaceComponents } from "./surface_components.ts";

/** What the caller knows and wants. */
export interface ComponentOptions extends DesignOptions {
  /**
   * Sag of every reading in mm, corrected for drift, in the order of the
   * readings; as read unless stated.
   */
  readonly sag?: readonly number[];
  /** Drift of the zero by zeroing, from the looks at the flat. */
  readonly drifts?: readonly DriftSeen[];
  /** The piece, for figures in radius. */
  readonly piece?: Piece;
  /** The bench with the rings, for figures in radius. */
  readonly bench?: Bench;
  /** Confidence of every interval; 0.95 unless stated. */
  readonly confidence?: number;
}

/**
 * Estimates the components of scatter, one set of figures for each ring and
 * grade of surface.
 *
 * Fits what the design can tell apart and nothing else: sources that it cannot
 * are one figure together. Balanced chains of factors (readings in zeroings in
 * operators in sessions) go by analysis of variance with modified-large-sample
 * intervals, and by restricted likelihood beside it; everything else by
 * restricted likelihood with intervals from its profile. An estimate below 0
 * is reported as it is and counts as 0 in sums. Readings that are all equal
 * give no figure but the display's.
 *
 * Figures hold what the readings hold, rounding included; `display` has the
 * scatter behind it. Intervals of few levels are wide, and are what there is.
 *
 * @param readings Readings, flat included, in order.
 * @param options Corrected sags, drift, ring and choices.
 * @returns Plain data, lengths in mm.
 * @throws {RangeError} If there is not one corrected sag for every reading or
 * one is not finite, or a ring is not on the bench.
 *
 * @see Searle, Casella and McCulloch, Variance Components (1992); Burdick and
 * Graybill (1992) for the intervals.
 *
 * @example Two readings after each of three zeroings
 * ```ts
 * import { estimateComponents } from "sagbook/repeatability/estimate_components.ts";
 * import { equal } from "node:assert/strict";
 *
 * const rows = [["1", 1], ["1", 2], ["2", 5], ["2", 6], ["3", 3], ["3", 4]] as const;
 * const readings = rows.map(([zeroing, um]) => ({
 *   ring: "A", session: "S1", zeroing, on: "work", offset: 0, step: 0.001,
 *   sag: 0.7 + um / 1000, zone: { label: "centre", distance: 0 },
 *   foot: { kind: "unknown" },
 * } as unknown as Parameters<typeof estimateComponents>[0][number]));
 * const [{ figures, method }] = estimateComponents(readings);
 * equal(method, "anova");
 * equal(figures[0].sag.deviation.toFixed(6), "0.000707"); // √0.5 µm
 * equal(figures[1].sag.deviation.toFixed(6), "0.001936"); // √((8 - 0.5) / 2) µm
 * ```
 */
export function estimateComponents(
  readings: readonly Reading[],
  options: ComponentOptions = {},
): SurfaceComponents[] {
  const { sag } = options;
  if (sag !== undefined && sag.length !== readings.length) {
    throw new RangeError(
      `Cannot estimate components as there must be one corrected sag for each of ${readings.length} readings: current value is ${sag.length}`,
    );
  }
  const wrong = sag?.find((value) => !Number.isFinite(value));
  if (wrong !== undefined) {
    throw new RangeError(
      `Cannot estimate components as every corrected sag must be a finite number: current value is ${wrong} mm`,
    );
  }
  const designs = describeDesign(readings, options);
  return groupReadings(readings).map(({ indices }, k) =>
    ofSurface(
      indices.map((index) => readings[index]),
      indices.map((index) => sag?.[index] ?? readings[index].sag),
      designs[k],
      options,
    )
  );
}

function ofSurface(
  readings: readonly Reading[],
  sag: readonly number[],
  design: SurfaceComponents["design"],
  options: ComponentOptions,
): SurfaceComponents {
  const { confidence = 0.95, drifts = [] } = options;
  const onWork = readings.map(({ on }) => on === "work");
  const work = readings.filter((_, index) => onWork[index]);
  const sags = sag.filter((_, index) => onWork[index]);
  const display = diagnoseDisplay(work, { sag: sags, confidence });
  const meanSag = meanOfZeroings(work, sags);
  const scale = radiusScale(work[0].ring, meanSag, options);
  const drift = sumUpDrift(drifts, work, confidence);
  const coded = codeReadings(work, options);
  const found = estimate(coded, sags, confidence, design.dof);
  const figures = (raw: RawFigures): ScatterFigure[] =>
    raw.figures.map((figure) => figureOf(figure, scale?.perSag));
  const result: Omit<SurfaceComponents, "limits"> = {
    ring: design.ring,
    ...(design.grade === undefined ? {} : { grade: design.grade }),
    design,
    display,
    status: found.status,
    method: found.method,
    figures: found.raw ? figures(found.raw) : [],
    ...(found.table ? { table: found.table } : {}),
    ...(found.method === "anova" && found.likelihood
      ? { byLikelihood: figures(found.likelihood) }
      : {}),
    zeroings: summariseZeroings(coded, sags, found.likelihood?.shiftOf),
    ...(found.raw
      ? totals(found.raw, drift, display.floor, scale?.perSag)
      : {}),
    ...(drift === undefined ? {} : { drift }),
    meanSag,
    ...scale,
    confidence,
  };
  return { ...result, limits: limitsOf(result, readings, options) };
}

/** What the design allows, by the best method there is. */
function estimate(
  coded: ReturnType<typeof codeReadings>,
  sags: readonly number[],
  confidence: number,
  dof: number,
):
  & Pick<SurfaceComponents, "status" | "method" | "table">
  & { raw?: RawFigures; likelihood?: ReturnType<typeof byLikelihood> } {
  if (dof === 0) return { status: "too few readings", method: "none" };
  if (noScatter(coded, sags)) {
    return { status: "limited by the display", method: "none" };
  }
  const separability = separate(coded);
  // From the first reading, in whole tenths of a nanometre: the arithmetic of
  // decimal sags leaves no trace.
  const y = sags.map((value) =>
    Math.round((value - sags[0]) * MICROMETRES * 1e4) / 1e4
  );
  const chain = balancedChain(coded, separability);
  const likelihood = byLikelihood(coded, separability, y, confidence);
  if (chain) {
    const raw = byAnova(coded, separability, chain, y, confidence);
    return {
      status: "estimated",
      method: "anova",
      raw,
      table: raw.table,
      ...(likelihood ? { likelihood } : {}),
    };
  }
  if (!likelihood) return { status: "limited by the display", method: "none" };
  return { status: "estimated", method: "reml", raw: likelihood, likelihood };
}

/** Whether every reading of a zone equals the others of it. */
function noScatter(
  { cells }: ReturnType<typeof codeReadings>,
  sags: readonly number[],
): boolean {
  const first = new Map<number, number>();
  return sags.every((sag, index) => {
    const known = first.get(cells[index]);
    if (known === undefined) first.set(cells[index], sag);
    return known === undefined || Math.abs(sag - known) < 1e-9;
  });
}

/** The total, and the total with the drift left alone. */
function totals(
  { total }: RawFigures,
  drift: DriftFigure | undefined,
  floor: number | undefined,
  perSag: number | undefined,
): Pick<SurfaceComponents, "total" | "totalWithDrift"> {
  // Whatever the readings say, each and its zero were rounded.
  const least = (floor ?? 0) * MICROMETRES;
  const raised = total.variance < least ** 2
    ? { ...total, variance: least ** 2, interval: above(least, total.interval) }
    : total;
  const corrected = drift !== undefined && drift.corrected.length > 0;
  return {
    total: figureOf(raised, perSag),
    ...(corrected
      ? {
        totalWithDrift: figureOf({
          sources: [...total.sources, "drift"],
          levels: total.levels,
          variance: raised.variance +
            Math.max(0, drift.variance) * MICROMETRES ** 2,
        }, perSag),
      }
      : {}),
  };
}

/** What of an interval lies above the least value; none where nothing does. */
function above(
  least: number,
  interval: Interval | undefined,
): Interval | undefined {
  return interval === undefined || interval.high <= least
    ? undefined
    : { low: Math.max(least, interval.low), high: interval.high };
}

/** Mean over zeroings of each zeroing's mean, in mm. */
function meanOfZeroings(
  readings: readonly Reading[],
  sags: readonly number[],
): number {
  const sums = new Map<string, { sum: number; count: number }>();
  readings.forEach(({ zeroing }, index) => {
    const entry = sums.get(zeroing) ?? { sum: 0, count: 0 };
    entry.sum += sags[index];
    entry.count++;
    sums.set(zeroing, entry);
  });
  const means = [...sums.values()].map(({ sum, count }) => sum / count);
  return means.reduce((sum, mean) => sum + mean, 0) / means.length;
}

/** The radius of the mean sag and how it answers a change of it. */
function radiusScale(
  id: string,
  meanSag: number,
  { bench, piece }: ComponentOptions,
): { meanRadius: number; perSag: number } | undefined {
  if (!bench || !piece) return undefined;
  const ring = bench.rings.find((one) => one.id === id);
  if (!ring) {
    throw new RangeError(
      `Cannot estimate components in radius as the ring must be on the bench: current value is ${id}`,
    );
  }
  const feet = effectiveFeet(ring.shape, piece.form);
  if (!(meanSag > 0 && meanSag <= feet.circleRadius)) return undefined;
  const at = millimetres(meanSag);
  return {
    meanRadius: radiusFromSag(at, feet, piece.form),
    perSag: Math.abs(radiusSensitivities(at, feet, piece.form).sag),
  };
}
