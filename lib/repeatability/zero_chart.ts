/**
 * Does the zero hold? Control charts of its history.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
import {
  type ControlChartPair,
  groupsChart,
  individualsChart,
} from "../statistics/control_chart.ts";

/** One point of a chart of the zero. */
export interface ZeroPoint {
  /** The zeroing. */
  readonly zeroing: string;
  /** Its session. */
  readonly session: string;
  /** Who zeroed, where recorded. */
  readonly operator?: string;
  /** When, ISO, where recorded. */
  readonly takenAt?: string;
  /** What the flat showed, in mm of sag; several looks in order of time. */
  readonly shown: readonly number[];
}

/** A control chart of the zero, or why there is none. */
export type ZeroChart =
  | {
    readonly kind: "chart";
    /**
     * `individuals`: single values and moving ranges; `groups`: means and
     * ranges of the looks of each set.
     */
    readonly form: "individuals" | "groups";
    /** The points in order of time. */
    readonly points: readonly ZeroPoint[];
    /** The charts, in mm of sag. */
    readonly chart: ControlChartPair;
    /** Whether all values are equal, so that the display sets the limits. */
    readonly allEqual: boolean;
  }
  | {
    readonly kind: "none";
    /** Why. */
    readonly reason: "not recorded" | "fewer than two";
  };

/** The history of the zero. */
export interface ZeroHistory {
  /** What the display showed on the flat before zero was pressed. */
  readonly before: ZeroChart;
  /** Looks at the flat after zero was pressed. */
  readonly looks: ZeroChart;
}

/**
 * Charts the history of the zero: what the flat showed before zero was pressed,
 * as single values with moving ranges, and the looks at the flat of each set.
 *
 * Looks go as means and ranges where every set has equally many, two or more,
 * and as single values (the last look of each set) otherwise. A range then
 * shows creep within a set, a mean a zero that did not take. Looks of sets are
 * alike only if pressing zero sets them so; signals ask for a look, not for a
 * cure.
 *
 * @param readings Readings, flat included, in order.
 * @returns Two charts, or why there is none.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.
 *
 * @example
 * ```ts
 * import { chartZero } from "sagbook/repeatability/zero_chart.ts";
 * import { equal } from "node:assert/strict";
 *
 * const readings = [0, 0.001, 0, 0.001, 0.009].map((zeroBefore, k) => ({
 *   zeroing: `${k}`, session: "S1", on: "work", sag: 0.7, zeroBefore,
 * } as unknown as Parameters<typeof chartZero>[0][number]));
 * const { before, looks } = chartZero(readings);
 * equal(before.kind === "chart" && before.points.length, 5);
 * equal(looks.kind === "none" && looks.reason, "not recorded");
 * ```
 */
export function chartZero(readings: readonly Reading[]): ZeroHistory {
  const zeroings = new Map<string, Reading[]>();
  for (const reading of readings) {
    const own = zeroings.get(reading.zeroing);
    if (own) own.push(reading);
    else zeroings.set(reading.zeroing, [reading]);
  }
  const [before, looks]: [ZeroPoint[], ZeroPoint[]] = [[], []];
  for (const own of zeroings.values()) {
    const shown = own.find(({ zeroBefore }) => zeroBefore !== undefined)
      ?.zeroBefore;
    if (shown !== undefined) before.push(pointOf(own, [shown]));
    const flats = own.filter(({ on }) => on === "flat");
    if (flats.length > 0) looks.push(pointOf(own, flats.map(({ sag }) => sag)));
  }
  const size = looks[0]?.shown.length ?? 0;
  const even = size > 1 && looks.every(({ shown }) => shown.length === size);
  return {
    before: chartOf(before, "individuals"),
    looks: chartOf(looks, even ? "groups" : "individuals"),
  };
}

function pointOf(own: readonly Reading[], shown: readonly number[]): ZeroPoint {
  const [{ zeroing, session, operator, takenAt }] = own;
  return {
    zeroing,
    session,
    ...(operator === undefined ? {} : { operator }),
    ...(takenAt === undefined ? {} : { takenAt }),
    shown,
  };
}

function chartOf(
  points: readonly ZeroPoint[],
  form: "individuals" | "groups",
): ZeroChart {
  if (points.length === 0) return { kind: "none", reason: "not recorded" };
  if (points.length < 2) return { kind: "none", reason: "fewer than two" };
  const values = points.flatMap(({ shown }) =>
    form === "groups" ? shown : shown.slice(-1)
  );
  return {
    kind: "chart",
    form,
    points,
    chart: form === "groups"
      ? groupsChart(points.map(({ shown }) => shown))
      : individualsChart(values),
    allEqual: values.every((value) => value === values[0]),
  };
}
