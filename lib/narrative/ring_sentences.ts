/**
 * What a bench's records say of its rings, in words.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { CalibrationHistory } from "../uncertainty/calibration_history.ts";
import type { RingCalibration } from "../uncertainty/ring_calibration.ts";
import type { RingOnRecord } from "../uncertainty/rings_on_record.ts";
import type { SizeOnRecord } from "../uncertainty/rings_on_record.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import { surfaceSentences } from "./ring_surface_sentences.ts";
import { twoFigures } from "./plan_words.ts";

/**
 * Says what is on record about the rings: how each was calibrated, whether
 * that bears out the radius that is used, its twin, and when it is due again.
 *
 * @param rings What is on record.
 * @param radius Radius of curvature of the work in mm, which tells what a
 * difference does to R; undefined where none is known.
 * @param unit The user's unit.
 * @returns Sentences; none for a ring that states its uncertainty and keeps no
 * record.
 *
 * @example
 * ```ts
 * import { ringSentences } from "sagbook/narrative/ring_sentences.ts";
 * import { equal } from "node:assert/strict";
 *
 * const [sentence] = ringSentences([{
 *   ring: "A", uncertaintyAssumed: true, radiusUncertainty: 0.05, sizes: [],
 *   monthsAssumed: true, undated: false,
 * }], undefined, "mm");
 * equal(
 *   sentence.replaceAll("\u00a0", " "),
 *   "A: no uncertainty of its radius is stated; 0.050 mm (standard) was taken and is marked as assumed. Calibrate the ring, or state what you know of it.",
 * );
 * ```
 */
export function ringSentences(
  rings: readonly RingOnRecord[],
  radius: number | undefined,
  unit: LengthUnit,
): readonly string[] {
  return rings.flatMap((ring) => {
    const { ring: name, sizes, history, twin } = ring;
    const said = sizes.flatMap((size) =>
      sizeSentences(size, ring, radius, unit)
    );
    if (ring.uncertaintyAssumed) {
      const taken = twoFigures(ring.radiusUncertainty, unit);
      said.push(
        `no uncertainty of its radius is stated; ${taken} (standard) was taken and is marked as assumed.${
          sizes.length > 0
            ? ""
            : " Calibrate the ring, or state what you know of it."
        }`,
      );
    }
    if (history) said.push(...historySentences(history, ring, unit));
    else if (ring.undated) {
      said.push(
        "its calibration has no date, so nobody knows when the next is due: write calibrated_on.",
      );
    }
    if (twin) {
      const { comparison, measured } = twin;
      const apart = difference(comparison, unit);
      const moves = `${percent(comparison.relativeChangeOfR)} of R`;
      said.push(
        `against its twin ${twin.ring} it is ${apart}; ${
          comparison.agree
            ? "they agree, and either may stand in for the other within that"
            : `they do not agree: changing one for the other moves R by ${moves}`
        }${
          measured
            ? ""
            : " (by what the bench file states, not by measurements)"
        }.`,
      );
    }
    return said.map((sentence) => `${name}: ${sentence}`);
  });
}

/** A radius with its expanded uncertainty. */
function written(
  { circleRadius, expanded }: RingCalibration,
  unit: LengthUnit,
): string {
  return formatWithUncertainty(
    millimetres(circleRadius.value),
    millimetres(expanded),
    unit,
  );
}

function percent(fraction: number): string {
  const value = 100 * Math.abs(fraction);
  return `${
    value.toFixed(value === 0 ? 0 : Math.max(0, decimalsFor(value)))
  } %`;
}

function difference(
  { difference, expanded }: {
    readonly difference: number;
    readonly expanded: number;
  },
  unit: LengthUnit,
): string {
  const size = formatWithUncertainty(
    millimetres(Math.abs(difference)),
    millimetres(expanded),
    unit,
  );
  return `${size} ${difference < 0 ? "smaller" : "larger"}`;
}

/** A length with as many figures as another's uncertainty supports. */
function asFine(length: number, expanded: number, unit: LengthUnit): string {
  const places = decimalsFor(amountIn(millimetres(expanded), unit));
  return formatLength(millimetres(length), unit, Math.max(0, places));
}

function sizeSentences(
  found: SizeOnRecord,
  { uncertaintyAssumed }: RingOnRecord,
  radius: number | undefined,
  unit: LengthUnit,
): string[] {
  const { size, bySpacings, bySurfaces, agreement, best, verdict } = found;
  const said: string[] = [];
  if (bySpacings) {
    const { over, overStated, ifOther, isStated } = bySpacings;
    said.push(
      `the caliper gives a ${size} of ${written(bySpacings, unit)} radius${
        over === "outsides"
          ? ", from figures over the outsides less one ball diameter"
          : ""
      }${isStated ? "; that is the radius used" : ""}.`,
    );
    if (!overStated) {
      said.push(
        `nothing says what the caliper spanned; centre to centre was taken. ${
          ifOther === undefined
            ? "Over the outsides these figures could not be"
            : `Over the outsides the same figures make it ${
              asFine(ifOther, bySpacings.expanded, unit)
            }`
        }. Which was it? Write spacings_measured.`,
      );
    }
    if (bySpacings.caliperAssumed) {
      said.push(
        `the caliper's uncertainty is not stated; ${
          twoFigures(bySpacings.caliperUncertainty, unit)
        } (standard, for one figure over balls) was assumed.`,
      );
    }
  }
  if (bySurfaces) {
    said.push(...surfaceSentences(found.size, bySurfaces, unit));
  }
  if (agreement) {
    said.push(
      `caliper and surfaces ${
        agreement.agree ? "agree" : "do not agree"
      }: the caliper's is ${difference(agreement, unit)} (E_n ${
        agreement.normalisedError.toFixed(2)
      }, ${
        agreement.agree
          ? "1 or less"
          : "above 1; find out why before either is used"
      }).`,
    );
  }
  if (verdict) said.push(verdictSentence(found, verdict, radius, unit));
  const sound = agreement?.agree !== false &&
    (bySurfaces?.suspectedForm.length ?? 0) === 0 &&
    (bySurfaces?.agreement.probability ?? 1) >= 0.05;
  if (
    sound && verdict !== undefined &&
      (verdict !== "agrees" || uncertaintyAssumed) ||
    (sound && bySpacings?.isStated && uncertaintyAssumed)
  ) {
    const u = twoFigures(best.standardUncertainty, unit);
    said.push(
      `to use it, write its radius as ${
        asFine(best.circleRadius.value, best.standardUncertainty, unit)
      } and radius_uncertainty as ${u} (standard).`,
    );
  }
  return said;
}

function verdictSentence(
  { stated, best, size }: SizeOnRecord,
  verdict: NonNullable<SizeOnRecord["verdict"]>,
  radius: number | undefined,
  unit: LengthUnit,
): string {
  const used = `the bench file states ${asFine(stated, best.expanded, unit)}`;
  switch (verdict) {
    case "agrees":
      return `${used}, which agrees within both uncertainties.`;
    case "diameter for radius":
      return `${used}, twice what was measured: is that the diameter, taken for the radius? R comes out four times too long with it.`;
    case "spacing for radius":
      return `${used}, √3 times what was measured: is that the distance between two feet, taken for the radius of their circle? R comes out three times too long with it.`;
    case "differs": {
      const change = 2 * (stated - best.circleRadius.value) /
        best.circleRadius.value;
      const moved = radius === undefined
        ? `${percent(change)} of R`
        : twoFigures(Math.abs(change) * radius, unit);
      return `${used}, which differs by more than both uncertainties: R comes out ${moved} too ${
        change > 0 ? "long" : "short"
      } with a ${size} like that.`;
    }
  }
}

function historySentences(
  history: CalibrationHistory,
  { monthsAssumed, undated }: RingOnRecord,
  unit: LengthUnit,
): string[] {
  const { calibrations, dueOn, daysLeft, sinceBefore, sinceFirst } = history;
  const newest = calibrations[calibrations.length - 1];
  const rule = monthsAssumed
    ? " (12 months assumed; write every_months for a rule of your own)"
    : "";
  const said = [
    `calibrated on ${newest.on.slice(0, 10)}${
      undated ? " at the latest that is dated" : ""
    }; the next ${
      daysLeft < 0
        ? `was due on ${dueOn}, which has passed`
        : `is due on ${dueOn}`
    }${rule}.`,
  ];
  if (sinceBefore) {
    said.push(
      `since the calibration before it is ${difference(sinceBefore, unit)}, ${
        sinceBefore.agree
          ? "which its uncertainty covers"
          : "more than its uncertainty covers: look for wear, a blow or a loose foot, and shorten the interval"
      }.`,
    );
  }
  if (sinceFirst && sinceBefore?.agree && !sinceFirst.agree) {
    said.push(
      `since the first of ${calibrations.length} calibrations it is ${
        difference(sinceFirst, unit)
      }: it creeps, though no step shows alone.`,
    );
  }
  return said;
}
