/**
 * The readings of a session laid out by set and place.
 *
 * @module
 */
import { groupPlaces } from "../numerics/group_places.ts";
import { isLazy, type ItemMaker, itemMaker } from "../numerics/lazy_list.ts";
import { SetColumns } from "./_set_columns.ts";
import type { Reading } from "../records/reading.ts";
import type { Place } from "./place.ts";

/** What one set read at one place. */
export interface Cell {
  /** Mean sag in mm; the two ends of a diameter count equally. */
  readonly sag: number;
  /** How many readings it holds. */
  readonly readings: number;
  /** Mean at the end towards positive offsets, in mm, where it was read. */
  readonly plus?: number;
  /** Mean at the end towards negative offsets, in mm, where it was read. */
  readonly minus?: number;
  /**
   * How far between the looks at the flat it was read, 0 to 1; absent where
   * nobody looked back.
   */
  readonly progress?: number;
  /** The same for the plus end less the minus end, where both were read. */
  readonly lag?: number;
}

/**
 * Readings that share one zero and one diameter.
 *
 * Differences within it are free of the zero. A zeroing that served several
 * diameters gives one set for each when each has readings of its own at two
 * places or more; otherwise the whole zeroing is one set, since diameters that
 * share a reading are not independent.
 */
export interface MeasuredSet {
  /** The zeroing, and the diameter where one zeroing served several. */
  readonly label: string;
  /** The zeroing. */
  readonly zeroing: string;
  /** Direction of the diameter in degrees, from 0 to below 180, where known. */
  readonly diameterDegrees?: number;
  /** One cell for each place, undefined where the set has no reading. */
  readonly cells: readonly (Cell | undefined)[];
}

/** Brings a direction to 0 ... below 180 and says if that turned it round. */
function halfTurn(degrees: number): { degrees: number; end: 1 | -1 } {
  const whole = ((degrees % 360) + 360) % 360;
  return whole < 180
    ? { degrees: whole, end: 1 }
    : { degrees: whole - 180, end: -1 };
}

/** One reading as a cell needs it. */
interface Entry {
  readonly sag: number;
  /** Which end of the diameter, 0 for the centre. */
  readonly end: number;
  readonly progress: number;
}

function meanOf(
  entries: readonly Entry[],
  key: "sag" | "progress",
): number | undefined {
  return entries.length === 0
    ? undefined
    : entries.reduce((sum, entry) => sum + entry[key], 0) / entries.length;
}

function cellOf(entries: readonly Entry[]): Cell {
  const plusEnd = entries.filter(({ end }) => end > 0);
  const minusEnd = entries.filter(({ end }) => end < 0);
  const plus = meanOf(plusEnd, "sag");
  const minus = meanOf(minusEnd, "sag");
  const base = {
    readings: entries.length,
    ...(plus === undefined ? {} : { plus }),
    ...(minus === undefined ? {} : { minus }),
  };
  const looked = entries.some(({ progress }) => progress > 0);
  if (plus === undefined || minus === undefined) {
    return {
      sag: meanOf(entries, "sag")!,
      ...base,
      ...(looked ? { progress: meanOf(entries, "progress")! } : {}),
    };
  }
  const [late, early] = [
    meanOf(plusEnd, "progress")!,
    meanOf(minusEnd, "progress")!,
  ];
  return {
    sag: (plus + minus) / 2,
    ...base,
    ...(looked ? { progress: (late + early) / 2, lag: late - early } : {}),
  };
}

/**
 * Lays out readings of the work by set and place.
 *
 * @param readings Readings of the work, of one session and ring, in order.
 * @param sag Sag of each in mm, corrected for drift where it was.
 * @param places The places.
 * @param placeOf The place of each reading.
 * @param progress How far between the looks at the flat each was taken, 0 to
 * 1; nobody looked unless stated.
 * @returns The sets in the order they were begun.
 *
 * @example One zeroing, two places
 * ```ts
 * import { setTable } from "sagbook/zones/set_table.ts";
 * import { equal } from "node:assert/strict";
 *
 * const readings = [0, 60].map((offset) => ({
 *   zeroing: "S1 / 1", offset, diameterDegrees: 30,
 * } as unknown as Parameters<typeof setTable>[0][number]));
 * const places = [{}, {}] as unknown as Parameters<typeof setTable>[2];
 * const [set] = setTable(readings, [0.715, 0.714], places, [0, 1]);
 * equal(set.cells[1]?.sag, 0.714);
 * equal(set.diameterDegrees, 30);
 * ```
 */
export function setTable(
  readings: readonly Pick<Reading, "zeroing" | "offset" | "diameterDegrees">[],
  sag: readonly number[],
  places: readonly Place[],
  placeOf: readonly number[],
  progress: readonly number[] = [],
): readonly MeasuredSet[] {
  const at = itemMaker(readings);
  const zeroings = groupPlaces(readings.length, (index) => at(index).zeroing);
  const sets = isLazy(readings)
    ? new SetColumns(places.length)
    : [] as MeasuredSet[];
  zeroings.keys.forEach((zeroing, number) => {
    const members = zeroings.placesOf(number);
    const groups = byDiameter(at, members, placeOf);
    for (const [degrees, group] of groups) {
      const cells = places.map((_, place) => {
        const inside = group.filter((index) => placeOf[index] === place);
        return inside.length === 0 ? undefined : cellOf(
          inside.map((index) => ({
            sag: sag[index],
            end: at(index).offset * turned(at(index).diameterDegrees),
            progress: progress[index] ?? 0,
          })),
        );
      });
      sets.push({
        label: groups.size > 1 ? `${zeroing} at ${degrees}°` : zeroing,
        zeroing,
        ...(degrees === undefined ? {} : { diameterDegrees: degrees }),
        cells,
      });
    }
  });
  return sets instanceof SetColumns ? sets.list() : sets;
}

function turned(degrees: number | undefined): 1 | -1 {
  return degrees === undefined ? 1 : halfTurn(degrees).end;
}

/** Splits one zeroing by diameter where every diameter stands on its own. */
function byDiameter(
  at: ItemMaker<Pick<Reading, "offset" | "diameterDegrees">>,
  members: readonly number[],
  placeOf: readonly number[],
): Map<number | undefined, readonly number[]> {
  const groups = new Map<number | undefined, number[]>();
  for (const index of members) {
    const typed = at(index).diameterDegrees;
    const key = typed === undefined ? undefined : halfTurn(typed).degrees;
    const group = groups.get(key);
    if (group) group.push(index);
    else groups.set(key, [index]);
  }
  const standAlone = groups.size > 1 &&
    [...groups].every(([key, group]) =>
      key !== undefined &&
      new Set(group.map((index) => placeOf[index])).size > 1
    );
  if (standAlone) return groups;
  const offCentre = new Set(
    [...groups.keys()].filter((key) =>
      key !== undefined &&
      groups.get(key)!.some((index) => at(index).offset !== 0)
    ),
  );
  const all = [...groups.keys()].filter((key) => key !== undefined);
  const only = offCentre.size === 1
    ? [...offCentre][0]
    : offCentre.size === 0 && all.length === 1
    ? all[0]
    : undefined;
  return new Map([[only, members]]);
}
