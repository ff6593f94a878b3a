/**
 * Where readings stand in the order of time.
 *
 * @module
 */
import { GrowingNumbers } from "../numerics/growing_numbers.ts";
import { itemMaker } from "../numerics/lazy_list.ts";
import { visibleRange } from "./_visible_range.ts";

interface Given {
  readonly set: string;
  readonly zone: string;
  readonly on: "work" | "flat";
  readonly sag: number;
  readonly flagged?: boolean;
}

/** A reading with its place along the axis. */
export interface PlacedReading extends Given {
  readonly x: number;
  /** False where a bar stands for it. */
  readonly drawn: boolean;
}

/** Several readings of one zone, as a range. */
export interface ReadingBar {
  readonly on: "work" | "flat";
  readonly zone: string;
  readonly x: number;
  readonly least: number;
  readonly greatest: number;
}

/** All readings of the work, or all looks at the flat. */
export interface ReadingsSpan {
  readonly count: number;
  /** Least and greatest sag in mm. */
  readonly least: number;
  readonly greatest: number;
  /** What a picture should show of them, in mm. */
  readonly visible: { readonly low: number; readonly high: number };
}

/** The whole axis. */
export interface ReadingsLayout {
  readonly zones: readonly string[];
  readonly sets: number;
  /**
   * Readings that are drawn or named: all of few; of many the middle one of
   * each bar, those that stand apart and those beyond the picture.
   */
  readonly placed: readonly PlacedReading[];
  readonly spans: Readonly<Partial<Record<"work" | "flat", ReadingsSpan>>>;
  readonly flagged: number;
  readonly bars: readonly ReadingBar[];
  /** Between sets. */
  readonly borders: readonly number[];
  /** Middle of each set. */
  readonly middles: readonly { x: number; set: string }[];
  readonly end: number;
  readonly note?: string;
}

/** More readings than this are drawn as ranges. */
const MOST_READINGS = 600;
/** More sets than this are drawn several to a range. */
const MOST_COLUMNS = 30;

function spanOf(sags: Float64Array): ReadingsSpan | undefined {
  if (sags.length === 0) return undefined;
  const sorted = sags.sort();
  return {
    count: sorted.length,
    least: sorted[0],
    greatest: sorted[sorted.length - 1],
    visible: visibleRange(sorted),
  };
}

/** One walk over all readings, which may be made when they are looked at. */
function survey(readings: readonly Given[]) {
  const at = itemMaker(readings);
  const zones = new Set<string>();
  const sets = new Set<string>();
  // A set taken up again later is a new run.
  const runs = new GrowingNumbers(Uint32Array);
  const sags = new Float64Array(readings.length);
  let [work, flats, flagged] = [0, 0, 0];
  let current: string | undefined;
  for (let i = 0; i < readings.length; i++) {
    const reading = at(i);
    if (reading.set !== current) {
      current = reading.set;
      runs.push(i);
      sets.add(current);
    }
    if (reading.flagged) flagged++;
    // The work fills the column from its start, the flat from its end.
    if (reading.on === "work") {
      zones.add(reading.zone);
      sags[work++] = reading.sag;
    } else sags[readings.length - ++flats] = reading.sag;
  }
  const [onWork, onFlat] = [
    spanOf(sags.subarray(0, work)),
    spanOf(sags.subarray(work)),
  ];
  return {
    zones: [...zones],
    sets: sets.size,
    runs,
    flagged,
    spans: {
      ...(onWork === undefined ? {} : { work: onWork }),
      ...(onFlat === undefined ? {} : { flat: onFlat }),
    } as ReadingsLayout["spans"],
  };
}

/** Lays every reading out, or ranges of them where they are many. */
export function layOutReadings(readings: readonly Given[]): ReadingsLayout {
  const { runs, ...found } = survey(readings);
  const { zones, spans } = found;
  const startOf = (run: number): number =>
    run < runs.length ? runs.at(run) : readings.length;
  if (readings.length <= MOST_READINGS) {
    const all = Array.from({ length: runs.length }, (_, run) => run);
    return {
      ...found,
      placed: readings.map((r, i) => ({ ...r, x: i + 0.5, drawn: true })),
      bars: [],
      borders: all.slice(1).map(startOf),
      middles: all.map((run) => ({
        set: readings[startOf(run)].set,
        x: (startOf(run) + startOf(run + 1)) / 2,
      })),
      end: readings.length,
    };
  }
  const perColumn = Math.ceil(runs.length / MOST_COLUMNS);
  const columns = Math.ceil(runs.length / perColumn);
  const lanes = [...zones, "\u0000flat"];
  const placed: PlacedReading[] = [];
  const bars: ReadingBar[] = [];
  for (let column = 0; column < columns; column++) {
    const mine = readings.slice(
      startOf(column * perColumn),
      startOf((column + 1) * perColumn),
    );
    lanes.forEach((zone, lane) => {
      const flat = lane === zones.length;
      const group = mine.filter((r) =>
        flat ? r.on === "flat" : r.on === "work" && r.zone === zone
      );
      if (group.length === 0) return;
      const x = column + (flat ? 0.5 : (lane + 1) / (zones.length + 1));
      const ordered = [...group].sort((a, b) => a.sag - b.sag);
      bars.push({
        on: group[0].on,
        zone,
        x,
        least: ordered[0].sag,
        greatest: ordered.at(-1)!.sag,
      });
      const middle = ordered[Math.floor(ordered.length / 2)];
      const { low, high } = spans[flat ? "flat" : "work"]!.visible;
      for (const r of group) {
        const drawn = r === middle;
        if (drawn || r.flagged || r.sag < low || r.sag > high) {
          placed.push({ ...r, x, drawn });
        }
      }
    });
  }
  const borders = Array.from({ length: columns - 1 }, (_, i) => i + 1);
  const counted = readings.length.toLocaleString("en").replaceAll(
    ",",
    "\u202f",
  );
  return {
    ...found,
    placed,
    bars,
    borders: borders,
    middles: Array.from({ length: columns }, (_, column) => ({
      x: column + 0.5,
      set: readings[startOf(column * perColumn)].set,
    })),
    end: columns,
    note:
      `${counted} readings: each bar runs from the least to the greatest of one zone in ${
        perColumn === 1 ? "one set" : `${perColumn} sets in a row`
      }, with a dot at the middle one.`,
  };
}
