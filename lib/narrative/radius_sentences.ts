/**
 * The radius, and how it came about, in words.
 *
 * @module
 */
import { ringName } from "../records/ring_name.ts";
import type { Piece } from "../records/piece.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { coverageFactorOf, type RadiusStatement } from "./radius_statement.ts";
import { writeSmall } from "./sag_words.ts";
import { writeRadii, writeRadius } from "./write_radius.ts";
import { zoneInWords } from "./zone_words.ts";
import { standsToTarget } from "./target_words.ts";

/**
 * Says what the radius is, and how sure.
 *
 * @param session The session.
 * @param piece The piece.
 * @param radius The radius stated, where there is one.
 * @param cameFrom An earlier radius in mm, which tells whether a target has
 * been passed; the piece's starting radius unless given.
 * @returns One sentence, two where a focal length follows.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function radiusSentence(
  session: SessionAnalysis,
  piece: Piece,
  radius: RadiusStatement | undefined,
  cameFrom: number | undefined = piece.startingRadius,
): string {
  const { unit, form } = piece;
  const { zones, sphericity } = session;
  if (radius === undefined) {
    const { sag } = zones[0].mean;
    if (Math.abs(sag) <= session.step) {
      return "No radius can be worked out: the work reads like the flat, as near as the display can tell.";
    }
    const shown = formatLength(millimetres(sag), unit, unit === "mm" ? 4 : 5);
    const where = zones.length > 1 ? ` at ${zoneInWords(zones[0])}` : "";
    return sag > 0
      ? `No radius can be worked out: the mean sag${where} is ${shown}, more than the foot circle's radius, and no surface has that.`
      : `No radius can be worked out: the mean sag${where} is ${shown}, and only a sag above 0 (counted positive for the declared ${form} surface) has one.`;
  }
  const { verdict, byEnds } = sphericity;
  const { other } = radius;
  if (verdict === "outside" && !byEnds && other && zones.length > 1) {
    const [inner, outer] = writeRadii([radius, other], unit);
    return `There is no one radius: it is ${inner} at ${
      zones[0].place.label
    } and ${outer} at ${zones[other.zone].place.label} (95 % sure each).`;
  }
  const sure = radius.covers === "everything"
    ? "95 % sure"
    : "for ring, gauge and display; one zeroing does not show how the zero scatters";
  const where = radius.over === "centre" && zones.length > 1
    ? ` at ${zoneInWords(zones[0])}`
    : "";
  // Half the radius is the focal length of a mirror, not of a lens.
  const focal = form === "concave" && piece.lens === undefined
    ? `, a focal length of ${writeRadius(radius, unit, 0.5)}`
    : "";
  return `The radius of curvature${where} is ${
    writeRadius(radius, unit)
  } (${sure})${focal}${toTarget(radius, piece, cameFrom)}.`;
}

/** How the radius lies to its target, where both are known. */
function toTarget(
  radius: RadiusStatement,
  { target, unit }: Piece,
  cameFrom: number | undefined,
): string {
  if (target === undefined) return "";
  const off = radius.radius - target.radius;
  const past = cameFrom !== undefined &&
    Math.sign(cameFrom - target.radius) === -Math.sign(off);
  return `; ${standsToTarget(radius, target, unit, past)}`;
}

/**
 * Says how the radius came about: readings, ring, ball.
 *
 * @param session The session.
 * @param piece The piece.
 * @param over The sag that the stated radius rests on; the centre's unless
 * told.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function radiusReasons(
  session: SessionAnalysis,
  piece: Piece,
  over: RadiusStatement["over"] = "centre",
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
    } of session ${session.session}, with ${
      ringName(ring.id)
    } (foot circle radius ${write(feet.circleRadius, 3)}${
      feet.ballRadius === 0
        ? ", no balls"
        : `, ball radius ${write(feet.ballRadius, 3)}`
    }).`,
  ];
  const from = over === "all zones" ? whole : zones[0];
  const { radius, mean } = from;
  if (mean.people !== undefined) {
    reasons.push(
      `${mean.people} people read, and their means lie farther apart than their zeroings explain: each person counts as one look, however many sets that person read.`,
    );
  }
  const where = over === "all zones"
    ? "Over all zones"
    : `At ${zones[0].place.label}`;
  if (radius !== undefined) {
    const sign = form === "concave" ? "+" : "−";
    const without = radius.radius -
      (form === "concave" ? 1 : -1) * feet.ballRadius;
    const perSag = Math.abs(radius.perSag);
    const step = unit === "mm" ? 0.001 : 0.0254;
    // On a steep surface a step of sag is a small part of a millimetre of R.
    const decimals = Math.min(
      3,
      Math.max(1, Math.ceil(-Math.log10(perSag * 0.001))),
    );
    reasons.push(
      feet.ballRadius === 0
        ? `${where}: mean sag ${write(mean.sag, 4)}, so R = (r² + s²)/(2s) = ${
          write(without, decimals)
        }.`
        : `${where}: mean sag ${write(mean.sag, 4)}, so (r² + s²)/(2s) = ${
          write(without, decimals)
        }; the balls touch a ${form} surface one ball radius from their centres, so R = ${
          write(without, decimals)
        } ${sign} ${write(feet.ballRadius, 3)} = ${
          write(radius.radius, decimals)
        }.`,
      `One ${unit === "mm" ? "µm" : "thou"} of sag is ${
        perSag * step < 0.1
          ? writeSmall(perSag * step, unit)
          : write(perSag * step, 1)
      } of radius here.`,
    );
  }
  return reasons;
}

/**
 * Says where the uncertainty of the radius comes from.
 *
 * @param statement The radius stated.
 * @param unit The user's unit.
 * @returns Sentences, the largest source first.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function budgetReasons(
  statement: RadiusStatement,
  unit: Piece["unit"],
): readonly string[] {
  const { budget, expanded } = statement;
  const ranked = [...budget.lines].sort((a, b) => b.share - a.share)
    .filter(({ share }) => share >= 0.005).slice(0, 4);
  if (ranked.length === 0) return [];
  const parts = ranked.map(({ source, share }) =>
    `${source} ${Math.round(100 * share)} %`
  );
  // The statement's own ±; where it has none, the ends stand uneven.
  const { dof } = budget;
  const spread = expanded === undefined
    ? ""
    : ` ± ${writeLengthFigures(expanded, unit)} is ${
      coverageFactorOf(statement).toFixed(2)
    } standard uncertainties (${
      Number.isFinite(dof) && dof < 1000
        ? `${
          dof < 10 ? dof.toFixed(1) : Math.round(dof)
        } effective degrees of freedom`
        : "degrees of freedom beyond counting"
    }).`;
  const notes = [
    ...(budget.notCounted.length > 0
      ? [
        `Not counted, since nothing is known of it: ${
          budget.notCounted.join("; ")
        }.`,
      ]
      : []),
    ...(budget.assumed.length > 0
      ? [
        `Assumed, since the bench file does not say: ${
          budget.assumed.join("; ")
        }.`,
      ]
      : []),
  ];
  return [
    `The uncertainty comes from ${
      parts.join(", ")
    } (shares of the variance).${spread}`,
    ...notes,
  ];
}

function writeLengthFigures(length: number, unit: Piece["unit"]): string {
  const amount = amountIn(millimetres(length), unit);
  return formatLength(millimetres(length), unit, decimalsFor(amount));
}
