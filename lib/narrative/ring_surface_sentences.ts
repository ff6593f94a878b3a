/**
 * A calibration on known surfaces, in words.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { RingSize, SizeOnRecord } from "../uncertainty/rings_on_record.ts";
import { formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { someFigures, twoFigures } from "./plan_words.ts";
import { writeSmall } from "./sag_words.ts";

/** A calibration on known surfaces with where its scatter comes from. */
export type KnownSurfaceCalibration = NonNullable<SizeOnRecord["bySurfaces"]>;

const SCATTER: Record<KnownSurfaceCalibration["scatterFrom"], string> = {
  "these readings": "",
  "the gauge":
    ", with the scatter the gauge has elsewhere since no surface was read twice",
  "display step":
    ", with a scatter of one display step assumed since no surface was read twice",
};

/**
 * Says what known surfaces gave: the size, what became of the ball's prior,
 * whether they agree among themselves, and which may curve the other way.
 *
 * @param size Which size it is.
 * @param found The calibration.
 * @param unit The user's unit.
 * @returns Sentences without the ring's name.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function surfaceSentences(
  size: RingSize,
  found: KnownSurfaceCalibration,
  unit: LengthUnit,
): readonly string[] {
  const { circleRadius, expanded, residuals, scatterFrom, ball } = found;
  const count = residuals.length;
  const said = [
    `${count} known surface${count === 1 ? " gives" : "s give"} a ${size} of ${
      formatWithUncertainty(
        millimetres(circleRadius.value),
        millimetres(expanded),
        unit,
      )
    } radius${SCATTER[scatterFrom]}.`,
  ];
  const ballWords = ballSentence(found, unit);
  if (ballWords !== undefined) said.push(ballWords);
  if (!ball.consistent) {
    said.push(
      "what the surfaces say of the ball contradicts the micrometer: measure the ball again, and look at the certificates.",
    );
  }
  const { probability } = found.agreement;
  if (probability < 0.05) {
    const worst = [...residuals].sort((a, b) =>
      Math.abs(b.residual) - Math.abs(a.residual)
    )[0];
    said.push(
      `the surfaces do not agree with one circle (chance ${
        probability < 0.001 ? "below 0.1" : (100 * probability).toPrecision(1)
      } %); ${worst.surface} is farthest off, by ${
        writeSmall(worst.residual, unit)
      } of sag.`,
    );
  }
  for (const { surface, radiusIfOther } of found.suspectedForm) {
    said.push(
      `${surface} would fit this ring if it curved the other way (${
        someFigures(radiusIfOther, unit, 5)
      }): is its form written the wrong way round?`,
    );
  }
  return said;
}

/** What became of the micrometer's figure for the ball. */
function ballSentence(
  { ball, ballRadius, ballRadiusUncertainty, residuals }:
    KnownSurfaceCalibration,
  unit: LengthUnit,
): string | undefined {
  if (ballRadius === 0) return undefined;
  const { freed, bySurfaces, bySurfacesUncertainty } = ball;
  const doubt = twoFigures(ballRadiusUncertainty, unit);
  if (freed) {
    return `these surfaces know the ball better than the micrometer does, so it was fitted along: ball radius ${
      someFigures(ballRadius, unit, 5)
    }, standard uncertainty ${doubt}.`;
  }
  const kept = `the ball radius is the micrometer's (standard uncertainty ${
    ballRadiusUncertainty === 0 ? "none stated" : doubt
  })`;
  if (bySurfaces === undefined || bySurfacesUncertainty === undefined) {
    return residuals.length === 1
      ? `${kept}: one surface cannot tell ball from circle.`
      : `${kept}: surfaces so much alike cannot tell ball from circle.`;
  }
  return `${kept}: the surfaces alone would know it to ${
    twoFigures(bySurfacesUncertainty, unit)
  } only.`;
}
