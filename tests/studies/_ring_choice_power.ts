/** How often the whole analysis sees what the choice of ring says it sees. */
import { evenTerm, turnedEdge } from "sagbook/geometry/contact_departures.ts";
import { contactCircleRadius } from "sagbook/geometry/contact_circle.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { threeFootMean } from "sagbook/geometry/three_foot_mean.ts";
import type { Random } from "sagbook/numerics/random.ts";
import type { Bench, Ring } from "sagbook/records/bench.ts";
import type { Piece } from "sagbook/records/piece.ts";
import type { Reading } from "sagbook/records/reading.ts";
import type { HalfWidthRule } from "sagbook/uncertainty/detection.ts";
import { radiusBudget } from "sagbook/uncertainty/radius_budget.ts";
import type {
  RingAnswer,
  RingChoicePlan,
  RingQuestion,
} from "sagbook/uncertainty/ring_question.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import { intervalsOf } from "sagbook/zones/zone_difference.ts";

/** An invented ring of 60 mm. */
export const POWER_RING: Ring = {
  id: "A",
  shape: {
    kind: "balls",
    circleRadius: mm(60),
    ballRadius: mm(6.35),
    probeOffset: mm(0),
  },
  radiusUncertainty: mm(0.02),
  radiusUncertaintyAssumed: false,
  ballRadiusUncertainty: mm(0.002),
  expansion: 11.5e-6,
  foot: { kind: "foot out" },
};

/** An invented 300 mm disc, five sets, scatter above the display step. */
export const POWER_PLAN: RingChoicePlan = {
  work: {
    form: "concave",
    radius: mm(3000),
    diameter: mm(300),
    margin: mm(2),
  },
  scatter: { repeat: 0.0012, zeroing: 0.0016 },
  step: mm(0.001),
  sets: 5,
  gauge: { id: "G", scaleUncertainty: 0.001 },
};

const { work, scatter, step, sets, gauge } = POWER_PLAN;

/** The interval that the analysis of zones puts round a difference. */
export const PLANNED_RULE: HalfWidthRule = (variance, n) =>
  intervalsOf(
    {
      mean: 0,
      standardError: Math.sqrt(variance / n),
      dof: n - 1,
      variance,
      replicates: n,
    },
    step,
    1,
  ).interval95?.high ?? Infinity;

const piece: Piece = {
  name: "disc",
  form: work.form,
  diameter: work.diameter,
  bevel: mm(1),
  margin: mm(1),
  unit: "mm",
  invented: true,
};
const bench: Bench = {
  gauge: {
    id: "G",
    shows: { kind: "sag" },
    countsUpOn: "declared surface",
    steps: { mm: step },
    scaleUncertainty: 0.001,
  },
  rings: [POWER_RING],
};

/** Simulates sessions on a surface that departs by the amount of an answer. */
export function chanceSeen(
  question: RingQuestion,
  answer: RingAnswer,
  sessions: number,
  random: Random,
): number {
  let seen = 0;
  for (let run = 0; run < sessions; run++) {
    const shown = question === "radius"
      ? radiusSeen(answer, random)
      : differenceSeen(question, answer, random);
    if (shown) seen++;
  }
  return seen / sessions;
}

/** Both sags of the surface: at the centre and at the answer's place. */
function sags(question: RingQuestion, answer: RingAnswer): [number, number] {
  const feet = { circleRadius: mm(60), ballRadius: mm(6.35) };
  const sphere = sagFromRadius(work.radius, feet, work.form);
  const amount = answer.detectable ?? NaN;
  const surface = question === "conic"
    ? evenTerm(4, amount / (8 * work.radius ** 3))
    : turnedEdge({ halfDiameter: 150, width: 20, depth: amount, power: 2 });
  const circleRadius = contactCircleRadius(
    POWER_RING.shape,
    work.form,
    work.radius,
  );
  const at = (offset: number): number =>
    sphere + threeFootMean((x, y) => surface(x, y).height, {
      circleRadius,
      offset: mm(offset),
      diameterDegrees: 0,
      footDegrees: 0,
    });
  return [at(0), at(answer.offset ?? NaN)];
}

/** One reading as a display shows it, against a zero that it rounds too. */
const shown = (sag: number, zero: number, random: Random): number =>
  step * Math.round((sag + zero + scatter.repeat * random.normal()) / step);

const drawnZero = (random: Random): number =>
  scatter.zeroing * random.normal() + step * (random.uniform() - 0.5);

function differenceSeen(
  question: RingQuestion,
  answer: RingAnswer,
  random: Random,
): boolean {
  const [centre, edge] = sags(question, answer);
  const readings: Reading[] = [];
  for (let set = 0; set < sets; set++) {
    const zero = drawnZero(random);
    [centre, edge].forEach((sag, place) => {
      readings.push({
        file: "readings.csv",
        line: readings.length + 2,
        order: readings.length,
        session: "S",
        ring: "A",
        zeroing: `${set}`,
        diameterDegrees: 36 * set,
        foot: { kind: "foot out" },
        on: "work",
        zone: place === 0
          ? { label: "centre", distance: mm(0) }
          : { label: "edge", distance: mm(answer.offset ?? 0) },
        offset: mm(place === 0 ? 0 : answer.offset ?? 0),
        sag: mm(shown(sag, zero, random)),
        step,
        unit: "mm",
      });
    });
  }
  const [difference] = analyseSession(readings, piece, bench)?.differences ??
    [];
  const { low = -1, high = 1 } = difference?.interval95 ?? {};
  return low > 0 || high < 0;
}

/** Whether the interval of R leaves out a target that R misses. */
function radiusSeen(answer: RingAnswer, random: Random): boolean {
  const circle = 60 + POWER_RING.radiusUncertainty * random.normal();
  const ball = 6.35 + POWER_RING.ballRadiusUncertainty * random.normal();
  const scale = 1 + (gauge?.scaleUncertainty ?? 0) * random.normal();
  const sag = sagFromRadius(
    work.radius,
    { circleRadius: mm(circle), ballRadius: mm(ball) },
    work.form,
  ) / scale;
  const read = Array.from(
    { length: sets },
    () => shown(sag, drawnZero(random), random),
  );
  const mean = read.reduce((sum, value) => sum + value, 0) / sets;
  const variance = read.reduce((sum, value) => sum + (value - mean) ** 2, 0) /
    (sets - 1);
  const { lower, upper = Infinity } = radiusBudget({
    form: work.form,
    ring: POWER_RING,
    gauge,
    step,
    roundingShare: 0,
    sag: {
      value: mean,
      own: Math.sqrt(variance / sets),
      dof: sets - 1,
      common: {},
    },
  });
  // The target lies off by the amount, on either side with equal chance.
  const side = random.uniform() < 0.5 ? 1 : -1;
  const target = work.radius + side * (answer.detectable ?? NaN);
  return target < lower || target > upper;
}
