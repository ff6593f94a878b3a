/**
 * What is known before the next session, in a practitioner's words.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type {
  RingAnswer,
  RingChoice,
  RingQuestion,
} from "../uncertainty/ring_question.ts";
import type { RadiusDistribution } from "../uncertainty/radius_monte_carlo.ts";
import type { ThermalWarning } from "../uncertainty/thermal_check.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import type { PlanReport } from "./plan_report.ts";
import { writeRadius } from "./radius_statement.ts";
import { writeSmall } from "./sag_words.ts";

/** A plan without its sentences. */
export type PlanFindings = Omit<PlanReport, "answer" | "reasons">;

/** A length with two figures in the user's unit. */
export function twoFigures(length: number, unit: LengthUnit): string {
  const amount = amountIn(millimetres(length), unit);
  return formatLength(
    millimetres(length),
    unit,
    amount === 0 ? 0 : Math.max(0, decimalsFor(amount)),
  );
}

/**
 * Writes the smallest amount a ring shows, in the words of its question.
 *
 * @param choice The question.
 * @param detectable The amount, in the question's unit.
 * @param unit The user's unit.
 * @returns Such as `a radius off by 9.1 mm`.
 *
 * @example
 * ```ts
 * import { writeDetectable } from "sagbook/narrative/plan_sentences.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(writeDetectable("conic constant", 0.5, "mm"), "a conic constant of 0.50");
 * ```
 */
export function writeDetectable(
  amount: RingChoice["amount"],
  detectable: number,
  unit: LengthUnit,
): string {
  switch (amount) {
    case "mm of radius":
      return `a radius off by ${twoFigures(detectable, unit)}`;
    case "conic constant":
      return `a conic constant of ${detectable.toPrecision(2)}`;
    case "mm of depth":
      return `a depth of ${writeSmall(detectable, unit)}`;
    case "mm peak to valley":
      return `astigmatism of ${writeSmall(detectable, unit)} peak to valley`;
  }
}

const QUESTIONS: Record<RingQuestion, string> = {
  radius: "the radius itself",
  conic: "how far it is from a sphere",
  "edge fault": "a turned edge",
  astigmatism: "astigmatism",
};

const REASONS: Record<NonNullable<RingAnswer["reason"]>, string> = {
  "does not fit the work": "it does not fit on the work",
  "cannot leave the centre": "it cannot leave the centre",
  "does not touch the fault": "no foot reaches it",
  "three feet cannot see it": "three feet cannot see it",
  "reads it as a sphere": "a sharp edge reads it as a sphere",
};

/**
 * Says why a ring has no answer to a question.
 *
 * @param reason The reason, as data.
 * @returns Words.
 *
 * @example
 * ```ts
 * import { whyNone } from "sagbook/narrative/plan_sentences.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(whyNone("does not fit the work"), "it does not fit on the work");
 * ```
 */
export function whyNone(reason: RingAnswer["reason"]): string {
  return reason === undefined ? "nothing it could show" : REASONS[reason];
}

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
  const { session, budget, choices, thermal } = findings;
  const found: string[] = [];
  const lead = budget &&
    [...budget.lines].sort((a, b) => b.share - a.share)[0];
  if (session.radius && lead) {
    const averaged = lead.common === undefined
      ? "reading more sets makes it smaller"
      : "reading more sets does not make it smaller";
    found.push(
      `The radius is ${
        writeRadius(session.radius, unit)
      }; most of that doubt is ${lead.source} (${
        Math.round(100 * lead.share)
      } % of the variance), and ${averaged}.`,
    );
  } else {
    found.push(
      "Nothing has been read yet, so the gauge is taken to scatter by one display step from reading to reading and from zero to zero.",
    );
  }
  found.push(ringSentence(choices, unit));
  found.push(...thermal.map((warning) => thermalSentence(warning, unit)));
  return found;
}

/** One sentence that names the ring for each question. */
function ringSentence(
  choices: readonly RingChoice[],
  unit: LengthUnit,
): string {
  const parts = choices.flatMap(({ question, recommended, rings, amount }) => {
    if (question === "astigmatism") return [];
    const best = rings.find(({ ring }) => ring === recommended);
    return best?.detectable === undefined
      ? [`no ring of the bench serves for ${QUESTIONS[question]}`]
      : [
        `${best.ring} for ${QUESTIONS[question]} (it shows ${
          writeDetectable(amount, best.detectable, unit)
        })`,
      ];
  });
  return parts.length === 0
    ? "No radius is known, not even a target, so rings cannot be compared."
    : `Take ${parts.join(", ")}.`;
}

/** One warning about heat. */
function thermalSentence(
  warning: ThermalWarning,
  unit: LengthUnit,
): string {
  const way = (length: number): string =>
    `${twoFigures(Math.abs(length), unit)} too ${
      length > 0 ? "long" : "short"
    }`;
  const kelvin = (value: number): string => `${Math.abs(value).toFixed(1)} K`;
  switch (warning.kind) {
    case "bench and air apart":
      return `The bench was ${kelvin(warning.kelvin)} ${
        warning.kelvin > 0 ? "colder" : "warmer"
      } than the air (${warning.sessions.join(", ")}): on it the radius reads ${
        way(warning.radiusReadsLonger)
      } for good. Rest the work on three small supports, away from the bench.`;
    case "work and air apart":
      return `The work was ${kelvin(warning.kelvin)} ${
        warning.kelvin > 0 ? "warmer" : "colder"
      } than the air (${
        warning.sessions.join(", ")
      }): while it settles the radius reads up to ${
        way(warning.radiusReadsLonger)
      }.`;
    case "too soon after work":
      return `Session ${warning.session} was read ${
        Math.round(warning.minutes)
      } minutes after warm work; ${
        Math.round(warning.minutesNeeded)
      } are needed, and the radius read about ${
        way(warning.radiusReadsLonger)
      }${warning.warmthAssumed ? " (the warmth is our assumption)" : ""}.`;
  }
}

/**
 * Says what stands behind the plan: Monte Carlo, fits, best possible rings.
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
  for (const { ring, fit } of fits) {
    if (!fit.work.fits) {
      found.push(
        `${ring} does not fit on the work: it needs ${
          twoFigures(fit.work.needed, unit)
        } across.`,
      );
    }
    if (fit.flat && !fit.flat.fits) {
      found.push(
        `${ring} does not fit on the flat, so it cannot be zeroed there: it needs ${
          twoFigures(fit.flat.needed, unit)
        } across.`,
      );
    }
  }
  found.push(
    `Rings are compared for ${sets} sets, and for a turned edge ${
      twoFigures(edgeWidth, unit)
    } wide.`,
  );
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
    "Three feet show no astigmatism, at any place and of any size; a two-foot bar turned on the work does, and so does an optical test.",
  );
  return found;
}

/** What drawing every source at random gave. */
function drawnSentence(
  distribution: RadiusDistribution,
  unit: LengthUnit,
): string {
  const { symmetric, draws, settled, check, otherSideDraws } = distribution;
  const times = draws.toLocaleString("en").replace(/,/g, "\u202f");
  if (!symmetric) {
    return `The sag is so close to nothing that a flat is among the possible surfaces: the radius is at least ${
      twoFigures(distribution.atLeast, unit)
    }.`;
  }
  const range = `${twoPlaces(symmetric.lower, symmetric, unit)} to ${
    twoPlaces(symmetric.upper, symmetric, unit)
  }`;
  const drawn = `Drawing every source at random ${times} times (${
    settled ? "settled to two figures" : "not settled"
  }) gives 95 % between ${range}`;
  if (otherSideDraws > 0) {
    return `${drawn}; so few sets leave tails so long that ${otherSideDraws} of these draws curve the other way, and mean and standard deviation mean nothing.`;
  }
  return check === undefined
    ? `${drawn}.`
    : `${drawn}; the budget of first order ${
      check.valid ? "agrees" : "does not quite agree"
    }.`;
}

function twoPlaces(
  length: number,
  { lower, upper }: { readonly lower: number; readonly upper: number },
  unit: LengthUnit,
): string {
  const half = amountIn(millimetres((upper - lower) / 2), unit);
  return formatLength(
    millimetres(length),
    unit,
    half === 0 ? 3 : Math.max(0, decimalsFor(half)),
  );
}
