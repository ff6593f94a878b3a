/**
 * Readings that would make more sense as something else.
 *
 * @module
 */
import type { Bench, Ring } from "./bench.ts";
import { flatLooks } from "./_flat_looks.ts";
import { CopiedSessions } from "./_copied_sessions.ts";
import { DoubledLines } from "./_doubled_lines.ts";
import { LabelWatch } from "./_label_watch.ts";
import { sayOdd } from "./_odd_words.ts";
import { oddReadings } from "./_odd_levels.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";
import { ringOnFlat } from "./_ring_on_flat.ts";
import {
  emptyGroup,
  meanSize,
  type SessionGroup,
  suspicion,
} from "./_session_group.ts";
import { SessionUnity } from "./_session_unity.ts";
import { fitterOf, unitOrRing } from "./_suspicions.ts";
import { wrongWay } from "./_wrong_way.ts";
import { ZeroingTimes } from "./_zeroing_times.ts";

/** So many sessions are looked at; a folder holds far fewer. */
const MOST_GROUPS = 10_000;
/** Readings within so many display steps of 0 show nothing but the flat. */
const STEPS_OF_NOUGHT = 2;

/** A look at the flat by fewer display steps is a zero that was pressed. */
const STEPS_OF_ZERO = 3;

/** Watches readings go by and says at the end what looks wrong. */
export class PlausibilityWatch {
  readonly #piece: Piece;
  readonly #bench: Bench;
  readonly #rings: ReadonlyMap<string, Ring>;
  readonly #groups = new Map<string, SessionGroup>();
  readonly #unity = new SessionUnity();
  readonly #watches = [
    new LabelWatch(),
    new DoubledLines(),
    new CopiedSessions(),
    new ZeroingTimes(),
    this.#unity,
  ];
  #group: SessionGroup | undefined;

  /** Sets the piece and the bench. */
  constructor(piece: Piece, bench: Bench) {
    this.#piece = piece;
    this.#bench = bench;
    this.#rings = new Map(bench.rings.map((ring) => [ring.id, ring]));
  }

  /** Sessions none of whose readings has a date. */
  undated(): readonly string[] {
    return this.#unity.undated();
  }

  /** Takes dates that sessions without one have from elsewhere. */
  date(dates: ReadonlyMap<string, string>): void {
    this.#unity.date(dates);
  }

  /** Looks at one reading. */
  see(reading: Reading): void {
    for (const watch of this.#watches) watch.see(reading);
    let group = this.#group;
    if (
      group === undefined || group.session !== reading.session ||
      group.ring.id !== reading.ring || group.unit !== reading.unit
    ) {
      group = this.#find(reading);
      if (group === undefined) return;
    }
    const { line } = reading;
    if (reading.zeroing !== group.zeroing) {
      group.zeroing = reading.zeroing;
      const isLook = reading.on === "flat" &&
        Math.abs(reading.sag) >= STEPS_OF_ZERO * group.levels.step;
      group.opening = isLook ? reading.sag : 0;
      if (Math.abs(group.opening) > Math.abs(group.zeroShown)) {
        group.zeroShown = group.opening;
        group.zeroShownLine = line;
      }
    }
    const sag = reading.sag - group.opening;
    if (reading.on === "flat") {
      if (Math.abs(sag) > Math.abs(group.flat)) {
        group.flat = sag;
        group.flatLine = line;
      }
      return;
    }
    if (group.count === 0) group.line = line;
    group.count++;
    group.sum += sag;
    const size = Math.abs(sag);
    if (size > group.largest) group.largest = size;
    if (sag === 0) {
      if (group.zero++ === 0) group.zeroLine = line;
      return;
    }
    if (sag < 0 && group.negative++ === 0) group.negativeLine = line;
    group.levels.see(reading, sag);
  }

  #find(reading: Reading): SessionGroup | undefined {
    const { session, unit, file, line } = reading;
    const key = `${session}\u0000${reading.ring}\u0000${unit}`;
    let group = this.#groups.get(key);
    if (group === undefined) {
      const ring = this.#rings.get(reading.ring);
      if (ring === undefined) return undefined;
      group = emptyGroup({ session, ring, unit, file, line });
      this.#groups.set(key, group);
    }
    this.#group = group;
    return group;
  }

  /** Finds what cannot stand in a group, and the mean of the rest. */
  #settle(group: SessionGroup): void {
    const levels = group.levels.list();
    let { sum, count } = group;
    if (levels.length > 1 && !this.#isNought(group)) {
      group.odd = oddReadings(
        levels,
        group.unit,
        group.levels.step,
        fitterOf(group.ring, this.#piece),
      );
    }
    for (const { level } of group.odd) {
      sum -= level.sum;
      count -= level.count;
    }
    group.mean = count === group.zero ? 0 : sum / (count - group.zero);
  }

  /** What looks wrong, once every reading has been seen. */
  problems(): Problem[] {
    const groups = [...this.#groups.values()].filter(({ count }) => count > 0)
      .slice(0, MOST_GROUPS);
    const smallest = new Map<Ring, SessionGroup>();
    const largest = new Map<Ring, SessionGroup>();
    for (const group of groups) {
      this.#settle(group);
      const size = meanSize(group);
      const low = smallest.get(group.ring);
      if (low === undefined || size < meanSize(low)) {
        smallest.set(group.ring, group);
      }
      const high = largest.get(group.ring);
      if (high === undefined || size > meanSize(high)) {
        largest.set(group.ring, group);
      }
    }
    const rightWay = groups.find((group) =>
      group.mean > 0 && !this.#isNought(group)
    );
    const latest = new Map<Ring, SessionGroup>();
    const found = groups.flatMap((group) => {
      const before = latest.get(group.ring);
      latest.set(group.ring, group);
      return this.#looksWrong(group, before, [
        smallest.get(group.ring),
        largest.get(group.ring),
      ], rightWay);
    });
    const rings = new Set<Ring>();
    const firsts = groups.filter(({ ring }) =>
      !rings.has(ring) && rings.add(ring)
    );
    return [
      ...found,
      ...firsts.flatMap((group) =>
        ringOnFlat(group, this.#bench.flat, this.#piece.unit)
      ),
      ...this.#watches.flatMap((watch) => watch.problems()),
    ];
  }

  /** What looks wrong in one group, held against the one before it. */
  #looksWrong(
    group: SessionGroup,
    before: SessionGroup | undefined,
    extremes: readonly (SessionGroup | undefined)[],
    rightWay: SessionGroup | undefined,
  ): Problem[] {
    const piece = this.#piece;
    const isNought = this.#isNought(group);
    return [
      ...(isNought ? [nought(group)] : [
        ...wrongWay(group, rightWay, piece, this.#bench),
        ...zeros(group),
      ]),
      ...sayOdd(group, piece, this.#bench),
      ...flatLooks(group, piece),
      ...(isNought
        ? []
        : unitOrRing(group, extremes, before, piece, this.#bench)),
    ];
  }

  /** True when no reading differs from 0 by more than the display can tell. */
  #isNought({ count, zero, largest, levels, ring }: SessionGroup): boolean {
    if (zero === count) return count > 1;
    return largest <= STEPS_OF_NOUGHT * levels.step &&
      !fitterOf(ring, this.#piece)(largest);
  }
}

function nought(group: SessionGroup): Problem {
  return suspicion(
    group,
    "zero-reading",
    group.line,
    `every reading of session ${group.session} on the work is 0, or as near as the display can tell: was zero pressed on the work instead of the flat?`,
    "zero the gauge on the flat and read the work again; readings of the flat itself have the zone flat",
    group.count,
  );
}

function zeros(group: SessionGroup): Problem[] {
  if (group.zero === 0) return [];
  return [suspicion(
    group,
    "zero-reading",
    group.zeroLine,
    `${
      group.zero === 1
        ? `a reading of session ${group.session} on the work is`
        : `${group.zero} readings of session ${group.session} on the work are`
    } exactly 0, as on a flat`,
    "if it was a look at the flat, write flat as its zone",
    group.zero,
  )];
}
