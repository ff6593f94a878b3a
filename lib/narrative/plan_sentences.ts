/**
 * What is known before the next session, in a practitioner's words.
 *
 * @module
 */
import { listed } from "./_listed.ts";
import { ringName, ringNameFirst } from "../records/ring_name.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { BudgetLine } from "../uncertainty/budget.ts";
import type { RingChoice } from "../uncertainty/ring_question.ts";
import { differenceSentence } from "./plan_differences.ts";
import {
  curvatureSentence,
  drawnSentence,
  writeChance,
} from "./plan_distribution.ts";
import type { PlanReport } from "./plan_report.ts";
import {
  averagesOut,
  QUESTIONS,
  twoFigures,
  writeDetectable,
} from "./plan_words.ts";
import { writeRadius } from "./write_radius.ts";
import { thermalSentence } from "./thermal_words.ts";

/** A plan without its sentences. */
export type PlanFindings = Omit<
  PlanReport,
  "answer" | "reasons" | "ringWords" | "heatWords" | "lensWords"
>;

/**
 * Says how sure the radius is, which source leads, and which ring to take.
 *
 * @param findings What was found.
 * @param unit The user's unit.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function planAnswer(
  findings: PlanFindings,
  unit: LengthUnit,
): readonly string[] {
  const { choices, thermal, records } = findings;
  return [
    radiusKnown(findings, unit),
    ringSentence(choices, unit),
    ...calibrationSentences(records),
    ...thermal.map((warning) => thermalSentence(warning, unit)),
  ];
}

/** Which rings to look at first, then all that are due in one sentence. */
function calibrationSentences(
  records: PlanFindings["records"],
): readonly string[] {
  const due: string[] = [];
  const doubted = records.flatMap(({ ring, sizes, history, twin }) => {
    const doubtful = sizes.some(({ verdict = "agrees", agreement }) =>
      verdict !== "agrees" || agreement?.agree === false
    );
    if (doubtful || history?.changed || twin?.comparison.agree === false) {
      return [
        `Look at ${
          ringName(ring)
        } first: its calibrations say otherwise, below.`,
      ];
    }
    if ((history?.daysLeft ?? 0) < 0) due.push(ring);
    return [];
  });
  if (due.length === 0) return doubted;
  const all = due.map((ring, i) =>
    i === 0 ? ringNameFirst(ring) : ringName(ring)
  );
  const are = all.length === 1 ? "is" : "are";
  return [...doubted, `${listed(all)} ${are} due for calibration.`];
}

/** The display's step, of the reading and of the zero together. */
const DISPLAY_STEP = "display step";

/** The source with the largest share; both steps of the display count as one. */
function largestSource(
  lines: readonly BudgetLine[],
): Pick<BudgetLine, "source" | "common" | "share"> | undefined {
  const steps = lines.filter(({ source }) => source.startsWith(DISPLAY_STEP));
  const share = steps.reduce((sum, line) => sum + line.share, 0);
  return [
    ...lines.filter((line) => !steps.includes(line)),
    { source: DISPLAY_STEP, share },
  ].filter((line) => line.share > 0).sort((a, b) => b.share - a.share)[0];
}

/** How sure the radius is, and what would make it surer. */
function radiusKnown(
  { session, budget }: PlanFindings,
  unit: LengthUnit,
): string {
  if (session.session === undefined || budget === undefined) {
    return "Nothing has been read yet, so the gauge is taken to scatter by one display step from reading to reading and from zero to zero.";
  }
  const lead = largestSource(budget.lines);
  if (session.radius === undefined || budget.shape === "nearly flat") {
    return curvatureSentence(budget, unit);
  }
  if (lead === undefined) {
    return `The radius is ${writeRadius(session.radius, unit)}.`;
  }
  const averaged = averagesOut(lead)
    ? session.radius.people === undefined
      ? "reading more sets makes it smaller"
      : "since people differ, more people make it smaller, and more sets by the same people hardly do"
    : lead.source === DISPLAY_STEP
    ? "reading more sets does not make it smaller, a finer display would"
    : "reading more sets does not make it smaller";
  const tail = budget.shape === "heavy-tailed"
    ? `, with a chance of ${
      writeChance(budget.otherSideProbability)
    } that it curves the other way`
    : "";
  const assumed = lead.source === "ring radius" && budget.assumed.length > 0
    ? ", which is assumed, since the bench file does not state it"
    : "";
  return `The radius is ${writeRadius(session.radius, unit)}${tail}; ${
    lead.share > 0.5 ? "most of that doubt" : "the largest single source"
  } is ${lead.source}${assumed} (${
    Math.round(100 * lead.share)
  } % of the variance), and ${averaged}.`;
}

/** One sentence that names the ring for each question. */
function ringSentence(
  choices: readonly RingChoice[],
  unit: LengthUnit,
): string {
  const asked = choices.filter(({ question }) => question !== "astigmatism");
  if (asked.length === 0) {
    return "No radius is known, not even a target, so rings cannot be compared.";
  }
  const byRing = new Map<string, string[]>();
  const without: string[] = [];
  for (const { question, recommended, rings, amount } of asked) {
    const best = rings.find(({ ring }) => ring === recommended);
    if (best?.detectable === undefined) {
      without.push(QUESTIONS[question]);
      continue;
    }
    const shown = writeDetectable(amount, best.detectable, unit);
    byRing.set(best.ring, [
      ...byRing.get(best.ring) ?? [],
      `for ${QUESTIONS[question]} (it shows ${shown})`,
    ]);
  }
  const takes = [...byRing].map(([ring, uses]) =>
    `${ringName(ring)} ${listed(uses)}`
  );
  return [
    ...(takes.length === 0
      ? []
      : asked.every(({ rings }) => rings.length === 1)
      ? [`The bench has one ring: ${takes.join(", ")}.`]
      : [`Take ${takes.join(", ")}.`]),
    ...(without.length === 0
      ? []
      : [`No ring of the bench serves for ${listed(without)}.`]),
  ].join(" ");
}

/**
 * Says what stands behind the plan: Monte Carlo, differences, fits, best
 * possible rings.
 *
 * @param findings What was found.
 * @param unit The user's unit.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function planReasons(
  findings: PlanFindings,
  unit: LengthUnit,
): readonly string[] {
  const { distribution, fits, choices, edgeWidth, sets, budget } = findings;
  const found: string[] = [];
  if (distribution) found.push(drawnSentence(distribution, unit));
  if (budget && budget.notCounted.length > 0) {
    found.push(
      `Not counted, since nothing is known of it: ${
        budget.notCounted.join("; ")
      }.`,
    );
  }
  if (budget && budget.assumed.length > 0) {
    found.push(
      `Assumed, since the bench file does not say: ${
        budget.assumed.join("; ")
      } (marked so in the budget).`,
    );
  }
  for (const compared of findings.differences) {
    found.push(differenceSentence(compared, unit));
  }
  for (const { ring, fit } of fits) {
    if (!fit.work.fits) {
      found.push(
        `${ringNameFirst(ring)} does not fit on the work: it needs ${
          twoFigures(fit.work.needed, unit)
        } across.`,
      );
    }
    if (fit.flat && !fit.flat.fits) {
      found.push(
        `${
          ringNameFirst(ring)
        } does not fit on the flat, so it cannot be zeroed there: it needs ${
          twoFigures(fit.flat.needed, unit)
        } across.`,
      );
    }
  }
  if (choices.length > 0) {
    found.push(
      `Rings are compared for ${sets} sets, and for a turned edge ${
        twoFigures(edgeWidth, unit)
      } wide; a difference counts as shown when the interval that the session report puts round it keeps clear of 0.`,
    );
  }
  for (const { question, best, amount, recommended } of choices) {
    if (!best || question === "astigmatism") continue;
    found.push(
      `For ${
        QUESTIONS[question]
      } the best ring there could be has a foot circle of ${
        twoFigures(best.circleRadius, unit)
      } radius and would show ${
        writeDetectable(amount, best.detectable, unit)
      }${
        recommended === undefined ? ", but the bench has none that serves" : ""
      }.`,
    );
  }
  found.push(
    `Three feet show no astigmatism, at any place and of any size; a two-foot bar turned on the work does${
      barWords(choices, unit)
    }, and so does an optical test.`,
  );
  return found;
}

/** What the widest bar that fits would show. */
function barWords(choices: readonly RingChoice[], unit: LengthUnit): string {
  const found = choices.find(({ question }) => question === "astigmatism");
  if (found?.best === undefined) return "";
  const { circleRadius, detectable } = found.best;
  return ` (one of ${twoFigures(2 * circleRadius, unit)} span would show ${
    writeDetectable(found.amount, detectable, unit)
  })`;
}
