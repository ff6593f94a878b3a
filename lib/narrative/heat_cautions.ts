/**
 * What the temperatures in the log say about one session.
 *
 * @module
 */
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { thermalWarnings } from "../uncertainty/thermal_check.ts";
import { conductingGlass } from "../uncertainty/thermal_piece.ts";
import { millimetres } from "../units/length.ts";
import { thermalSentence } from "./thermal_words.ts";

/** Kelvin apart that are spoken of where the glass is not known: common
 * practice, no source. */
const APART = 2;
/** Change of R that heat may make without a word: common practice, no source. */
const ALLOWED = 1e-4;

/** Mean difference of two temperatures over the readings that hold both. */
function meanApart(
  readings: readonly Reading[],
  apart: (reading: Reading) => number,
): number | undefined {
  let [sum, count] = [0, 0];
  for (const reading of readings) {
    const kelvin = apart(reading);
    if (Number.isNaN(kelvin)) continue;
    sum += kelvin;
    count++;
  }
  return count === 0 ? undefined : sum / count;
}

/**
 * Says where work, bench and air were apart in temperature while a session was
 * read: the glass was bent then, and no interval covers that.
 *
 * With glass and thickness known it gives how far off the radius may read;
 * without them it speaks from 2 K on (common practice, no source).
 *
 * @param readings Readings of the session.
 * @param piece The piece.
 * @param radius Its radius in mm, where one is known.
 * @returns Sentences; none where no temperature was written down.
 *
 * @example
 * ```ts
 * import { heatCautions } from "sagbook/narrative/heat_cautions.ts";
 * import { match } from "node:assert/strict";
 *
 * const reading = { session: "S1", temperatureWork: 29, temperatureAir: 18 };
 * const [said] = heatCautions(
 *   [reading as unknown as Parameters<typeof heatCautions>[0][number]],
 *   { form: "concave", unit: "mm" },
 *   2520,
 * );
 * match(said, /^The work was 11\.0 K warmer than the air/);
 * ```
 */
export function heatCautions(
  readings: readonly Reading[],
  piece: Pick<Piece, "form" | "unit" | "glass" | "thickness">,
  radius: number | undefined,
): readonly string[] {
  const glass = conductingGlass(piece.glass);
  const { form, thickness, unit } = piece;
  if (glass === undefined || thickness === undefined || radius === undefined) {
    return plainCautions(readings);
  }
  const warnings = (support: "cold bench" | "insulating pad") =>
    thermalWarnings(readings, {
      piece: {
        radius: millimetres(radius),
        form,
        thickness,
        expansion: glass.expansion,
      },
      glass,
      support,
      allowed: millimetres(radius * ALLOWED),
    }).warnings;
  return [
    ...warnings("insulating pad"),
    ...warnings("cold bench").filter(({ kind }) =>
      kind === "bench and air apart"
    ),
  ].map((warning) => thermalSentence(warning, unit));
}

function plainCautions(
  readings: readonly Reading[],
): readonly string[] {
  const said: string[] = [];
  const speak = (what: string, kelvin: number | undefined): void => {
    if (kelvin === undefined || Math.abs(kelvin) < APART) return;
    said.push(
      `The ${what} was ${Math.abs(kelvin).toFixed(1)} K ${
        kelvin > 0 ? "warmer" : "colder"
      } than the air while this was read: that bends the glass, and no interval here covers it. Let it come to rest, off the bench on three small supports, and read again; with glass and thickness in piece.json the page says how much it makes.`,
    );
  };
  speak(
    "work",
    meanApart(
      readings,
      ({ temperatureWork: work, temperatureAir: air }) =>
        (work ?? NaN) - (air ?? NaN),
    ),
  );
  speak(
    "bench",
    meanApart(
      readings,
      ({ temperatureBench: bench, temperatureAir: air }) =>
        (bench ?? NaN) - (air ?? NaN),
    ),
  );
  return said;
}
