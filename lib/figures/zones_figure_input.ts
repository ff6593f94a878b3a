/**
 * What the figure of the zones needs.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";

/** One zone, compared with the reference zone within each set. */
export interface ZonesFigureZone {
  /** The zone's name. */
  readonly label: string;
  /** Distance of the gauge's axis from the centre of the work, in mm. */
  readonly distance: number;
  /** Mean of (sag here − sag at the reference zone) over sets, in mm. */
  readonly difference: number;
  /** Two-sided 90 % interval of that mean, in mm; left out for a single set. */
  readonly interval90?: Interval;
  /** Two-sided 95 % interval of that mean, in mm. */
  readonly interval95?: Interval;
  /** The difference found in each set, in mm. */
  readonly sets?: readonly {
    readonly difference: number;
    /** True for one that stands apart from the others. */
    readonly flagged?: boolean;
  }[];
}

/** What `zonesFigure` draws. */
export interface ZonesFigureInput {
  /** The zone all others are compared with. */
  readonly reference: { readonly label: string; readonly distance: number };
  /** The other zones. */
  readonly zones: readonly ZonesFigureZone[];
  /** Largest good difference of sag either way, in mm, where one was stated. */
  readonly tolerance?: number;
}
