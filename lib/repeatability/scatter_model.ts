/**
 * A gauge and a surface as a plan needs them.
 *
 * @module
 */

/** Standard deviations of what makes readings differ, all in mm of sag. */
export interface ScatterModel {
  /** From reading to reading, before rounding. */
  readonly repeat: number;
  /** From zeroing to zeroing, before rounding. */
  readonly zeroing: number;
  /** What a zeroing does to one zone alone; 0 unless stated. */
  readonly zoneByZeroing?: number;
  /** From diameter to diameter, off centre; 0 unless stated. */
  readonly diameter?: number;
  /**
   * From one occasion to the next, whoever measures and whatever the day;
   * 0 unless stated. More zeroings on one occasion do not average it.
   */
  readonly occasion?: number;
  /**
   * Standard uncertainty of what every reading shares, whenever it is taken:
   * size of the ring, scale of the gauge, flat; 0 unless stated. Nothing read
   * with them averages it.
   */
  readonly common?: number;
  /** Creep of the zero from one reading to the next; 0 unless stated. */
  readonly driftPerReading?: number;
  /** Display step in mm of sag; 0 for a display that shows everything. */
  readonly step: number;
}

/** A place that every set of a plan reads. */
export interface PlannedZone {
  /** The zone's label. */
  readonly label: string;
  /** Signed distance of the gauge's axis along the diameter, in mm. */
  readonly offset: number;
  /** Sag there if the surface is as assumed, in mm. */
  readonly sag: number;
}

/** The size of a study. */
export interface StudySize {
  /** Zeroings on each occasion, one set of readings each; at least 1. */
  readonly zeroings: number;
  /** Different diameters among them, from 1 to the number of zeroings. */
  readonly diameters: number;
  /** Readings of each zone in each set, at least 1. */
  readonly repeats: number;
}

/**
 * One set as an analysis sees it: a zeroing with the mean sag of every zone.
 *
 * Has the shape of the measured sets that zones are compared in.
 */
export interface SimulatedSet {
  /** Name of the set. */
  readonly label: string;
  /** Its zeroing. */
  readonly zeroing: string;
  /** Direction of its diameter in degrees, from 0 to below 180. */
  readonly diameterDegrees: number;
  /** The occasion it was read on, from 0. */
  readonly occasion: number;
  /** Mean sag in mm and number of readings of each zone, in order. */
  readonly cells: readonly {
    readonly sag: number;
    readonly readings: number;
  }[];
}

/** What an analysis says of a number of sets. */
export type Decision = "within" | "outside" | "undecided";

/** What an analysis knows of a gauge besides the readings, in mm of sag. */
export type KnownGauge = Pick<ScatterModel, "step" | "occasion" | "common">;

/** The analysis a plan is made for: judges sets read with a known gauge. */
export type Decide = (
  sets: readonly SimulatedSet[],
  gauge: KnownGauge,
) => Decision;
