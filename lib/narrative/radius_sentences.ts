/**
 * The radius, and how it came about, in words.
 *
 * @module
 */
import type { Piece } from "../records/piece.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import type { SessionAnalysis, ZoneSummary } from "../zones/analyse_session.ts";
import { type RadiusStatement, writeRadius } from "./radius_statement.ts";

const COVERS: Record<RadiusStatement["covers"], string> = {
  everything: "",
  repeating: ", from repeating alone",
  nothing: "",
};

/** A zone's radius with the interval of repeating alone. */
export function writeZoneRadius(
  { radius, mean }: ZoneSummary,
  unit: Piece["unit"],
): string {
  if (radius === undefined) return "none";
  const { radius: value, interval95 } = radius;
  const expanded = interval95 &&
    millimetres(Math.max(interval95.high - value, value - interval95.low));
  return writeRadius({
    radius: value,
    ...(expanded === undefined ? {} : { expanded }),
    dof: mean.dof,
    over: "centre",
    covers: "repeating",
  }, unit);
}

/**
 * Says what the radius is, and how sure.
 *
 * @param session The session.
 * @param piece The piece.
 * @param radius The radius stated, where there is one.
 * @returns One sentence, two where a focal length follows.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function radiusSentence(
  session: SessionAnalysis,
  piece: Piece,
  radius: RadiusStatement | undefined,
): string {
  const { unit, form } = piece;
  const { zones, sphericity } = session;
  if (radius === undefined) {
    const { sag } = zones[0].mean;
    return `No radius can be worked out: the mean sag is ${
      formatLength(millimetres(sag), unit, unit === "mm" ? 4 : 5)
    }, and only a sag above 0 (counted positive for the declared ${form} surface) has one.`;
  }
  if (sphericity.verdict === "outside" && zones.length > 1) {
    const places = [zones[0], zones[zones.length - 1]].map((zone) =>
      `${writeZoneRadius(zone, unit)} at ${zone.place.label}`
    );
    return `There is no one radius: it is ${places.join(" and ")}.`;
  }
  const sure = radius.expanded === undefined
    ? " (from too little to say how sure)"
    : ` (95 % sure${COVERS[radius.covers]})`;
  const where = radius.over === "centre" && zones.length > 1
    ? " at the centre"
    : "";
  const focal = form === "concave"
    ? `, a focal length of ${writeRadius(radius, unit, 0.5)}`
    : "";
  return `The radius of curvature${where} is ${
    writeRadius(radius, unit)
  }${sure}${focal}.`;
}

/**
 * Says how the radius came about: readings, ring, ball.
 *
 * @param session The session.
 * @param piece The piece.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function radiusReasons(
  session: SessionAnalysis,
  piece: Piece,
): readonly string[] {
  const { ring, feet, readings, sets, whole, zones } = session;
  const { unit, form } = piece;
  const write = (length: number, decimals: number): string =>
    formatLength(
      millimetres(length),
      unit,
      unit === "mm" ? decimals : decimals + 1,
    );
  const count = (n: number, what: string): string =>
    `${n} ${what}${n === 1 ? "" : "s"}`;
  const reasons = [
    `${count(readings.length, "reading")} in ${count(sets.length, "set")} and ${
      count(whole.mean.zeroings, "zeroing")
    } of session ${session.session}, with ${ring.id} (foot circle radius ${
      write(feet.circleRadius, 3)
    }${
      feet.ballRadius === 0
        ? ", no balls"
        : `, ball radius ${write(feet.ballRadius, 3)}`
    }).`,
  ];
  const { radius, mean } = zones[0];
  if (radius !== undefined) {
    const sign = form === "concave" ? "+" : "−";
    const without = radius.radius -
      (form === "concave" ? 1 : -1) * feet.ballRadius;
    reasons.push(
      feet.ballRadius === 0
        ? `At ${zones[0].place.label}: mean sag ${
          write(mean.sag, 4)
        }, so R = (r² + s²)/(2s) = ${write(without, 1)}.`
        : `At ${zones[0].place.label}: mean sag ${
          write(mean.sag, 4)
        }, so (r² + s²)/(2s) = ${
          write(without, 1)
        }; the balls touch a ${form} surface one ball radius from their centres, so R = ${
          write(without, 1)
        } ${sign} ${write(feet.ballRadius, 3)} = ${write(radius.radius, 1)}.`,
      `One ${unit === "mm" ? "µm" : "thou"} of sag is ${
        write(Math.abs(radius.perSag) * (unit === "mm" ? 0.001 : 0.0254), 1)
      } of radius here.`,
    );
  }
  return reasons;
}
