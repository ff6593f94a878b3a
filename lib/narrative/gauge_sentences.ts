/**
 * What a study of the gauge says, in a practitioner's words.
 *
 * @module
 */
import { ringName } from "../records/ring_name.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { GaugeCapability } from "../repeatability/judge_capability.ts";
import type {
  ScatterFigure,
  SurfaceComponents,
} from "../repeatability/surface_components.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import type { GaugePlan } from "./gauge_plan.ts";
import { displaySentence } from "./_display_sentence.ts";
import { planSentence } from "./gauge_plan_sentence.ts";
import { twoFigures } from "./plan_words.ts";
import { smallUnit, writeSmall } from "./sag_words.ts";
import { nameSources, PLURALS } from "./scatter_words.ts";

/** What the sentences are made from. */
export interface GaugeFindings {
  /** The components the answer is about. */
  readonly main: SurfaceComponents;
  /** What the gauge can decide. */
  readonly capability: GaugeCapability;
  /** Plans for the piece's questions. */
  readonly plans: readonly GaugePlan[];
}

function spread(
  { sag }: ScatterFigure,
  unit: LengthUnit,
): string {
  const small = smallUnit(unit);
  const amount = amountIn(millimetres(sag.deviation), small);
  const decimals = amount === 0 ? 1 : Math.max(0, decimalsFor(amount));
  const write = (length: number): string =>
    formatLength(millimetres(length), small, decimals);
  if (sag.deviation === 0 && sag.interval === undefined) {
    return "none to be seen";
  }
  return sag.interval === undefined
    ? write(sag.deviation)
    : `${write(sag.deviation)} (95 %: ${write(sag.interval.low)} to ${
      write(sag.interval.high)
    })`;
}

/**
 * Answers how good the gauge is.
 *
 * @param findings Components, capability, plans.
 * @param unit The user's unit.
 * @returns Sentences: how much it scatters, from what, whether that will do,
 * what to read.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function gaugeAnswer(
  { main, capability, plans }: GaugeFindings,
  unit: LengthUnit,
): readonly string[] {
  const { total, display } = main;
  if (main.status === "limited by the display") {
    const floor = capability.kind === "not judged"
      ? capability.floor
      : undefined;
    return [
      displaySentence(main, floor, unit),
      ...plans.map((plan) => planSentence(plan, unit)),
      // Readings that repeat leave nothing to simulate scatter with.
      ...(plans.some(({ answer }) => answer.kind === "plan")
        ? [
          "That is the least it takes: it counts on readings that repeat to the last figure as these did, and what hides within a display step may ask for more.",
        ]
        : []),
    ];
  }
  if (!total) {
    return [
      "Too little was read to tell scatter: read each place at least twice, on three zeroings or more.",
    ];
  }
  const perSag = main.perSag === undefined
    ? ""
    : `, which is ${
      twoFigures(total.sag.deviation * main.perSag, unit)
    } of radius here`;
  return [
    total.sag.interval === undefined && display.floor === total.sag.deviation
      ? `One reading on a fresh zero scatters by less than the display's step (${
        writeSmall(display.step ?? 0, unit, 1)
      }) lets one see: a standard deviation of ${
        spread(total, unit)
      }${perSag}, which averaging does not shrink.`
      : `One reading on a fresh zero scatters by a standard deviation of ${
        spread(total, unit)
      }${perSag}.`,
    ...driftSentence(main, unit),
    ...toleranceSentence(capability, unit),
    ...plans.map((plan) => planSentence(plan, unit)),
  ];
}

/** The largest sources and their shares of the gauge's variance. */
function sharesSentence({ figures }: SurfaceComponents): readonly string[] {
  const ranked = [...figures]
    .filter(({ usable, sources }) =>
      usable > 0 && !sources.includes("diameter")
    )
    .sort((a, b) => b.usable - a.usable);
  if (ranked.length < 2) return [];
  const sum = ranked.reduce((all, { usable }) => all + usable, 0);
  const parts = ranked.map(({ sources, usable }) =>
    `${nameSources(sources)} ${Math.round(100 * usable / sum)} %`
  );
  return [
    `The scatter of a reading comes from ${
      parts.join(", ")
    } (shares of the variance).`,
  ];
}

/** Whose zero creeps, where looks at the flat show it. */
function driftSentence(
  { drift }: SurfaceComponents,
  unit: LengthUnit,
): readonly string[] {
  const moved =
    drift?.byOperator.filter(({ interval }) =>
      interval !== undefined && (interval.low > 0 || interval.high < 0)
    ) ?? [];
  if (moved.length === 0) return [];
  const each = moved.map(({ operator, mean }) =>
    `${operator}'s by ${writeSmall(mean, unit)}`
  );
  return [
    `The zero creeps within a set in the hands of ${
      moved.length === 1 ? "one person" : `${moved.length} people`
    } — ${
      each.join(", ")
    } — and was taken out by the looks at the flat: gloves, and a wait for gauge and glass to come to rest, cure it.`,
  ];
}

function toleranceSentence(
  capability: GaugeCapability,
  unit: LengthUnit,
): readonly string[] {
  if (capability.kind === "not judged") return [];
  const total = capability.lines.find(({ kind }) => kind === "total");
  if (total?.percentOfTolerance === undefined || !capability.sagTolerance) {
    return [];
  }
  const percent = Math.round(total.percentOfTolerance);
  const verdict = percent > 100
    ? "one reading cannot decide it"
    : percent > 30
    ? "one reading is not enough to decide it"
    : percent > 10
    ? "one reading may do, near the middle"
    : "one reading will do";
  return [
    `Six times the scatter of one reading ${
      percent > 100
        ? `fills the tolerance of the radius (±${
          writeSmall(capability.sagTolerance, unit)
        } of sag) ${times(percent)} times over`
        : `takes up ${percent} % of the tolerance of the radius (±${
          writeSmall(capability.sagTolerance, unit)
        } of sag)`
    }: ${verdict}.`,
  ];
}

/** A percentage above 100 as a multiple, with two figures. */
function times(percent: number): string {
  return percent < 1000
    ? (percent / 100).toFixed(1)
    : `${Math.round(percent / 100)}`;
}

function stretchSentence(
  capability: GaugeCapability,
  unit: LengthUnit,
): readonly string[] {
  if (capability.kind === "not judged") return [];
  const total = capability.lines.find(({ kind }) => kind === "total");
  const smallest =
    `the smallest change that one reading before and one after can show is ${
      writeSmall(capability.smallestChange, unit)
    } of sag`;
  return [
    total?.percentOfChange === undefined
      ? `How that compares with one stretch of work is not known, since nobody said how much sag one changes; ${smallest}.`
      : `Six times the scatter of one reading is ${
        total.percentOfChange > 100
          ? `${times(total.percentOfChange)} times`
          : `${Math.round(total.percentOfChange)} % of`
      } what one stretch of work changes; ${smallest}.`,
  ];
}

/**
 * Says why: the table in words, and what stands behind it.
 *
 * @param findings Components, capability, plans.
 * @param unit The user's unit.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function gaugeReasons(
  { main, capability }: GaugeFindings,
  unit: LengthUnit,
): readonly string[] {
  const { design, method, figures } = main;
  const factors = design.factors
    .filter(({ source }) => source !== "zone × zeroing")
    .map(({ source, levels }) => `${levels} ${PLURALS[source]}`);
  const study = capability.kind === "judged" && capability.noStudy
    ? [
      "How many different surfaces the gauge could tell apart is not said, since only one was read.",
    ]
    : [];
  return [
    `${design.readings} ${
      design.readings === 1 ? "reading" : "readings"
    } with ${ringName(design.ring)}${
      design.grade === undefined ? "" : ` on a ${design.grade} surface`
    }: ${factors.join(", ") || "nothing was varied"}.`,
    ...sharesSentence(main),
    ...stretchSentence(capability, unit),
    ...(method === "none" ? [] : [
      `The components of the scatter, each a standard deviation: ${
        figures.map((figure) =>
          `${nameSources(figure.sources)} ${spread(figure, unit)}`
        ).join("; ")
      }.`,
    ]),
    ...study,
  ];
}
