/**
 * Plans that would decide a piece's own questions with this gauge.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import type { PieceFolder } from "../records/folder.ts";
import type { Reading } from "../records/reading.ts";
import { decideRadius } from "../repeatability/decide_radius.ts";
import { planStudy } from "../repeatability/plan_study.ts";
import type {
  Decide,
  PlannedZone,
  ScatterModel,
} from "../repeatability/scatter_model.ts";
import { scatterModelOf } from "../repeatability/scatter_model_of.ts";
import type { PlanAnswer, StudyPlan } from "../repeatability/study_plan.ts";
import type { SurfaceComponents } from "../repeatability/surface_components.ts";
import { powerByZeroings } from "../repeatability/weigh_study.ts";
import { normalQuantile } from "../statistics/normal_distribution.ts";
import {
  type BetterKnown,
  betterKnown,
  type SharedDoubt,
  sharedDoubt,
} from "./shared_doubt.ts";
import { compareZones } from "../zones/compare_zones.ts";
import { judge } from "../zones/sphericity.ts";
import { sagTolerance } from "../zones/tolerance.ts";

/** A plan for one of the piece's questions. */
export interface GaugePlan {
  /** The question. */
  readonly about: "radius" | "sphere";
  /** The plan, or why there is none. */
  readonly answer: PlanAnswer;
  /** Chance to decide by number of zeroings, in the shape of the plan. */
  readonly power: readonly StudyPlan[];
  /** The places every set of it reads. */
  readonly zones: readonly PlannedZone[];
  /** For the radius: what every reading shares, and no zeroing averages. */
  readonly shared?: SharedDoubt & {
    /** True when not even endless zeroings would decide. */
    readonly forbids: boolean;
  };
  /** Where that stands in the way: what has to be known better first. */
  readonly first?: FirstKnown;
}

/** What to measure better, and the plan that decides afterwards. */
export interface FirstKnown {
  /** The sources, the largest first, each with what would do. */
  readonly sources: readonly BetterKnown[];
  /** The cheapest plan then. */
  readonly then: StudyPlan;
}

/**
 * Parts of the largest doubt that endless zeroings would bear, tried in turn;
 * nearer to all of it an evening is too short.
 */
const PARTS = [0.7, 0.6, 0.5, 0.4, 0.3];

/**
 * Standard uncertainties that a tolerance must hold for endless zeroings to
 * decide in four cases of five: the two-sided 90 % interval, and the error
 * itself.
 */
const ENDLESS = normalQuantile(0.05, "upper") + normalQuantile(0.1, "upper");

const COUNTS = [2, 3, 4, 5, 6, 8, 10, 13, 17, 22];

/**
 * Plans studies for the questions that the piece's tolerances ask: is the
 * radius within its tolerance, is the surface a sphere within its own.
 *
 * Each is judged by the analysis that the reports use, on simulated readings
 * rounded to the display step, for a piece that is exactly on target and a
 * sphere. What all readings share (ring, scale, flat) shifts and widens every
 * simulated radius as it does the reported one.
 *
 * @param folder The folder with piece and bench.
 * @param components The gauge as the study found it.
 * @param options Seed and number of simulated studies.
 * @returns A plan for each question that the piece asks; none without
 * tolerances.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function planFor(
  { piece, bench, readings }: PieceFolder,
  components: SurfaceComponents,
  options: { readonly seed?: number; readonly studies?: number } = {},
): readonly GaugePlan[] {
  const { target, sphericity, form } = piece;
  const { seed = 1, studies = 1000 } = options;
  const ring = bench.rings.find(({ id }) => id === components.ring);
  if (!ring || components.status === "too few readings") return [];
  const feet = effectiveFeet(ring.shape, form);
  const { model } = scatterModelOf(components);
  const radius = target?.radius ?? components.meanRadius;
  if (radius === undefined) return [];
  const sag = sagFromRadius(radius as typeof feet.circleRadius, feet, form);
  const places = placesRead(readings, components.ring);
  const at = (zones: readonly (readonly [string, number])[]): PlannedZone[] =>
    zones.map(([label, offset]) => ({ label, offset, sag }));
  const choices = {
    seed,
    studies,
    mostZeroings: 30,
    repeats: [1, 2],
  };
  const plan = (
    about: GaugePlan["about"],
    zones: readonly PlannedZone[],
    decide: Decide,
    gauge: ScatterModel,
  ): GaugePlan => {
    const question = { zones, decide, truth: "within" } as const;
    const answer = planStudy(question, gauge, {
      ...choices,
      // A verdict for any diameter must have seen several.
      ...(about === "sphere" ? { diameters: ["each"] as const } : {}),
    });
    const shape = answer.kind === "plan" ? answer.best : answer.nearest;
    const power = powerByZeroings(question, gauge, COUNTS, {
      repeats: shape.repeats,
      diameters: shape.diameters > 1 ? "each" : 1,
    }, { seed, studies: Math.min(studies, 500) });
    return { about, answer, power, zones };
  };
  const plans: GaugePlan[] = [];
  if (target?.tolerance !== undefined && target.tolerance > 0) {
    const { tolerance } = target;
    const decide = decideRadius({ target: radius, tolerance, feet, form });
    // People and days shift the radius and more zeroings on one day do not
    // average that; the sentence about it comes from the components.
    const shared = sharedDoubt(
      components.meanRadius ?? radius,
      ring,
      feet,
      piece,
      bench,
    );
    const zones = at([["centre", 0]]);
    const known = { ...model, common: shared.sag };
    const found = {
      ...plan("radius", zones, decide, known),
      shared: { ...shared, forbids: shared.radius > tolerance / ENDLESS },
    };
    const { answer } = found;
    const first = answer.kind === "no plan" && answer.reason === "common"
      ? firstKnown(
        shared,
        tolerance,
        (common) =>
          planStudy({ zones, decide, truth: "within" }, { ...model, common }, {
            ...choices,
            repeats: [1],
            diameters: [1],
          }),
      )
      : undefined;
    plans.push(first === undefined ? found : { ...found, first });
  }
  const outermost = Math.max(0, ...places.map(([, offset]) => offset));
  const within = sphericity && outermost > 0
    ? sagTolerance(sphericity, {
      feet,
      halfDiameter: piece.diameter / 2 - piece.bevel,
      outermost,
      radius,
    })
    : undefined;
  if (within && places.length > 1) {
    const decide: Decide = (sets, { step }) =>
      judge(
        compareZones(sets, places.length, step, "any diameter"),
        undefined,
        within.sag,
      ).verdict;
    plans.push(plan("sphere", at(places), decide, model));
  }
  return plans;
}

/** How well the leading sources must be known for a plan to exist. */
function firstKnown(
  shared: SharedDoubt,
  tolerance: number,
  planWith: (common: number) => PlanAnswer,
): FirstKnown | undefined {
  for (const part of PARTS) {
    const largest = part * tolerance / ENDLESS;
    const sources = betterKnown(shared, largest);
    if (sources.length === 0) continue;
    const answer = planWith(largest * shared.sag / shared.radius);
    if (answer.kind === "plan") return { sources, then: answer.best };
  }
  return undefined;
}

/** The places of the study, from the centre outward. */
function placesRead(
  readings: readonly Reading[],
  ring: string,
): readonly (readonly [string, number])[] {
  const found = new Map<string, number>();
  for (const { on, zone, ring: used } of readings) {
    if (on === "work" && used === ring && !found.has(zone.label)) {
      found.set(zone.label, zone.distance);
    }
  }
  return [...found].sort((a, b) => a[1] - b[1]);
}
