/**
 * The readings of a session that are judged together.
 *
 * @module
 */
import type { Feet, SurfaceForm } from "../geometry/feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Ring } from "./bench.ts";
import type { OddReadings } from "./_odd_levels.ts";
import type { LengthUnit } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { SagLevels } from "./_sag_levels.ts";

/** The readings of one session under one ring in one unit. */
export interface SessionGroup {
  /** The session. */
  readonly session: string;
  /** The ring. */
  readonly ring: Ring;
  /** The unit it was typed in. */
  readonly unit: LengthUnit;
  /** File of its first reading. */
  readonly file: string;
  /** Line of its first reading; of its first look at the flat without one. */
  line: number;
  /** Its readings of the work. */
  count: number;
  /** Their sum, in mm. */
  sum: number;
  /** Those that are not 0. */
  readonly levels: SagLevels;
  /** How many are negative. */
  negative: number;
  /** The first line that is. */
  negativeLine: number;
  /** How many are 0. */
  zero: number;
  /** The first line that is. */
  zeroLine: number;
  /** Size of the largest sag, in mm. */
  largest: number;
  /** The zeroing last read. */
  zeroing: string | undefined;
  /** What the flat showed when it began, in mm; 0 where zero was pressed. */
  opening: number;
  /** The largest of those, in mm. */
  zeroShown: number;
  /** Its line. */
  zeroShownLine: number;
  /** The look at the flat that stands farthest from that, less it, in mm. */
  flat: number;
  /** Its line. */
  flatLine: number;
  /** What cannot stand beside the others; filled in once all were seen. */
  odd: readonly OddReadings[];
  /** Mean sag of the others, in mm; filled in once all were seen. */
  mean: number;
}

/** A group without readings. */
export function emptyGroup(
  { session, ring, unit, file, line }: Pick<
    SessionGroup,
    "session" | "ring" | "unit" | "file" | "line"
  >,
): SessionGroup {
  return {
    session,
    ring,
    unit,
    file,
    line,
    count: 0,
    sum: 0,
    levels: new SagLevels(),
    negative: 0,
    negativeLine: 0,
    zero: 0,
    zeroLine: 0,
    largest: 0,
    zeroing: undefined,
    opening: 0,
    zeroShown: 0,
    zeroShownLine: 0,
    flat: 0,
    flatLine: 0,
    odd: [],
    mean: 0,
  };
}

/** Size of a group's mean sag, what cannot stand in it left out, in mm. */
export function meanSize(group: SessionGroup): number {
  return Math.abs(group.mean);
}

/** A picometre: below it a surface is flat to any gauge, and R overflows. */
export const SMALLEST_SAG = 1e-9;

/** How near a factor must come to a ring mix-up's. */
export const NEAR_RING = 0.03;

/** A radius, where the sag gives one. */
export function radiusOf(
  sag: number,
  feet: Feet,
  form: SurfaceForm,
): Millimetres | undefined {
  if (!(sag >= SMALLEST_SAG) || sag > feet.circleRadius) return undefined;
  return radiusFromSag(millimetres(sag), feet, form);
}

/** A warning about a group. */
export function suspicion(
  group: SessionGroup,
  code: string,
  line: number,
  message: string,
  mend: string,
  count?: number,
): Problem {
  return {
    severity: "warning",
    code,
    file: group.file,
    line,
    message,
    mend,
    ...(count === undefined ? {} : { count }),
  };
}
