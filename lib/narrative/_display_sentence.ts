/**
 * A study whose readings repeat to the last figure, in words.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { SurfaceComponents } from "../repeatability/surface_components.ts";
import { writeSmall } from "./sag_words.ts";

/** What readings without any scatter between repeats say. */
export function displaySentence(
  { display: { step }, zeroings }: SurfaceComponents,
  floor: number | undefined,
  unit: LengthUnit,
): string {
  const means = zeroings.map(({ departures }) =>
    departures.reduce((sum, one) => sum + one, 0) / departures.length
  );
  const apart = means.length === 0
    ? 0
    : Math.max(...means) - Math.min(...means);
  const seen = apart < 1e-9
    ? "The readings are all equal"
    : `The zeroings differ by up to ${
      writeSmall(apart, unit)
    }, and beside that the readings repeat to the last figure`;
  return step === undefined || floor === undefined
    ? `${seen}; bench.json states no display step, so how much the display hides is not known: state "display_step".`
    : `${seen}: they are limited by the display (step ${
      writeSmall(step, unit, 1)
    }), which hides at least ${
      writeSmall(floor, unit)
    } of standard uncertainty in every reading, and averaging does not shrink it.`;
}
