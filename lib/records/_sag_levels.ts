/**
 * Sags of a session sorted into levels, without keeping the readings.
 *
 * @module
 */
import type { Reading } from "./reading.ts";

/** What one zone has in a level. */
export interface ZonePart {
  /** Readings. */
  count: number;
  /** Their sum, in mm. */
  sum: number;
}

/** Sags that lie close together. */
export interface SagLevel {
  /** Readings. */
  count: number;
  /** Their sum, in mm. */
  sum: number;
  /** Smallest, in mm. */
  low: number;
  /** Largest, in mm. */
  high: number;
  /** Line of the first. */
  line: number;
  /** The first, in mm. */
  sag: number;
  /** The zeroing they all belong to; undefined when there are several. */
  zeroing: string | undefined;
  /** Zones they were read at. */
  readonly zones: Map<string, ZonePart>;
}

/** Width of a bin, as a part of the sag. */
const BIN = 0.005;
/** Levels this much apart, as a part of the sag, are different ones. */
const GAP = 0.015;
/** Nor are readings this many display steps apart at different levels. */
const GAP_STEPS = 6;
/** Display step of a gauge of which nothing is said, in mm. */
const USUAL_STEP = 0.001;
/** So many zones are told apart in a bin. */
const MOST_ZONES = 100;

/** Mean sag of a level, in mm. */
export function meanOf({ sum, count }: ZonePart): number {
  return sum / count;
}

function add(level: SagLevel, zone: string, count: number, sum: number): void {
  level.count += count;
  level.sum += sum;
  const key = level.zones.size >= MOST_ZONES && !level.zones.has(zone)
    ? ""
    : zone;
  const part = level.zones.get(key);
  if (part === undefined) level.zones.set(key, { count, sum });
  else {
    part.count += count;
    part.sum += sum;
  }
}

function joined(one: SagLevel, next: SagLevel): SagLevel {
  const first = one.line <= next.line ? one : next;
  const level: SagLevel = {
    count: 0,
    sum: 0,
    low: one.low,
    high: next.high,
    line: first.line,
    sag: first.sag,
    zeroing: one.zeroing === next.zeroing ? one.zeroing : undefined,
    zones: new Map(),
  };
  for (const { zones } of [one, next]) {
    for (const [zone, part] of zones) add(level, zone, part.count, part.sum);
  }
  return level;
}

/** Counts sags that are not 0; its size does not grow with the readings. */
export class SagLevels {
  readonly #bins = new Map<number, SagLevel>();
  #step = 0;

  /** Counts one by its sag, in mm, from what the flat showed. */
  see({ line, zone, zeroing, step }: Reading, sag: number): void {
    if (step !== undefined && step > this.#step) this.#step = step;
    const size = Math.round(Math.log(Math.abs(sag)) / BIN) * 2;
    const key = sag < 0 ? size + 1 : size;
    let bin = this.#bins.get(key);
    if (bin === undefined) {
      bin = {
        count: 0,
        sum: 0,
        low: sag,
        high: sag,
        line,
        sag,
        zeroing,
        zones: new Map(),
      };
      this.#bins.set(key, bin);
    }
    if (sag < bin.low) bin.low = sag;
    if (sag > bin.high) bin.high = sag;
    if (bin.zeroing !== zeroing) bin.zeroing = undefined;
    add(bin, zone.label, 1, sag);
  }

  /** The largest display step seen, in mm; a usual one when none is known. */
  get step(): number {
    return this.#step === 0 ? USUAL_STEP : this.#step;
  }

  /** The levels from the lowest sag to the highest. */
  list(): readonly SagLevel[] {
    const found: SagLevel[] = [];
    const bins = [...this.#bins.values()].sort((a, b) => a.low - b.low);
    for (const bin of bins) {
      const last = found.at(-1);
      const gap = Math.max(
        GAP * Math.abs(last?.high ?? 0),
        GAP_STEPS * this.step,
      );
      if (last !== undefined && bin.low - last.high <= gap) {
        found[found.length - 1] = joined(last, bin);
      } else found.push(bin);
    }
    return found;
  }
}
