/**
 * As many readings as a study or a history can use.
 *
 * @module
 */
import { itemMaker } from "../numerics/lazy_list.ts";
import type { PieceFolder } from "../records/folder.ts";
import { splitSessions } from "../zones/split_sessions.ts";

/** A folder with some of its readings, and what there is to say of it. */
export interface PartOfReadings {
  /** The folder; its counts of lines are still of all. */
  readonly folder: PieceFolder;
  /** What was left out; empty when nothing was. */
  readonly notes: readonly string[];
}

/** A study of more readings knows the scatter no better than its user needs. */
const MOST_READINGS = 20_000;
/** So many sessions tell the history of a piece; it has far fewer. */
const MOST_SESSIONS = 200;

const counted = (count: number): string => count.toLocaleString("en");

/**
 * Takes the last readings of a folder of very many, whole zeroings of them.
 *
 * The scatter of a gauge is known from 20,000 readings within half a per cent;
 * more cost minutes and gigabytes.
 *
 * @param folder A folder as read.
 * @param most How many readings are kept at most.
 * @returns The folder itself where it has no more, else with the last of them.
 *
 * @example
 * ```ts
 * import { lastReadings } from "sagbook/narrative/part_of_readings.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { deepEqual, equal } from "node:assert/strict";
 *
 * const whole = await readPieceFolder("data/metric-250");
 * deepEqual(lastReadings(whole), { folder: whole, notes: [] });
 * const { folder, notes } = lastReadings(whole, 12);
 * equal(folder.readings.at(-1), whole.readings.at(-1));
 * equal(
 *   notes[0],
 *   `Of ${whole.readings.length} readings the last ${folder.readings.length} are studied here.`,
 * );
 * ```
 */
export function lastReadings(
  folder: PieceFolder,
  most: number = MOST_READINGS,
): PartOfReadings {
  const { readings } = folder;
  if (readings.length <= most) return { folder, notes: [] };
  const at = itemMaker(readings);
  const start = readings.length - most;
  let from = start;
  while (
    from < readings.length && at(from).zeroing === at(from - 1).zeroing
  ) from++;
  const kept = readings.slice(from < readings.length ? from : start);
  return {
    folder: { ...folder, readings: kept },
    notes: [
      `Of ${counted(readings.length)} readings the last ${
        counted(kept.length)
      } are studied here.`,
    ],
  };
}

/**
 * Takes the first and the last of very many: the first says where the work
 * began, the last ones what is asked for.
 *
 * @param list Any list, such as of sessions.
 * @param most How many are kept, at least 2.
 * @returns The list itself where it has no more.
 *
 * @example
 * ```ts
 * import { firstAndLast } from "sagbook/narrative/part_of_readings.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(firstAndLast(["S1", "S2", "S3", "S4"], 3), ["S1", "S3", "S4"]);
 * ```
 */
export function firstAndLast<T>(
  list: readonly T[],
  most: number = MOST_SESSIONS,
): readonly T[] {
  return list.length <= most ? list : [list[0], ...list.slice(1 - most)];
}

/**
 * Takes the first and the last sessions of a folder of very many.
 *
 * @param folder A folder as read.
 * @param most How many sessions are kept, at least 2.
 * @returns The folder itself where it has no more, else with those.
 *
 * @example
 * ```ts
 * import { fewSessions } from "sagbook/narrative/part_of_readings.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { deepEqual, equal } from "node:assert/strict";
 *
 * const whole = await readPieceFolder("data/metric-250");
 * deepEqual(fewSessions(whole), { folder: whole, notes: [] });
 * const { notes } = fewSessions(whole, 2);
 * equal(notes[0], "Of 3 sessions the first and the last 1 are looked at here.");
 * ```
 */
export function fewSessions(
  folder: PieceFolder,
  most: number = MOST_SESSIONS,
): PartOfReadings {
  const sessions = splitSessions(folder.readings);
  if (sessions.length <= most) return { folder, notes: [] };
  const kept = firstAndLast(sessions, most).flatMap((session) => [...session]);
  kept.sort((a, b) => a.order - b.order);
  return {
    folder: { ...folder, readings: kept },
    notes: [
      `Of ${counted(sessions.length)} sessions the first and the last ${
        most - 1
      } are looked at here.`,
    ],
  };
}
