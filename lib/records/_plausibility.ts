/**
 * Readings that would make more sense as something else.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { Bench, Ring } from "./bench.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";
import { saidRadius, saidSag } from "./_said_length.ts";
import { meanSize, type SessionGroup, suspicion } from "./_session_group.ts";
import { INCH, near, NEAR_INCH, radiusOf, unitOrRing } from "./_suspicions.ts";

/** No surface changes its sag by this factor from zone to zone. */
const FAR_OFF = 3;
/** So many sessions are looked at; a folder holds far fewer. */
const MOST_GROUPS = 10_000;

/** Watches readings go by and says at the end what looks wrong. */
export class PlausibilityWatch {
  readonly #piece: Piece;
  readonly #bench: Bench;
  readonly #rings: ReadonlyMap<string, Ring>;
  readonly #groups = new Map<string, SessionGroup>();
  #group: SessionGroup | undefined;

  /** Sets the piece and the bench. */
  constructor(piece: Piece, bench: Bench) {
    this.#piece = piece;
    this.#bench = bench;
    this.#rings = new Map(bench.rings.map((ring) => [ring.id, ring]));
  }

  /** Looks at one reading. */
  see(reading: Reading): void {
    if (reading.on === "flat") return;
    let group = this.#group;
    if (
      group === undefined || group.session !== reading.session ||
      group.ring.id !== reading.ring || group.unit !== reading.unit
    ) {
      group = this.#find(reading);
      if (group === undefined) return;
    }
    const { sag, line } = reading;
    group.count++;
    group.sum += sag;
    if (sag === 0) {
      if (group.zero++ === 0) group.zeroLine = line;
      return;
    }
    if (group.first === 0) group.first = sag;
    if (sag < 0 && group.negative++ === 0) group.negativeLine = line;
    const ratio = Math.abs(sag / group.first);
    if (
      near(ratio, INCH, NEAR_INCH) || near(1 / ratio, INCH, NEAR_INCH)
    ) {
      if (group.outOfScale++ === 0) group.outOfScaleLine = line;
    } else if (ratio > FAR_OFF || ratio < 1 / FAR_OFF) {
      if (group.farOff++ === 0) {
        group.farOffLine = line;
        group.farOffSag = sag;
      }
    }
  }

  #find(reading: Reading): SessionGroup | undefined {
    const key = `${reading.session}\u0000${reading.ring}\u0000${reading.unit}`;
    let group = this.#groups.get(key);
    if (group === undefined) {
      const ring = this.#rings.get(reading.ring);
      if (ring === undefined) return undefined;
      group = {
        session: reading.session,
        ring,
        unit: reading.unit,
        file: reading.file,
        line: reading.line,
        first: 0,
        count: 0,
        sum: 0,
        negative: 0,
        negativeLine: 0,
        zero: 0,
        zeroLine: 0,
        outOfScale: 0,
        outOfScaleLine: 0,
        farOff: 0,
        farOffLine: 0,
        farOffSag: 0,
      };
      this.#groups.set(key, group);
    }
    this.#group = group;
    return group;
  }

  /** What looks wrong, once every reading has been seen. */
  problems(): Problem[] {
    const groups = [...this.#groups.values()].slice(0, MOST_GROUPS);
    const smallest = new Map<Ring, SessionGroup>();
    const largest = new Map<Ring, SessionGroup>();
    for (const group of groups) {
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
    return groups.flatMap((group) => [
      ...this.#sign(group),
      ...this.#zero(group),
      ...this.#scale(group),
      ...this.#farOff(group),
      ...unitOrRing(
        group,
        [smallest.get(group.ring), largest.get(group.ring)],
        this.#piece,
        this.#bench,
      ),
    ]);
  }

  #sign(group: SessionGroup): Problem[] {
    if (group.negative === 0) return [];
    const { form, unit } = this.#piece;
    const { countsUpOn } = this.#bench.gauge;
    const other = form === "concave" ? "convex" : "concave";
    const all = group.negative === group.count - group.zero;
    const size = Math.abs(group.sum / group.count);
    const feet = effectiveFeet(group.ring.shape, form);
    const radius = radiusOf(size, feet, form);
    const turned = countsUpOn === "declared surface"
      ? `${other}`
      : countsUpOn === form
      ? other
      : form;
    const asOther = all
      ? radiusOf(size, effectiveFeet(group.ring.shape, other), other)
      : undefined;
    const figure = all && radius !== undefined && asOther !== undefined
      ? ` Turned round, the mean is ${saidSag(size, unit)} and R ${
        saidRadius(radius, unit)
      } (as ${other} ${saidRadius(asOther, unit)})`
      : "";
    return [suspicion(
      group,
      "negative-sag",
      group.negativeLine,
      `${
        all ? "every reading" : `${group.negative} of ${group.count} readings`
      } of session ${group.session} is negative, but sag is positive for the declared surface (${form}): does the gauge count down on ${form} work, or is the work ${other}?${figure}`,
      `if the gauge counts down on ${form} work, put "counts_up_on": "${turned}" into the gauge of bench.json; if the work is ${other}, correct "form" in piece.json`,
      group.negative,
    )];
  }

  #zero(group: SessionGroup): Problem[] {
    if (group.zero === 0) return [];
    return [suspicion(
      group,
      "zero-reading",
      group.zeroLine,
      `${
        group.zero === 1 ? "a reading" : `${group.zero} readings`
      } of session ${group.session} on the work is exactly 0, as on a flat`,
      "if it was a look at the flat, write flat as its zone",
      group.zero,
    )];
  }

  #scale(group: SessionGroup): Problem[] {
    if (group.outOfScale === 0) return [];
    return [suspicion(
      group,
      "other-unit",
      group.outOfScaleLine,
      `${group.outOfScale} of ${group.count} readings of session ${group.session} differ from its first (${
        saidSag(group.first, this.#piece.unit)
      }) by about 25.4 times, the mark of inches taken for millimetres`,
      "look which unit the display showed, and write it into the unit column",
      group.outOfScale,
    )];
  }

  #farOff(group: SessionGroup): Problem[] {
    if (group.farOff === 0) return [];
    const times = Math.abs(group.farOffSag / group.first);
    const factor = times >= 1 ? times : 1 / times;
    return [suspicion(
      group,
      "far-off-reading",
      group.farOffLine,
      `${group.farOff} of ${group.count} readings of session ${group.session} lie far from its first (${
        saidSag(group.first, this.#piece.unit)
      }): ${saidSag(group.farOffSag, this.#piece.unit)} is about ${
        factor.toPrecision(2)
      } times ${
        times >= 1 ? "larger" : "smaller"
      }, more than any surface does from zone to zone`,
      "look for a slipped decimal point or a wrong unit, in this line or in the first",
      group.farOff,
    )];
  }
}
