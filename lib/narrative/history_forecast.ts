/**
 * The work that remains, in words.
 *
 * @module
 */
import { againstTarget } from "../fabrication/against_target.ts";
import { progressLimits } from "../fabrication/predict_progress.ts";
import { radiusFromSurfaceSag } from "../geometry/surface_sag.ts";
import { combineEstimates } from "../statistics/estimate_arithmetic.ts";
import type { LengthUnit } from "../records/piece.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import type { HistoryFindings } from "./history_answer.ts";
import type { HistoryStage } from "./history_stages.ts";
import { writeMostWork, writeWork } from "./history_words.ts";
import { rangeOf } from "./radius_range.ts";
import { writeDifference, writeSmall } from "./sag_words.ts";
import { writeWholeChance } from "./write_whole_chance.ts";

/**
 * Says how much work remains, at what risk, or why nothing is forecast.
 *
 * @param found What was found.
 * @returns Sentences; none without a target.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function forecastSentences(found: HistoryFindings): readonly string[] {
  const { forecast, folder: { piece }, timeline, depth, current } = found;
  if (forecast === undefined) return [];
  const { unit } = piece;
  const work = timeline.unit ?? "wets";
  switch (forecast.kind) {
    case "not a sphere":
      return [
        "No forecast: bring it to a sphere first, since a surface that is not one has no single radius to forecast.",
      ];
    case "no work":
      return [
        "No forecast: the log has no work between two sessions of the setting now in use.",
      ];
    case "too few sessions":
      return [
        `No forecast yet: ${forecast.sessions} sessions of this setting do not show how its work scatters; ${forecast.missing} more will.`,
      ];
    case "rate unclear":
      return [
        `No forecast: the rate cannot be told from none at all (chance ${
          writeWholeChance(forecast.p)
        }); more work between sessions, or more sessions, will show it.`,
      ];
    case "wrong way":
      return [
        "THE WRONG WAY: this work moves the radius away from its target. Stop, and turn the position round.",
      ];
    case "passed":
      return [passedSentence(found, forecast.by.value, forecast.probability)];
    case "forecast": {
      const { work: likely, interval, most, risk, riskNow } = forecast;
      const { low, high } = interval;
      const range = high === undefined
        ? `at least ${
          writeWork(low, work)
        }, with no upper end that can be given`
        : `${writeWork(low, work)} to ${writeWork(high, work)}`;
      const left = depth === undefined || depth.change === "none"
        ? ""
        : `${
          writeSmall(depth.depth, unit)
        } of depth at the ${depth.where} and ${
          writeVolume(depth.volume, unit)
        } of glass are left. `;
      const stop = most < 0.1
        ? `Read before any more work: the risk that the target is passed already is ${
          writeWholeChance(riskNow)
        }.`
        : `Stop after ${
          writeMostWork(most, work)
        } and read again: up to there the risk of passing the target stays at ${
          writeWholeChance(risk)
        } or less.`;
      return [
        `${left}${
          found.plan === undefined
            ? "The target is"
            : "With this setting alone the target would be"
        } ${writeWork(likely, work)}${
          inMinutes(found, likely)
        } away, most likely; ${range} (95 %). ${stop}${waiting(found)}`,
        ...changedSentence(found, forecast.toGo.value),
        ...planSentences(found, current),
      ];
    }
  }
}

/** What a changed rate does to a forecast that mixes both. */
function changedSentence(
  { current, timeline }: HistoryFindings,
  toGo: number,
): readonly string[] {
  const change = current?.change;
  if (current?.fit === undefined || change?.kind !== "changed") return [];
  const work = timeline.unit ?? "wets";
  const { at, after } = change;
  const later = toGo / (Math.sign(current.fit.rate.value) * after);
  return [
    later > 0
      ? `Do not lean on that forecast: it mixes the rates before and after ${at}. At the later rate alone the target would be about ${
        writeWork(later, work)
      } away; read again well before.`
      : `Do not lean on that forecast: since ${at} the work has moved away from the target.`,
  ];
}

/**
 * How the last radius lies to a target that is passed at its best value: the
 * tolerance, and what the readings leave open, are left out of the forecast.
 *
 * @param found Target and last radius.
 * @returns `passed` as well where either is not known.
 *
 * @example
 * ```ts
 * import { passedHow } from "sagbook/narrative/history_forecast.ts";
 * import { openHistory } from "sagbook/narrative/history_report.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { folder } = await openHistory("data/history-300");
 * equal(passedHow({ folder }), "passed");
 * ```
 */
export function passedHow(
  { radius, folder: { piece: { target } } }: Pick<
    HistoryFindings,
    "radius" | "folder"
  >,
): "passed" | "within" | "not decided" {
  if (radius === undefined || target === undefined) return "passed";
  const state = againstTarget(rangeOf(radius), target);
  return state === "within" || state === "not decided" ? state : "passed";
}

function passedSentence(
  found: HistoryFindings,
  by: number,
  probability: number,
): string {
  const { depth, folder: { piece } } = found;
  const { unit } = piece;
  const sure = probability > 0.975
    ? ""
    : ` (${writeWholeChance(probability)} sure)`;
  const deep = writeSmall(depth?.depth ?? by, unit);
  const short = depth?.change === "lengthen";
  const shape = piece.form === "concave"
    ? short ? "too deep at the centre" : "too shallow"
    : short
    ? "too high at the centre"
    : "too low at the centre";
  switch (passedHow(found)) {
    case "within":
      return `The target is reached: the radius is within its tolerance, and ${deep} past the middle of it at its best value. There is no work left to do in the old direction.`;
    case "not decided":
      return `Whether the target is passed is not decided: at its best value the whole surface is ${deep} ${shape}${sure}, and the readings leave that open. Measure better before any more work, in either direction.`;
    default:
      return `The target is passed${sure}: the whole surface is ${deep} ${shape}, and the radius must grow ${
        short ? "longer" : "shorter"
      } again. There is no work left to do in the old direction.`;
  }
}

/** A volume in mm³ as people think of it. */
function writeVolume(volume: number, unit: LengthUnit): string {
  return unit === "mm"
    ? `${(volume / 1000).toFixed(2)} cm³`
    : `${(volume / 25.4 ** 3).toFixed(3)} cubic inches`;
}

/** The same work in minutes, where the log has both. */
function inMinutes(
  { timeline, current }: HistoryFindings,
  wets: number,
): string {
  if (timeline.unit !== "wets" || current === undefined) return "";
  const lines = timeline.entries.filter((one) =>
    one.grade === current.grade && one.position === current.position &&
    one.wets !== undefined && one.wets > 0 && one.minutes !== undefined
  );
  const sum = (pick: "wets" | "minutes") =>
    lines.reduce((total, one) => total + one[pick]!, 0);
  if (lines.length === 0) return "";
  const minutes = wets * sum("minutes") / sum("wets");
  return ` (about ${writeWork(minutes, "minutes")})`;
}

/** Work that was done after the last readings. */
function waiting({ timeline }: HistoryFindings): string {
  const { after, unit } = timeline;
  if (unit === undefined) return "";
  const done = after.reduce((sum, one) => sum + (one[unit] ?? 0), 0);
  return done === 0
    ? ""
    : ` ${
      writeWork(done, unit)
    } were done after the last readings and count toward that: read before going on.`;
}

function planSentences(
  { plan, unknownAhead, folder: { piece }, timeline }: HistoryFindings,
  current: HistoryStage | undefined,
): readonly string[] {
  if (plan === undefined || current?.fit === undefined) return [];
  const { unit } = piece;
  const work = timeline.unit ?? "wets";
  const grades = plan.grades.map((one) =>
    `${one.grade} ${writeWork(one.work, work)}`
  ).join(", ");
  const [first] = plan.grades;
  const coming = combineEstimates([
    [1, plan.grades[plan.grades.length - 1].leave],
    [-1, first.enter],
  ]);
  const unclear = unknownAhead.length === 0
    ? ""
    : ` (no clear rate is known of ${unknownAhead.join(", ")})`;
  const usual =
    `The grades to come (${grades} in the shop's earlier pieces) usually change the sag by ${
      writeDifference(coming.value, progressLimits(coming), unit)
    }${unclear}`;
  const now = current.grade ?? "this grade";
  const left = plan.toGo.value / current.fit.rate.value;
  if (plan.advice === "too far") {
    return [
      `${usual}, which is more than is left: leave ${now}, and plan part of their work the other way round.`,
    ];
  }
  if (!(left > 0)) {
    return [
      `${usual}, about what is left: leave ${now} as far as the radius goes.`,
    ];
  }
  const radius = radiusFromSurfaceSag(
    millimetres(plan.leaveNow.value),
    millimetres(piece.diameter / 2),
  );
  return [
    `${usual}: leave ${now} at about ${
      formatLength(radius, unit, unit === "mm" ? 0 : 2)
    }, ${writeWork(left, work)} from here${
      plan.advice === "stop" ? ", or now, since that is not certain" : ""
    }.`,
  ];
}
