/**
 * Which ring for which question.
 *
 * @module
 */
import { ballRing } from "../geometry/ball_ring.ts";
import { contactCircleRadius } from "../geometry/contact_circle.ts";
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { diameterOnFlat } from "./ring_fit.ts";
import { radiusAnswer } from "./_radius_answer.ts";
import {
  conicResponse,
  edgeResponse,
  reachOf,
  type Response,
} from "./_ring_response.ts";
import { detectableDifference, studentRule } from "./detection.ts";
import type {
  ComparedRing,
  RingAnswer,
  RingChoice,
  RingChoicePlan,
  RingQuestion,
} from "./ring_question.ts";

/** Foot circles tried for the curve and for the best possible ring. */
const TRIED = 48;

/**
 * Compares the rings owned, and the best one possible, for each question.
 *
 * - `radius`: how far R may be off its target before the interval of R leaves
 *   the target out, with every source of the budget; the largest ring that
 *   stands on the flat wins.
 * - `conic`: the smallest conic constant that a difference between centre and
 *   reach shows; half the usable radius wins.
 * - `edge fault`: the smallest depth of a turned edge of given width, at the
 *   place within reach that shows it best, with the feet as they stand; of
 *   rings that show it alike the smallest, which says best where it lies.
 * - `astigmatism`: three feet see none, at any place; a sharp edge takes it
 *   for a sphere; a bar turned through a right angle shows it, and the best
 *   possible one is as wide as the work allows.
 *
 * Amounts are shown with the chance asked for (80 % unless stated), two-sided
 * at 5 %. Departures act to first order: about 1e-3 of the amplitude. The best
 * possible ring has the balls and the uncertainties of the first ring owned.
 *
 * @param rings The rings owned, at least one.
 * @param plan Work, scatter, sets, and how the analysis puts its intervals.
 * @returns One choice for each of the four questions.
 * @throws {RangeError} If there is no ring, or fewer than two sets.
 *
 * @see The project's derivation: response 4 a₄ c² r² to a₄ρ⁴, none to
 * astigmatism, confirmed by exact contact of three balls.
 *
 * @example
 * ```ts
 * import { chooseRing } from "sagbook/uncertainty/choose_ring.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const ring = (id: string, circle: number) => ({
 *   id, radiusUncertainty: mm(0.02), radiusUncertaintyAssumed: false,
 *   ballRadiusUncertainty: mm(0.002), expansion: 11.5e-6, foot: { kind: "foot out" },
 *   shape: { kind: "balls", circleRadius: mm(circle), ballRadius: mm(5), probeOffset: mm(0) },
 * } as const);
 * const choices = chooseRing([ring("small", 40), ring("middle", 75), ring("large", 120)], {
 *   work: { form: "concave", radius: mm(3000), diameter: mm(300), margin: mm(2) },
 *   scatter: { repeat: 0.0006, zeroing: 0.0008 },
 *   step: mm(0.001),
 *   sets: 5,
 * });
 * deepEqual(choices.map(({ recommended }) => recommended), ["large", "middle", "small", undefined]);
 * ```
 */
export function chooseRing(
  rings: readonly ComparedRing[],
  plan: RingChoicePlan,
): RingChoice[] {
  if (rings.length === 0) {
    throw new RangeError(
      "Cannot choose a ring as there must be at least one: current value is 0",
    );
  }
  const difference = detectableSag(plan);
  const answer = (question: RingQuestion) => (ring: ComparedRing): RingAnswer =>
    answerFor(question, ring, plan, difference);
  const trial = trialRings(rings[0], plan);
  return (["radius", "conic", "edge fault", "astigmatism"] as const).map(
    (question): RingChoice => {
      const answers = rings.map(answer(question));
      // Three feet see no astigmatism: there the best possible is a bar.
      const tried = question === "astigmatism" ? trial.map(asBar) : trial;
      const curve = tried.map(answer(question)).flatMap(
        ({ circleRadius, detectable }) =>
          detectable === undefined ? [] : [{ circleRadius, detectable }],
      );
      const recommended = least(answers)?.ring;
      const best = least(curve);
      return {
        question,
        amount: AMOUNT[question],
        rings: answers,
        ...(recommended === undefined ? {} : { recommended }),
        ...(best === undefined ? {} : { best }),
        curve,
      };
    },
  );
}

const AMOUNT = {
  "radius": "mm of radius",
  "conic": "conic constant",
  "edge fault": "mm of depth",
  "astigmatism": "mm peak to valley",
} as const;

/** What `least` chooses by. */
interface Shown {
  readonly circleRadius: Millimetres;
  readonly detectable?: number;
}

/** The entry with the smallest amount; of equal ones, the smallest ring. */
function least<Entry extends Shown>(
  entries: readonly Entry[],
): Entry | undefined {
  return entries
    .filter(({ detectable }) => detectable !== undefined)
    .toSorted((a, b) => a.circleRadius - b.circleRadius)
    .reduce<Entry | undefined>(
      (found, entry) =>
        (entry.detectable ?? 0) < (1 - 1e-6) * (found?.detectable ?? Infinity)
          ? entry
          : found,
      undefined,
    );
}

/** Smallest difference of sag between two places that the plan shows. */
function detectableSag(plan: RingChoicePlan): number {
  const { repeat, diameter = 0 } = plan.scatter;
  const { step, sets, power, halfWidth = studentRule(0.05, 0, step) } = plan;
  // Readings of one set share their zero and its rounding.
  const deviation = Math.sqrt(
    2 * (repeat ** 2 + step * step / 12) + diameter ** 2,
  );
  return detectableDifference({ deviation, sets, halfWidth }, power);
}

function answerFor(
  question: RingQuestion,
  ring: ComparedRing,
  plan: RingChoicePlan,
  difference: number,
): RingAnswer {
  const { shape } = ring;
  const foot = plan.foot ?? ring.foot;
  const circleRadius = effectiveFeet(shape, plan.work.form).circleRadius;
  const base = { ring: ring.id, circleRadius };
  const farthest = reachOf(shape, plan, foot);
  if (farthest === undefined) {
    return { ...base, reason: "does not fit the work" };
  }
  if (question === "radius") {
    // The best ring there could be may come with a larger flat.
    return ring.id !== "" && !fitsFlat(ring, plan)
      ? { ...base, reason: "does not fit the flat" }
      : { ...base, ...radiusAnswer(ring, plan) };
  }
  if (question === "astigmatism") {
    if (shape.kind === "balls") {
      return { ...base, reason: "three feet cannot see it" };
    }
    if (shape.kind === "edge") {
      return { ...base, reason: "reads it as a sphere" };
    }
    // δ = A ρ² cos 2θ: 2 A h² between two directions, 2 A a² peak to valley.
    const detectable = difference *
      (plan.work.diameter / 2 / circleRadius) ** 2;
    return { ...base, detectable, offset: millimetres(0) };
  }
  if (!(farthest > 0)) return { ...base, reason: "cannot leave the centre" };
  const response: Response = question === "conic"
    ? conicResponse(shape, plan, farthest)
    : edgeResponse(shape, plan, farthest, foot);
  // Less than a thousandth of the depth is below what first order can tell.
  if (question === "edge fault" && Math.abs(response.perUnit) < 1e-3) {
    return { ...base, reason: "does not touch the fault" };
  }
  return {
    ...base,
    detectable: difference / Math.abs(response.perUnit),
    offset: response.offset,
  };
}

/** Whether the gauge can be zeroed on the flat with this ring. */
function fitsFlat({ shape }: ComparedRing, { flat }: RingChoicePlan): boolean {
  return flat?.size === undefined || diameterOnFlat(shape) <= flat.size;
}

/** Rings of every size that fits, with the first ring's balls and care. */
function trialRings(
  like: ComparedRing,
  plan: RingChoicePlan,
): ComparedRing[] {
  const { form, radius, diameter, margin } = plan.work;
  const usable = diameter / 2 - margin;
  const ballRadius = like.shape.kind === "edge"
    ? millimetres(0)
    : like.shape.ballRadius;
  return Array.from({ length: TRIED }, (_, k): ComparedRing => {
    const circleRadius = millimetres(usable * (k + 2) / (TRIED + 2));
    return {
      ...like,
      id: "",
      shape: ballRing(circleRadius, ballRadius),
    };
  }).filter(({ shape }) =>
    contactCircleRadius(shape, form, radius) <= usable &&
    largerThanBalls(shape, ballRadius)
  );
}

/** A two-foot bar as wide as a ring. */
function asBar(like: ComparedRing): ComparedRing {
  const { shape } = like;
  if (shape.kind !== "balls") return like;
  const { circleRadius, ballRadius } = shape;
  const span = millimetres(2 * circleRadius);
  return { ...like, shape: { kind: "bar", span, ballRadius } };
}

/** Feet that stand in one another are no ring. */
function largerThanBalls(
  shape: ComparedRing["shape"],
  ballRadius: Millimetres,
): boolean {
  return shape.kind === "balls" &&
    shape.circleRadius * Math.sqrt(3) > 2 * ballRadius;
}
