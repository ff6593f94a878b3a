/**
 * Readings that cannot stand beside the others of their session, in words.
 *
 * @module
 */
import { ringName } from "./ring_name.ts";
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { Bench, Ring } from "./bench.ts";
import { countingSign } from "./_gauge_sag.ts";
import { INCH, near, type OddKind, type OddReadings } from "./_odd_levels.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { meanOf } from "./_sag_levels.ts";
import { saidRadius, saidSag } from "./_said_length.ts";
import {
  meanSize,
  NEAR_RING,
  radiusOf,
  type SessionGroup,
  suspicion,
} from "./_session_group.ts";

const CODES: Readonly<Record<OddKind, string>> = {
  sign: "negative-sag",
  inches: "other-unit",
  thousandths: "other-unit",
  "decimal point": "far-off-reading",
  turn: "turn-of-the-dial",
  "far off": "far-off-reading",
  apart: "far-off-reading",
};

const timesOf = ({ level, usual }: OddReadings) => {
  const ratio = Math.abs(meanOf(level) / usual);
  return ratio >= 1
    ? { times: ratio, which: "larger" }
    : { times: 1 / ratio, which: "smaller" };
};

/** The ring under which the readings would fit the others. */
function fittingRing(
  { level }: OddReadings,
  group: SessionGroup,
  { form }: Piece,
  { rings }: Bench,
): Ring | undefined {
  const radiusUnder = (sag: number, ring: Ring) =>
    radiusOf(sag, effectiveFeet(ring.shape, form), form);
  const usual = radiusUnder(meanSize(group), group.ring);
  return rings.find((ring) => {
    if (ring === group.ring || usual === undefined) return false;
    const radius = radiusUnder(Math.abs(meanOf(level)), ring);
    return radius !== undefined && near(radius, usual, NEAR_RING);
  });
}

function words(
  found: OddReadings,
  many: boolean,
  group: SessionGroup,
  piece: Piece,
  bench: Bench,
): readonly [string, string] {
  const { kind, usual, turn, level } = found;
  const { unit } = piece;
  const others = `its others (${saidSag(usual, unit)})`;
  const first = saidSag(level.sag, unit);
  const { times, which } = timesOf(found);
  switch (kind) {
    case "sign": {
      // In the signs of the file: a gauge that counts down shows a minus.
      const counts = countingSign(bench.gauge, piece.form);
      const shown = (sag: number) => saidSag(counts * sag, unit);
      return [
        `${many ? "have" : "has"} the other sign than its others (${
          shown(usual)
        }): ${shown(level.sag)}; all readings of one surface have one sign`,
        "look at the sign of those lines, and whether they are of this piece",
      ];
    }
    case "inches":
    case "thousandths": {
      const factor = kind === "inches" ? INCH : 1000 / INCH;
      const what = kind === "inches" ? "inches" : "thousandths of an inch";
      const as = saidSag(
        which === "smaller" ? level.sag * factor : level.sag / factor,
        unit,
      );
      return [
        `${many ? "differ" : "differs"} from ${others} by about ${
          kind === "inches" ? "25.4" : "39.4"
        } times, the mark of ${what} taken for millimetres: ${first}, with the other unit ${as}`,
        "look which unit the display showed, and write it into the unit column",
      ];
    }
    case "turn":
      return [
        `${many ? "differ" : "differs"} from ${others} by ${
          saidSag(Math.abs(turn ?? 0), unit)
        }, a round amount such as a full turn of a dial: ${first}`,
        "count the turns of the small hand and read again, or withdraw the lines; nothing was changed",
      ];
    case "apart": {
      const ring = fittingRing(found, group, piece, bench);
      return [
        `${many ? "stand" : "stands"} far from what was read there otherwise (${
          saidSag(usual, unit)
        }): ${first}${
          ring === undefined
            ? ""
            : `; under ${ringName(ring.id)} that would be the same surface`
        }`,
        ring === undefined
          ? "look for exchanged figures, grit under a foot, a knocked gauge or another ring, and read again; nothing was changed"
          : "look which ring was on the gauge; nothing was changed",
      ];
    }
    default: {
      const ring = fittingRing(found, group, piece, bench);
      return [
        `${many ? "lie" : "lies"} far from ${others}: ${first} is about ${
          Number(times.toPrecision(2))
        } times ${which}, more than any surface does from zone to zone${
          ring === undefined
            ? ""
            : `; under ${ringName(ring.id)} it would be the same surface`
        }`,
        ring === undefined
          ? "look for a slipped decimal point or a wrong unit in this line"
          : "look which ring was on the gauge",
      ];
    }
  }
}

/** A radius that the whole session would have without what is odd in it. */
function without(group: SessionGroup, { form, unit }: Piece): string {
  const feet = effectiveFeet(group.ring.shape, form);
  const radius = radiusOf(group.mean, feet, form);
  return radius === undefined
    ? ""
    : `. Without ${
      group.odd.reduce((n, { level }) => n + level.count, 0) === 1
        ? "it"
        : "them"
    } the mean sag is ${saidSag(group.mean, unit)} (R ${
      saidRadius(radius, unit)
    })`;
}

/** Says what is odd in a session, once for each kind. */
export function sayOdd(
  group: SessionGroup,
  piece: Piece,
  bench: Bench,
): Problem[] {
  const kinds = new Map<string, OddReadings[]>();
  for (const one of group.odd) {
    const key = `${one.kind} ${one.turn ?? ""}`;
    kinds.set(key, [...(kinds.get(key) ?? []), one]);
  }
  return [...kinds.values()].map((found) => {
    const count = found.reduce((sum, { level }) => sum + level.count, 0);
    const first = found.reduce((a, b) => b.level.line < a.level.line ? b : a);
    const { zeroing } = first.level;
    const all = found.every(({ level }) => level.zeroing === zeroing) &&
      zeroing !== undefined && count > 1;
    const [message, mend] = words(first, count > 1, group, piece, bench);
    return suspicion(
      group,
      CODES[first.kind],
      first.level.line,
      `${count} of ${group.count} readings of session ${group.session}${
        all ? `, all of one zeroing,` : ""
      } ${message}${without(group, piece)}`,
      mend,
      count,
    );
  });
}
