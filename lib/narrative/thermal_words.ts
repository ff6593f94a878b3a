/**
 * Heat in the glass, the ring and the bench, in words.
 *
 * @module
 */
import type { Displayable } from "../display/bundle.ts";
import { table } from "../display/table.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { ThermalWarning } from "../uncertainty/thermal_check.ts";
import type { HeatOfPiece } from "../uncertainty/thermal_piece.ts";
import { twoFigures } from "./plan_words.ts";

/** A change of a reading with its sign in words. */
function way(length: number, unit: LengthUnit): string {
  return `${twoFigures(Math.abs(length), unit)} too ${
    length > 0 ? "long" : "short"
  }`;
}

/** Minutes, or hours where minutes are too fine. */
function span(seconds: number): string {
  const minutes = seconds / 60;
  if (minutes < 1) return "under 1 min";
  if (minutes < 100) return `${Math.round(minutes)} min`;
  return `${(minutes / 60).toFixed(1)} h`;
}

/**
 * Says what one warning about heat means.
 *
 * @param warning The warning.
 * @param unit The user's unit.
 * @returns One or two sentences.
 *
 * @example
 * ```ts
 * import { thermalSentence } from "sagbook/narrative/thermal_words.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const text = thermalSentence({
 *   kind: "bench and air apart", kelvin: 4, radiusReadsLonger: mm(0.78), sessions: ["S1"],
 * }, "mm");
 * equal(
 *   text.replaceAll("\u00a0", " "),
 *   "The bench was 4.0 K colder than the air (S1): work lying on it reads 0.78 mm too long for good. Rest it on three small supports, away from the bench.",
 * );
 * ```
 */
export function thermalSentence(
  warning: ThermalWarning,
  unit: LengthUnit,
): string {
  const kelvin = (value: number): string => `${Math.abs(value).toFixed(1)} K`;
  const { radiusReadsLonger: longer } = warning;
  switch (warning.kind) {
    case "bench and air apart":
      return `The bench was ${kelvin(warning.kelvin)} ${
        warning.kelvin > 0 ? "colder" : "warmer"
      } than the air (${warning.sessions.join(", ")}): work lying on it reads ${
        way(longer, unit)
      } for good. Rest it on three small supports, away from the bench.`;
    case "work and air apart":
      return `The work was ${kelvin(warning.kelvin)} ${
        warning.kelvin > 0 ? "warmer" : "colder"
      } than the air (${
        warning.sessions.join(", ")
      }): while it settles on a pad the radius reads up to ${
        way(longer, unit)
      }.`;
    case "too soon after work":
      return `Session ${warning.session} was read ${
        Math.round(warning.minutes)
      } minutes after warm work; ${
        Math.round(warning.minutesNeeded)
      } are needed on a pad, and the radius read about ${way(longer, unit)}${
        warning.warmthAssumed
          ? " (5 K of warmth and a pad under it are our assumption)"
          : ""
      }.`;
  }
}

/**
 * Says what a kelvin does: across the glass, in it, in the ring, in the bench.
 *
 * @param heat What heat does to the piece; undefined where it is not known.
 * @param unit The user's unit.
 * @returns Sentences.
 *
 * @example
 * ```ts
 * import { heatSentences } from "sagbook/narrative/thermal_words.ts";
 * import { match } from "node:assert/strict";
 *
 * match(heatSentences(undefined, "mm")[0], /thickness and glass/);
 * ```
 */
export function heatSentences(
  heat: HeatOfPiece | undefined,
  unit: LengthUnit,
): readonly string[] {
  if (heat === undefined) {
    return [
      "What heat does to this piece is not known: state its thickness and glass (borosilicate, soda-lime or fused silica) in the piece file.",
    ];
  }
  const { perGradientKelvin, perPieceKelvin, perBenchKelvin, perRingKelvin } =
    heat;
  const said = [
    `An upper face 1 K warmer than the lower makes the radius read ${
      way(perGradientKelvin, unit)
    }; all of the piece 1 K warmer makes the radius itself ${
      twoFigures(perPieceKelvin, unit)
    } longer.`,
    `On a bench 1 K colder than the air it reads ${
      way(perBenchKelvin, unit)
    } for as long as it lies there; a warmer bench does the opposite.`,
  ];
  const largest =
    perRingKelvin.toSorted((a, b) =>
      a.radiusReadsLonger - b.radiusReadsLonger
    )[0];
  if (largest) {
    const alike = perRingKelvin.every(({ radiusReadsLonger }) =>
      radiusReadsLonger === largest.radiusReadsLonger
    );
    said.push(
      `${
        alike ? "A ring" : `The ring ${largest.ring}`
      } 1 K warmer than when it was calibrated makes the radius read ${
        way(largest.radiusReadsLonger, unit)
      }.`,
    );
  }
  said.push(
    "Gauge and ring settle too: hold them by cloth or wood, and lay them beside the work first. Heat given off by a face in still air is only known to a third, and the times with it.",
  );
  return said;
}

const LYING: Record<HeatOfPiece["supports"][number]["support"], string> = {
  "small supports": "three small supports, air on both faces",
  "insulating pad": "a pad that keeps heat in",
  "cold bench": "a bench that holds the lower face",
};

/**
 * Tabulates how long the piece settles, by what it lies on.
 *
 * @param heat What heat does to the piece; undefined where it is not known.
 * @param unit The user's unit.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function heatTable(
  heat: HeatOfPiece | undefined,
  unit: LengthUnit,
): Displayable {
  if (heat === undefined) {
    return table([], { caption: "No thickness and glass are stated." });
  }
  const { glass, thickness, supports } = heat;
  return table(
    supports.map(({ support, times, wait, after }) => ({
      "lying on": LYING[support],
      "gradient left to itself": span(times.leftToItself),
      "one face held": span(times.oneFaceHeld),
      "driven by the air": span(times.drivenByAir),
      "wait": span(wait),
      ...Object.fromEntries(
        after.map(({ minutes, radiusReadsLonger }) => [
          `after ${minutes} min`,
          Math.abs(radiusReadsLonger) < 1e-3
            ? "reads true"
            : way(radiusReadsLonger, unit),
        ]),
      ),
    })),
    {
      caption: `How ${
        twoFigures(thickness, unit)
      } of ${glass.name} settles: three times in which a difference of warmth falls to 37 %, the wait until 5 % is left of the one that governs, and the radius read after work left it 5 K warm.`,
    },
  );
}
