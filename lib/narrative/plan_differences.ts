/**
 * How radii differ between zones, dates and rings, in words.
 *
 * @module
 */
import { ringName, ringNameFirst } from "../records/ring_name.ts";
import type { Bench } from "../records/bench.ts";
import type { LengthUnit, Piece } from "../records/piece.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { radiusBudget } from "../uncertainty/radius_budget.ts";
import {
  type RadiusDifference,
  radiusDifference,
} from "../uncertainty/radius_difference.ts";
import { formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { twoFigures } from "./plan_words.ts";
import { measurementOf } from "./radius_statement.ts";

/** Two radii that were compared, and what for. */
export interface ComparedRadii extends RadiusDifference {
  /** What sets them apart. */
  readonly between: "zones" | "dates" | "rings";
  /** Name of the first: a zone, a session, a ring. */
  readonly first: string;
  /** Name of the second. */
  readonly second: string;
}

/**
 * Compares the last session's radii: centre with the outermost zone, with the
 * session before read by the same ring, and with another ring's.
 *
 * What both radii of a pair share (ring, balls, gauge scale, flat; within a
 * session the zero) is taken off by its sign before anything is squared.
 * Between zones it rests on the differences within sets, with the interval
 * that the verdict on the shape uses. Between dates and rings the centre
 * counts, since the shape may have changed, or be no sphere.
 *
 * @param session The session.
 * @param sessions Every session, in order.
 * @param piece The piece.
 * @param bench The bench.
 * @returns One entry for each pair that can be compared.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function compareRadii(
  session: SessionAnalysis,
  sessions: readonly SessionAnalysis[],
  piece: Pick<Piece, "form">,
  bench: Bench,
): readonly ComparedRadii[] {
  const centre = (one: SessionAnalysis) =>
    radiusBudget(measurementOf(one, piece, bench, "centre")).estimate;
  const found: ComparedRadii[] = [];
  const zones = betweenZones(session, piece, bench);
  if (zones) found.push(zones);
  const mine = centre(session);
  if (mine === undefined) return found;
  const at = sessions.indexOf(session);
  const before = sessions.slice(0, at).findLast((one) =>
    one.ring.id === session.ring.id && one.session !== session.session
  );
  const others = sessions.filter((one) =>
    one.session === session.session && one.ring.id !== session.ring.id
  );
  const pairs = [
    ...(before ? [{ between: "dates" as const, other: before }] : []),
    ...others.map((other) => ({ between: "rings" as const, other })),
  ];
  for (const { between, other } of pairs) {
    const theirs = centre(other);
    const apart = theirs && radiusDifference(mine, theirs);
    if (apart === undefined) continue;
    const name = (one: SessionAnalysis) =>
      between === "dates" ? one.session : one.ring.id;
    found.push({
      ...apart,
      between,
      first: name(session),
      second: name(other),
    });
  }
  return found;
}

function betweenZones(
  session: SessionAnalysis,
  piece: Pick<Piece, "form">,
  bench: Bench,
): ComparedRadii | undefined {
  const { zones, differences } = session;
  const last = zones.length - 1;
  const within = differences.find(({ first, second }) =>
    Math.min(first, second) === 0 && Math.max(first, second) === last
  );
  if (last < 1 || within?.interval95 === undefined) return undefined;
  const { low, high } = within.interval95;
  const { dof } = within;
  const own = (high - low) / 2 / studentTQuantile(0.025, dof, "upper");
  const measured = measurementOf(session, piece, bench, "centre");
  const estimate = (zone: number, own: number) =>
    radiusBudget({
      ...measured,
      // Zero, drift and rounding are in the difference within sets already.
      step: millimetres(0),
      drift: { standardUncertainty: 0 },
      sag: { value: zones[zone].mean.sag, own, dof, common: {} },
    }).estimate;
  const [edge, centre] = [estimate(last, own), estimate(0, 0)];
  const alone = [0, last].flatMap((zone) => {
    const { mean } = zones[zone];
    return radiusBudget({
      ...measured,
      roundingShare: mean.rounding,
      sag: {
        value: mean.sag,
        own: mean.standardError ?? 0,
        dof: Math.max(1, mean.dof),
        common: {},
      },
    }).expanded ?? [];
  });
  // A radius without a ± has none to compare with, and not one of 0.
  if (alone.length < 2) return undefined;
  const apart = edge && centre && radiusDifference(edge, centre);
  return apart && {
    ...apart,
    asIfIndependent: Math.hypot(...alone),
    between: "zones",
    first: zones[last].place.label,
    second: zones[0].place.label,
  };
}

/**
 * Says how two radii differ, and what they share.
 *
 * @param compared The two radii.
 * @param unit The user's unit.
 * @returns One sentence.
 *
 * @example Case of two zones with one ring and one zero
 * ```ts
 * import { differenceSentence } from "sagbook/narrative/plan_differences.ts";
 * import { equal } from "node:assert/strict";
 *
 * const text = differenceSentence({
 *   between: "zones", first: "edge", second: "centre", difference: 7.0607,
 *   standardUncertainty: 2.4964, expanded: 4.893, normalisedError: 1.44,
 *   asIfIndependent: 11.9, shared: ["ring A radius"],
 * }, "mm");
 * equal(
 *   text.replaceAll("\u00a0", " "),
 *   "R is 7.1 ± 4.9 mm longer at edge than at centre: ring, gauge and zero are the same for both and cancel (taken as independent they would make it ± 12 mm).",
 * );
 * ```
 */
export function differenceSentence(
  compared: ComparedRadii,
  unit: LengthUnit,
): string {
  const { difference, expanded, normalisedError, asIfIndependent, shared } =
    compared;
  const { between, first, second } = compared;
  const size = formatWithUncertainty(
    millimetres(Math.abs(difference)),
    millimetres(expanded),
    unit,
  );
  const way = difference < 0 ? "shorter" : "longer";
  const loose = asIfIndependent > 1.05 * expanded
    ? ` (taken as independent they would make it ± ${
      twoFigures(asIfIndependent, unit)
    })`
    : "";
  const shows = normalisedError > 1;
  if (between === "zones") {
    const words = shows
      ? `R is ${size} ${way} at ${first} than at ${second}`
      : `R at ${first} and at ${second} differs by ${size}, no difference that shows`;
    return `${words}: ring, gauge and zero are the same for both and cancel${loose}.`;
  }
  if (between === "dates") {
    const words = shows
      ? `R is ${size} ${way} than in ${second}`
      : `R differs from ${second} by ${size}, no change that shows`;
    return `${words}: the ring is the same, so its error and the gauge's are common to both and cancel as far as they do${loose}.`;
  }
  const [one, other] = [ringNameFirst(first), ringName(second)];
  const common = shared.length === 0
    ? "they share nothing"
    : `what both share (${shared.join(", ")}) is taken off first`;
  return normalisedError <= 1
    ? `${one} and ${other} agree on this surface: R differs by ${size} (E_n ${
      normalisedError.toFixed(2)
    }); ${common}.`
    : `${one} and ${other} do not agree on this surface: R is ${size} ${way} with ${
      ringName(first)
    } (E_n ${
      normalisedError.toFixed(2)
    }, above 1); ${common}. Look for a wrong ring size, or a surface that is not a sphere.`;
}
