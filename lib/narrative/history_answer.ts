/**
 * The answer of a history: radius, rate, work to go, next step.
 *
 * @module
 */
import type { HistoryPoint } from "./history_points.ts";
import type { HistoryReport } from "./history_report.ts";
import type { HistoryStage } from "./history_stages.ts";
import { suspicionSentences } from "./caution_sentences.ts";
import { forecastSentences } from "./history_forecast.ts";
import { settingName, writeRate } from "./history_words.ts";
import { holdPercent } from "./hold_percent.ts";
import { nextStepSentence } from "./next_step_sentence.ts";
import { radiusSentence } from "./radius_sentences.ts";
import { writeSmall } from "./sag_words.ts";
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
  const doubts = suspicionSentences(problems);
  if (last === undefined) {
    return [
      ...doubts,
      "There is no history yet: no reading of the work was found.",
    ];
  }
  const { session } = last;
  const cameFrom = piece.startingRadius ?? points[0].centre?.radius;
  return holdPercent([
    ...doubts,
    radiusSentence(session, piece, radius, cameFrom),
    sphericitySentence(session, piece.unit),
    ...(current?.fit === undefined ? [] : [rateSentence(found, current)]),
    ...forecastSentences(found),
    ...(doubts.length > 0
      ? [
        "Next: settle the doubts first; nothing here is safe to act on until then.",
      ]
      : next === undefined
      ? []
      : [
        nextStepSentence(
          next,
          session.sphericity.setsNeeded,
          session.sets.length,
          session.zones.length,
          radius?.expanded,
          piece.unit,
        ),
      ]),
  ]);
}

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
