/**
 * The first set of an exercise worked out as a student does it by hand.
 *
 * @module
 */
import type { Exercise } from "../exercises/exercise.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { formatLength } from "../units/format_length.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { stepDecimals } from "./_bench_step_decimals.ts";
import { smallUnit } from "./sag_words.ts";

/** The readings of the work on the first zeroing, the two ends of a place together. */
function firstSet({ readings }: Pick<SessionAnalysis, "readings">) {
  const zeroing = readings.at(0)?.reading.zeroing;
  const places = new Map<string, { distance: number; sags: Millimetres[] }>();
  for (const { reading } of readings) {
    if (reading.zeroing !== zeroing) continue;
    const distance = Math.abs(reading.offset);
    const label = reading.zone.label.replace(/^[-−]/, "");
    const place = places.get(label) ?? { distance, sags: [] };
    place.sags.push(reading.sag);
    places.set(label, place);
  }
  return [...places]
    .map(([label, { distance, sags }]) => ({
      label,
      distance,
      ends: sags.length,
      sag: millimetres(sags.reduce((sum, sag) => sum + sag, 0) / sags.length),
    }))
    .sort((a, b) => a.distance - b.distance);
}

/**
 * Works out the first set as one does with a pencil: the readings as they
 * stand, the two ends of a place averaged, no drift taken out.
 *
 * @param exercise The exercise: ring, ball and unit are those a student knows.
 * @param session The session as the report read it.
 * @returns One sentence: R at each place, the edge less the centre, and what the
 * flat showed afterwards. Undefined without a reading.
 *
 * @example
 * ```ts
 * import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
 * import { byHandWords } from "sagbook/narrative/exercise_by_hand.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { equal } from "node:assert/strict";
 *
 * const exercise = drawExercise(new Random(1), "A");
 * equal(byHandWords(exercise, { readings: [], looks: [] }), undefined);
 * ```
 */
export function byHandWords(
  { gauge }: Exercise,
  session: Pick<SessionAnalysis, "readings" | "looks">,
): string | undefined {
  const places = firstSet(session);
  if (places.length === 0) return undefined;
  const { unit } = gauge;
  const feet = {
    circleRadius: millimetres(gauge.statedRadius),
    ballRadius: millimetres(gauge.ballRadius),
  };
  const decimals = stepDecimals(millimetres(gauge.step), unit);
  const written = (sag: Millimetres, more = 0): string =>
    formatLength(sag, unit, decimals + more);
  const radii = places.map(({ label, sag, ends }) =>
    `${label} ${written(sag, ends > 1 ? 1 : 0)}, R\u00a0=\u00a0${
      formatLength(
        radiusFromSag(sag, feet, "concave"),
        unit,
        unit === "mm" ? 0 : 1,
      )
    }`
  );
  const [first, last] = [places[0], places[places.length - 1]];
  const less = last.sag - first.sag;
  const difference = places.length < 2
    ? ""
    : `. The ${last.label} less the ${first.label} is ${less < 0 ? "−" : "+"}${
      formatLength(
        millimetres(Math.abs(less)),
        smallUnit(unit),
        unit === "mm" ? 1 : 2,
      )
    }`;
  const { zeroing } = session.readings[0].reading;
  const look = session.looks.find((one) => one.zeroing === zeroing);
  const flat = look === undefined
    ? ""
    : `; the flat then shows ${
      written(look.sag)
    }, the drift of the zero in this set`;
  return `The first set by hand, the readings as they stand and the two ends of a place averaged (R = r²/(2s) + s/2 + b, r\u00a0=\u00a0${
    formatLength(feet.circleRadius, unit, unit === "mm" ? 3 : 4)
  }, b\u00a0=\u00a0${
    formatLength(feet.ballRadius, unit, unit === "mm" ? 2 : 4)
  }): ${radii.join("; ")}${difference}${flat}.`;
}
