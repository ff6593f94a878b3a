/**
 * One reading of the gauge, ready for analysis.
 *
 * @module
 */
import type { FootDirection } from "../geometry/feet.ts";
import type { Millimetres } from "../units/length.ts";
import type { LengthUnitName } from "../units/length_unit.ts";
import type { LengthUnit } from "./piece.ts";

/** A nominal place on the work. */
export interface Zone {
  /** The zone's name as shown to the user: `centre`, `50%`, `edge`. */
  readonly label: string;
  /** Distance of the gauge's axis from the centre of the work, in mm, at least 0. */
  readonly distance: Millimetres;
}

/** What the display showed, as typed. */
export interface ShownValue {
  /** The number. */
  readonly amount: number;
  /** Its unit; `D` for dioptres. */
  readonly unit: LengthUnitName | "D";
}

/** One reading of the work, or of the flat. */
export interface Reading {
  /** File it came from, as the user named it. */
  readonly file: string;
  /** Line of that file, from 1. */
  readonly line: number;
  /** Running number in the order of the files, from 0. */
  readonly order: number;
  /** The session's name. */
  readonly session: string;
  /** When it was taken, ISO, where recorded. */
  readonly takenAt?: string;
  /** The abrasive grade the surface was left by. */
  readonly grade?: string;
  /** Id of the ring. */
  readonly ring: string;
  /** The zeroing, unique over all sessions (`session / label`). */
  readonly zeroing: string;
  /** What the flat showed before zero was pressed, in mm of sag. */
  readonly zeroBefore?: Millimetres;
  /** Direction of the diameter in the work's own axes, in degrees. */
  readonly diameterDegrees?: number;
  /** Where foot 1 pointed. */
  readonly foot: FootDirection;
  /** `work` for a reading of the glass, `flat` for a look back at the flat. */
  readonly on: "work" | "flat";
  /** The nominal place; for the flat its label is `flat` and its distance 0. */
  readonly zone: Zone;
  /** Signed distance of the gauge's axis along the diameter, in mm. */
  readonly offset: Millimetres;
  /** Sag in mm, positive for the declared surface. */
  readonly sag: Millimetres;
  /** The display step of the gauge in the unit of this reading, in mm. */
  readonly step?: Millimetres;
  /** The unit it was typed in. */
  readonly unit: LengthUnit;
  /** Who read it. */
  readonly operator?: string;
  /** Temperature of the air, in °C. */
  readonly temperatureAir?: number;
  /** Temperature of the bench, in °C. */
  readonly temperatureBench?: number;
  /** Temperature of the work, in °C. */
  readonly temperatureWork?: number;
  /** What was typed, before sign, lean and set ring were reckoned with. */
  readonly shown?: ShownValue;
  /** What was typed for `zeroBefore`. */
  readonly zeroBeforeShown?: ShownValue;
  /** The user's note, as typed. */
  readonly note?: string;
  /** Cells of columns that nobody knows, by their headings. */
  readonly other?: Readonly<Record<string, string>>;
}
