/**
 * Where readings stand in the order of time.
 *
 * @module
 */

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

/** The whole axis. */
export interface ReadingsLayout {
  readonly zones: readonly string[];
  readonly sets: number;
  readonly placed: readonly PlacedReading[];
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

/** Runs of readings of one set; a set taken up again later is a new run. */
function runsOf(
  readings: readonly Given[],
): { set: string; from: number; to: number }[] {
  const runs: { set: string; from: number; to: number }[] = [];
  readings.forEach(({ set }, i) => {
    const last = runs.at(-1);
    if (last?.set === set) last.to = i + 1;
    else runs.push({ set, from: i, to: i + 1 });
  });
  return runs;
}

/** Lays every reading out, or ranges of them where they are many. */
export function layOutReadings(readings: readonly Given[]): ReadingsLayout {
  const zones = [
    ...new Set(readings.filter(({ on }) => on === "work").map((r) => r.zone)),
  ];
  const runs = runsOf(readings);
  const sets = new Set(readings.map(({ set }) => set)).size;
  if (readings.length <= MOST_READINGS) {
    return {
      zones,
      sets,
      placed: readings.map((r, i) => ({ ...r, x: i + 0.5, drawn: true })),
      bars: [],
      borders: runs.slice(1).map(({ from }) => from),
      middles: runs.map(({ set, from, to }) => ({ set, x: (from + to) / 2 })),
      end: readings.length,
    };
  }
  const perColumn = Math.ceil(runs.length / MOST_COLUMNS);
  const columns = Math.ceil(runs.length / perColumn);
  const lanes = [...zones, "\u0000flat"];
  const placed: PlacedReading[] = [];
  const bars: ReadingBar[] = [];
  for (let column = 0; column < columns; column++) {
    const first = runs[column * perColumn];
    const last = runs[Math.min((column + 1) * perColumn, runs.length) - 1];
    const mine = readings.slice(first.from, last.to);
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
      for (const r of group) placed.push({ ...r, x, drawn: r === middle });
    });
  }
  const borders = Array.from({ length: columns - 1 }, (_, i) => i + 1);
  const counted = readings.length.toLocaleString("en").replaceAll(
    ",",
    "\u202f",
  );
  return {
    zones,
    sets,
    placed,
    bars,
    borders: borders,
    middles: Array.from({ length: columns }, (_, column) => ({
      x: column + 0.5,
      set: runs[column * perColumn].set,
    })),
    end: columns,
    note:
      `${counted} readings: each bar runs from the least to the greatest of one zone in ${
        perColumn === 1 ? "one set" : `${perColumn} sets in a row`
      }, with a dot at the middle one.`,
  };
}
