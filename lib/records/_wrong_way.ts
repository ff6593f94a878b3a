/**
 * Sessions whose readings have the other sign than the surface should show.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { countingSign } from "./_gauge_sag.ts";
import type { Bench } from "./bench.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { saidRadius, saidSag } from "./_said_length.ts";
import {
  meanSize,
  radiusOf,
  type SessionGroup,
  suspicion,
} from "./_session_group.ts";

/** Whose readings they are. */
function whose({ session, negative, count, zero }: SessionGroup): string {
  return negative === count - zero
    ? `every reading of session ${session} is`
    : `${negative} of ${count} readings of session ${session} are`;
}

/** What the mean is when its sign is turned, for either form. */
function turnedRound(group: SessionGroup, { form, unit }: Piece): string {
  const size = meanSize(group);
  const other = form === "concave" ? "convex" : "concave";
  const { shape } = group.ring;
  const radius = radiusOf(size, effectiveFeet(shape, form), form);
  const asOther = radiusOf(size, effectiveFeet(shape, other), other);
  return radius === undefined || asOther === undefined
    ? ""
    : ` Turned round, the mean is ${saidSag(size, unit)} and R ${
      saidRadius(radius, unit)
    } (as ${other} ${saidRadius(asOther, unit)})`;
}

/**
 * Says that a session's sag is negative for the declared surface.
 *
 * The words start from what stands in the file: where the bench says that the
 * gauge counts down on such work, the doubtful readings are the positive ones.
 *
 * @param group The session.
 * @param rightWay A session of the same piece with the sign that is expected.
 * @param piece Form and unit.
 * @param bench Which way its gauge counts.
 */
export function wrongWay(
  group: SessionGroup,
  rightWay: SessionGroup | undefined,
  piece: Piece,
  { gauge }: Bench,
): Problem[] {
  if (group.mean >= 0) return [];
  const { form } = piece;
  const other = form === "concave" ? "convex" : "concave";
  const counts = "the gauge counts";
  const isTurned = countingSign(gauge, form) < 0;
  const message = isTurned
    ? `positive, but “counts_up_on” of bench.json says that ${counts} down on ${form} work: does it count up there, or is the work ${other}?`
    : `negative, but sag is positive for the declared surface (${form}): does the gauge count down on ${form} work, or is the work ${other}?`;
  const mends = [
    ...(rightWay === undefined
      ? [
        `if ${counts} ${
          isTurned ? "up" : "down"
        } on ${form} work, put "counts_up_on": "${
          isTurned ? form : other
        }" into the gauge of bench.json`,
      ]
      : [
        `session ${rightWay.session} has the other sign: if both are of one surface, write the sign one way in all sessions`,
      ]),
    `if the work is ${other}, correct "form" in piece.json`,
  ];
  return [suspicion(
    group,
    "negative-sag",
    group.negativeLine,
    `${whose(group)} ${message}${turnedRound(group, piece)}`,
    mends.join("; "),
    group.negative,
  )];
}
