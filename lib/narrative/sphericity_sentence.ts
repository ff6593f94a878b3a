/**
 * The verdict on sphericity in a practitioner's words.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { nearest } from "../zones/sphericity.ts";
import type { SagTolerance } from "../zones/tolerance.ts";
import { writeDifference, writeSmall } from "./sag_words.ts";

/** A tolerance as the user stated it. */
export function writeTolerance(
  { stated, sag }: SagTolerance,
  unit: LengthUnit,
): string {
  const amount = writeSmall(stated.amount, unit);
  switch (stated.statedAs) {
    case "sag":
      return `${amount} of sag`;
    case "surface":
      return `${amount} of surface (${writeSmall(sag, unit)} of sag here)`;
    case "radius":
      return `${amount} of radius (${writeSmall(sag, unit)} of sag here)`;
  }
}

/**
 * Says whether the surface is a sphere and how sure that is.
 *
 * @param session The session.
 * @param unit The user's unit.
 * @returns One or two sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function sphericitySentence(
  session: Pick<
    SessionAnalysis,
    "sphericity" | "zones" | "differences" | "sets" | "ends"
  >,
  unit: LengthUnit,
): string {
  const { sphericity, zones, ends } = session;
  const { verdict, tolerance, deciding, byEnds, agreeWithin } = sphericity;
  const words = tolerance && writeTolerance(tolerance, unit);
  const pair = deciding && {
    first: zones[deciding.first].place.label,
    second: zones[deciding.second].place.label,
  };
  if (verdict === "within") {
    const limited = sphericity.displayLimited
      ? ", which is the display's limit and not the surface's"
      : "";
    return `It is a sphere within ${words}, as far as three feet can tell: all zones agree within ${
      writeSmall(agreeWithin!, unit)
    }${limited} (each pair tested at 5 %).`;
  }
  if (verdict === "outside") {
    if (byEnds || !deciding || !pair) {
      return `It is not a sphere within ${words}: the two ends of a diameter differ by ${
        writeSmall(ends!.amplitude, unit)
      } of sag.`;
    }
    const more = deciding.mean > 0
      ? [pair.first, pair.second]
      : [pair.second, pair.first];
    return `It is not a sphere within ${words}: ${more[0]} reads ${
      writeDifference(deciding.mean, deciding.simultaneous95, unit)
    } more sag than ${more[1]} (95 %, all pairs of zones together).`;
  }
  if (verdict === "undecided") {
    if (byEnds) {
      return `Whether it is a sphere within ${words} is not decided: the two ends of a diameter may differ by more (${
        ends?.upper === undefined
          ? "too few were read to say"
          : `up to ${writeSmall(ends.upper, unit)}`
      }).`;
    }
    return `Whether it is a sphere within ${words} is not decided: ${
      pair
        ? `${pair.first} and ${pair.second} differ by ${
          writeDifference(deciding!.mean, deciding!.interval90, unit)
        } (90 %)`
        : "too little was read"
    }.`;
  }
  return noVerdict(session, unit);
}

function noVerdict(
  session: Pick<SessionAnalysis, "sphericity" | "zones" | "differences">,
  unit: LengthUnit,
): string {
  const { sphericity, zones } = session;
  const { agreeWithin } = sphericity;
  switch (sphericity.reason) {
    case "one zone":
      return `Only ${
        zones[0].place.label
      } was read, so nothing can be said about the shape.`;
    case "one set":
      return "One set cannot tell a difference between zones from scatter, so nothing is said about the shape.";
    case "no common sets":
      return "No set holds two zones, so differences between zones carry the zero of both and nothing is said about the shape.";
    case "tolerance needs an off-centre zone":
      return "The tolerance for a sphere is stated as surface error and only the centre was read, so nothing can be said about the shape.";
    default: {
      const apart = differing(session, unit);
      if (agreeWithin === undefined) {
        return `No tolerance for a sphere was stated.${apart}`;
      }
      return `No tolerance for a sphere was stated; these readings would pass one of ${
        writeSmall(agreeWithin, unit)
      } of sag or more.${apart}`;
    }
  }
}

/** The zones that differ for certain, where some do. */
function differing(
  { differences, zones }: Pick<SessionAnalysis, "differences" | "zones">,
  unit: LengthUnit,
): string {
  const sure = [...differences]
    .filter(({ simultaneous95 }) =>
      simultaneous95 !== undefined && nearest(simultaneous95) > 0
    )
    .sort((a, b) => Math.abs(b.mean) - Math.abs(a.mean))[0];
  if (!sure) return "";
  const labels = [sure.first, sure.second].map((k) => zones[k].place.label);
  const [more, less] = sure.mean > 0 ? labels : labels.reverse();
  return ` The zones do differ: ${more} reads ${
    writeDifference(sure.mean, sure.simultaneous95, unit)
  } more sag than ${less} (95 %, all pairs of zones together).`;
}
