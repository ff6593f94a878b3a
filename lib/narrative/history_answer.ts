/**
 * The answer of a history: radius, rate, work to go, next step.
 *
 * @module
 */
import type { HistoryPoint } from "./history_points.ts";
import type { HistoryReport } from "./history_report.ts";
import type { HistoryStage } from "./history_stages.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { suspicionSentences } from "./caution_sentences.ts";
import type { NextStep } from "../fabrication/next_step.ts";
import { forecastSentences, passedHow } from "./history_forecast.ts";
import { LOUPE } from "./history_pits.ts";
import { settingName, writeRate } from "./history_words.ts";
import { holdPercent } from "./hold_percent.ts";
import { nextStepSentence } from "./next_step_sentence.ts";
import { radiusSentence } from "./radius_sentences.ts";
import { writeSmall } from "./sag_words.ts";
import { measuredHow } from "./shop_piece.ts";
import { setApartFirst } from "./_set_apart.ts";
import { zeroDoubts } from "./zero_doubt.ts";
import { sphericitySentence } from "./sphericity_sentence.ts";

/** What the answer is made from: a report without its words. */
export type HistoryFindings = Omit<
  HistoryReport,
  "answer" | "notes" | "cautions" | "unseen" | "safety"
>;

/**
 * Says where the piece stands and what to do.
 *
 * @param found What was found.
 * @param last The last session.
 * @returns Sentences: doubts, radius, rate, work to go, next step.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function historyAnswer(
  found: HistoryFindings,
  last: HistoryPoint | undefined,
): readonly string[] {
  const { folder: { piece, problems }, points, radius, next, current } = found;
  const doubts = [
    ...suspicionSentences(problems),
    ...(last === undefined ? [] : zeroDoubts(last.session, piece.unit)),
  ];
  if (last === undefined) {
    return [
      ...doubts,
      "There is no history yet: no reading of the work was found.",
    ];
  }
  const { session } = last;
  const cameFrom = piece.startingRadius ?? points[0].centre?.radius;
  const work = forecastSentences(found);
  // What must stop the work comes before anything else.
  const kind = found.forecast?.kind;
  const alarm = kind === "wrong way" ||
    kind === "passed" && passedHow(found) === "passed";
  const polished = doubts.length === 0 ? polishedSentence(found) : undefined;
  return holdPercent([
    ...doubts,
    ...(alarm ? work : []),
    radiusSentence(session, piece, radius, cameFrom),
    // Readings in doubt, or without a radius, say nothing of the shape.
    ...(doubts.length > 0 || radius === undefined
      ? []
      : [sphericitySentence(session, piece.unit)]),
    ...(current?.fit === undefined ? [] : [rateSentence(found, current)]),
    ...(alarm || polished !== undefined ? [] : work),
    ...(doubts.length > 0
      ? [
        "Next: settle the doubts first; nothing here is safe to act on until then.",
      ]
      : polished !== undefined
      ? [polished]
      : next === undefined
      ? []
      : [
        afterwards(
          setApartFirst(session, piece.unit) ?? pitsFirst(next, found) ??
            nextStepSentence(
              next,
              session,
              radius,
              piece.unit,
              piece.target?.tolerance,
            ),
          found,
        ),
      ]),
  ]);
}

/** The step that comes first while the loupe sees pits: no finer grade. */
function pitsFirst(
  { kind }: NextStep,
  { pits }: HistoryFindings,
): string | undefined {
  const loupe = pits?.state.loupe;
  if (pits === undefined || loupe === undefined || loupe === "none") {
    return undefined;
  }
  const stay =
    `Next: stay with ${pits.grade} until the pits are gone (the loupe, as last entered: ${
      LOUPE[loupe]
    })`;
  switch (kind) {
    case "on target":
      return `${stay}; the radius is on target, so work with positions that keep it there.`;
    case "no target":
      return `${stay}.`;
    default:
      return undefined;
  }
}

/** The next step, after the order to stop where that comes first. */
function afterwards(sentence: string, { forecast }: HistoryFindings): string {
  return forecast?.kind === "wrong way"
    ? sentence.replace(/^Next: /, "Then: ")
    : sentence;
}

/** What there is to do once the log has come to polishing. */
function polishedSentence(
  { timeline: { after }, finished, folder: { piece } }: HistoryFindings,
): string | undefined {
  if (!after.some(({ grade = "" }) => POLISHING.test(grade))) return undefined;
  if (finished === undefined) {
    return piece.form === "concave"
      ? "Grinding is over: the log goes on with polishing. Next: measure the focal length of the finished piece and write it into finished.csv."
      : "Grinding is over: the log goes on with polishing.";
  }
  const { focalLength, focalLengthUncertainty: u } = finished;
  const { unit } = piece;
  const how = measuredHow(finished, unit);
  return `Grinding is over, and the piece became a focal length of ${
    u === undefined
      ? formatLength(focalLength, unit, unit === "mm" ? 0 : 2)
      : formatWithUncertainty(focalLength, millimetres(2 * u), unit)
  }${how === undefined ? "" : ` (${how})`}.`;
}

/** Grades that are no grinding any more. */
const POLISHING = /polish|rouge|cerium|figur/i;

function rateSentence(
  { folder: { piece }, timeline }: HistoryFindings,
  current: HistoryStage,
): string {
  const { fit, comparison, expected, change } = current;
  const { unit } = piece;
  const one = timeline.unit === "minutes" ? "minute" : "wet";
  const alone = fit!.dof === 0
    ? ", from two sessions alone, so that how the work scatters is not in it"
    : ` (95 %, ${fit!.sessions} sessions)`;
  const against = comparison === undefined || expected === undefined
    ? ""
    : comparison.verdict === "as expected"
    ? `; the shop's earlier pieces lead one to expect ${
      writeRate(expected.rate, unit)
    }, and that agrees`
    : `; that is ${WORDS[comparison.verdict]} the ${
      writeRate(expected.rate, unit)
    } of the shop's earlier pieces`;
  const changed = change?.kind === "changed"
    ? ` The rate changed at ${change.at}: ${
      writeSmall(change.before, unit)
    } a ${one} before, ${
      writeSmall(change.after, unit)
    } after; the figure mixes both.`
    : "";
  return `With ${
    settingName(current)
  }, one ${one} changes the sag of the whole surface by ${
    writeRate(fit!.rate, unit)
  }${alone}${against}.${changed}`;
}

const WORDS = {
  faster: "faster than",
  slower: "slower than",
  "other way": "the opposite way of",
} as const;
