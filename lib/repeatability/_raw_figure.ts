/**
 * Figures of scatter before they are put into words of sag and radius.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import type { ScatterFigure, Spread } from "./surface_components.ts";
import type { ScatterSource } from "./source.ts";

/** A variance in µm² with what is known of it. */
export interface RawFigure {
  /** Sources it holds. */
  readonly sources: readonly ScatterSource[];
  /** Number of levels. */
  readonly levels: number;
  /** The estimate, which may be negative. */
  readonly variance: number;
  /** Degrees of freedom. */
  readonly dof?: number;
  /** Interval of the standard deviation in µm. */
  readonly interval?: Interval;
}

/** What one way of estimating found. */
export interface RawFigures {
  /** The figures, `repeat` first. */
  readonly figures: readonly RawFigure[];
  /** One reading on a fresh zero, the work's own diameters left out. */
  readonly total: RawFigure;
}

/** Micrometres in one millimetre. */
export const MICROMETRES = 1000;

/** Puts a variance in µm² as standard deviations in mm of sag and of radius. */
export function figureOf(
  { sources, levels, variance, dof, interval }: RawFigure,
  perSag: number | undefined,
): ScatterFigure {
  const usable = Math.max(0, variance);
  // An interval that ends at 0 would be certain of no scatter at all.
  const known = interval !== undefined && interval.high > 0
    ? interval
    : undefined;
  const sag = spread(Math.sqrt(usable), known, 1 / MICROMETRES);
  return {
    sources,
    levels,
    variance: variance / MICROMETRES ** 2,
    usable: usable / MICROMETRES ** 2,
    belowZero: variance < 0,
    ...(dof === undefined ? {} : { dof }),
    sag,
    ...(perSag === undefined
      ? {}
      : { radius: spread(sag.deviation, sag.interval, perSag) }),
  };
}

function spread(
  deviation: number,
  interval: Interval | undefined,
  times: number,
): Spread {
  return {
    deviation: deviation * times,
    ...(interval === undefined ? {} : {
      interval: { low: interval.low * times, high: interval.high * times },
    }),
  };
}

/** The ends of an interval of a variance as those of a standard deviation. */
export function rootOf({ low, high }: Interval): Interval {
  return {
    low: Math.sqrt(Math.max(0, low)),
    high: Math.sqrt(Math.max(0, high)),
  };
}
