/**
 * Readings that would make more sense as something else.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { Feet, SurfaceForm } from "../geometry/feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Bench, Ring } from "./bench.ts";
import type { LengthUnit, Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";

/** The readings of one session under one ring in one unit. */
interface Group {
  readonly session: string;
  readonly ring: Ring;
  readonly unit: LengthUnit;
  readonly file: string;
  readonly line: number;
  readonly first: number;
  count: number;
  sum: number;
  negative: number;
  negativeLine: number;
  zero: number;
  zeroLine: number;
  outOfScale: number;
  outOfScaleLine: number;
}

const INCH = 25.4;
/** How near a factor must come to 25.4 to be the mark of inches. */
const NEAR_INCH = 0.15;
/** How near a factor must come to a ring mix-up's. */
const NEAR_RING = 0.03;
/** A radius within this factor of a nominal one raises no suspicion. */
const PLAUSIBLE = 1.35;

const near = (ratio: number, factor: number, within: number) =>
  Math.abs(ratio / factor - 1) <= within;
const mm = (value: number, digits: number) => `${value.toFixed(digits)} mm`;

/** Watches readings go by and says at the end what looks wrong. */
export class PlausibilityWatch {
  readonly #piece: Piece;
  readonly #bench: Bench;
  readonly #rings: ReadonlyMap<string, Ring>;
  readonly #groups = new Map<string, Group>();
  #group: Group | undefined;

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
    if (sag < 0 && group.negative++ === 0) group.negativeLine = line;
    const ratio = Math.abs(sag / group.first);
    if (
      near(ratio, INCH, NEAR_INCH) || near(1 / ratio, INCH, NEAR_INCH)
    ) {
      if (group.outOfScale++ === 0) group.outOfScaleLine = line;
    }
  }

  #find(reading: Reading): Group | undefined {
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
        first: reading.sag,
        count: 0,
        sum: 0,
        negative: 0,
        negativeLine: 0,
        zero: 0,
        zeroLine: 0,
        outOfScale: 0,
        outOfScaleLine: 0,
      };
      this.#groups.set(key, group);
    }
    this.#group = group;
    return group;
  }

  #feet(ring: Ring): Feet {
    return effectiveFeet(ring.shape, this.#piece.form);
  }

  #radius(
    sag: number,
    feet: Feet,
    form: SurfaceForm = this.#piece.form,
  ): Millimetres | undefined {
    if (!(sag > 0) || sag > feet.circleRadius) return undefined;
    return radiusFromSag(millimetres(sag), feet, form);
  }

  #sag(radius: Millimetres, feet: Feet): number | undefined {
    try {
      return sagFromRadius(radius, feet, this.#piece.form);
    } catch {
      return undefined;
    }
  }

  /** What looks wrong, once every reading has been seen. */
  problems(): Problem[] {
    const groups = [...this.#groups.values()];
    return groups.slice(0, 500).flatMap((group) => [
      ...this.#sign(group),
      ...this.#zero(group),
      ...this.#scale(group),
      ...this.#unitOrRing(group, groups),
    ]);
  }

  #warn(
    group: Group,
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

  #sign(group: Group): Problem[] {
    if (group.negative === 0) return [];
    const { form } = this.#piece;
    const { countsUpOn } = this.#bench.gauge;
    const other = form === "concave" ? "convex" : "concave";
    const all = group.negative === group.count - group.zero;
    const size = Math.abs(group.sum / group.count);
    const feet = this.#feet(group.ring);
    const radius = this.#radius(size, feet);
    const turned = countsUpOn === "declared surface"
      ? `${other}`
      : countsUpOn === form
      ? other
      : form;
    const asOther = all
      ? this.#radius(size, effectiveFeet(group.ring.shape, other), other)
      : undefined;
    const figure = all && radius !== undefined && asOther !== undefined
      ? ` Turned round, the mean is ${mm(size, 6)} and R ${
        mm(radius, 3)
      } (as ${other} ${mm(asOther, 3)})`
      : "";
    return [this.#warn(
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

  #zero(group: Group): Problem[] {
    if (group.zero === 0) return [];
    return [this.#warn(
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

  #scale(group: Group): Problem[] {
    if (group.outOfScale === 0) return [];
    return [this.#warn(
      group,
      "other-unit",
      group.outOfScaleLine,
      `${group.outOfScale} of ${group.count} readings of session ${group.session} differ from its first (${
        mm(group.first, 5)
      }) by about 25.4 times, the mark of inches taken for millimetres`,
      "look which unit the display showed, and write it into the unit column",
      group.outOfScale,
    )];
  }

  #unitOrRing(group: Group, groups: readonly Group[]): Problem[] {
    const mean = Math.abs(group.sum / group.count);
    const feet = this.#feet(group.ring);
    const radius = this.#radius(mean, feet);
    if (radius === undefined && mean <= feet.circleRadius) return [];
    const problems: Problem[] = [];
    const { target, startingRadius } = this.#piece;
    const nominal = [target?.radius, startingRadius]
      .filter((r) => r !== undefined)
      .map((r) => this.#sag(r, feet)).filter((s) => s !== undefined);
    const lowest = Math.min(...nominal) / PLAUSIBLE;
    const highest = Math.max(...nominal) * PLAUSIBLE;
    const fits = (sag: number) => sag >= lowest && sag <= highest;
    const other = group.unit === "mm"
      ? { factor: INCH, name: "inches" }
      : { factor: 1 / INCH, name: "millimetres" };
    const asOther = mean * other.factor;
    const unlike = groups.find((one) =>
      one !== group && one.ring === group.ring &&
      near(
        Math.abs(one.sum / one.count) / mean,
        other.factor,
        NEAR_INCH,
      )
    );
    const suspect = nominal.length > 0
      ? !fits(mean) && fits(asOther)
      : unlike !== undefined;
    if (suspect) {
      const then = this.#radius(asOther, feet);
      const compared = unlike === undefined ? "" : `, ${
        (Math.max(
          Math.abs(unlike.sum / unlike.count) / mean,
          mean / Math.abs(unlike.sum / unlike.count),
        )).toFixed(2)
      } times away from session ${unlike.session}`;
      problems.push(this.#warn(
        group,
        "other-unit",
        group.line,
        `session ${group.session} reads like ${other.name} written down as ${
          group.unit === "mm" ? "millimetres" : "inches"
        }${compared}: as entered the mean sag is ${mm(mean, 5)} (R ${
          radius === undefined ? "none" : mm(radius, 3)
        }), as ${other.name} ${mm(asOther, 5)} (R ${
          then === undefined ? "none" : mm(then, 3)
        })`,
        "say which: write the right unit into the unit column; nothing was changed",
        group.count,
      ));
      return problems;
    }
    if (nominal.length === 0 || fits(mean) || radius === undefined) {
      return problems;
    }
    return this.#ringSuspicions(group, feet, radius, mean);
  }

  #ringSuspicions(
    group: Group,
    feet: Feet,
    radius: number,
    mean: number,
  ): Problem[] {
    const wanted = this.#piece.target?.radius ??
      this.#piece.startingRadius as Millimetres;
    const ratio = radius / wanted;
    const suspicions = [
      [4, 2, "its foot circle's diameter", "the diameter for the radius"],
      [
        3,
        Math.sqrt(3),
        "the spacing of its feet",
        "the spacing for the radius",
      ],
      [
        1 / 4,
        1 / 2,
        "half its foot circle's radius",
        "the radius for the diameter",
      ],
    ] as const;
    const found: Problem[] = [];
    for (const [factor, part, what, words] of suspicions) {
      if (!near(ratio, factor, NEAR_RING)) continue;
      const circle = feet.circleRadius / part;
      const then = this.#radius(mean, {
        circleRadius: millimetres(circle),
        ballRadius: feet.ballRadius,
      });
      found.push(this.#warn(
        group,
        "ring-size",
        group.line,
        `with ring ${group.ring.id} session ${group.session} gives R ${
          mm(radius, 3)
        }, ${ratio.toFixed(2)} times the nominal ${
          mm(wanted, 0)
        }: is the radius given for the ring (${
          mm(feet.circleRadius, 3)
        }) really ${what}? Then r is ${mm(circle, 3)} and R ${
          then === undefined ? "none" : mm(then, 3)
        }`,
        `look whether bench.json takes ${words} of ring ${group.ring.id}; nothing was changed`,
      ));
    }
    for (const ring of this.#bench.rings) {
      if (ring === group.ring) continue;
      const theirs = this.#feet(ring);
      const then = this.#radius(mean, theirs);
      if (then === undefined || !near(then, wanted, NEAR_RING)) continue;
      found.push(this.#warn(
        group,
        "other-ring",
        group.line,
        `with ring ${group.ring.id} session ${group.session} gives R ${
          mm(radius, 3)
        }; with ring ${ring.id} it would be ${
          mm(then, 3)
        }, close to the nominal ${mm(wanted, 0)}`,
        `look which ring was on the gauge; nothing was changed`,
      ));
    }
    return found;
  }
}
