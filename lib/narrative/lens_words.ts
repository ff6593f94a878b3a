/**
 * A lens in words: power with sign and index, focal length, test plate.
 *
 * @module
 */
import type { Displayable } from "../display/bundle.ts";
import { table } from "../display/table.ts";
import type { LengthUnit, Piece } from "../records/piece.ts";
import { expandUncertainty } from "../statistics/estimate_uncertainty.ts";
import type { Budget } from "../uncertainty/budget.ts";
import { type Dioptres, formatPower } from "../units/dioptre.ts";
import {
  formatWithUncertainty,
  roundToUncertainty,
} from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import type { LensReport } from "./lens_report.ts";

/** A length of a budget with its expanded uncertainty. */
function length({ value, expanded }: Budget, unit: LengthUnit): string {
  const size = formatWithUncertainty(
    millimetres(Math.abs(value)),
    millimetres(expanded),
    unit,
  );
  return value < 0 ? `−${size}` : size;
}

/** A power with its expanded uncertainty, dioptres and no index. */
function power(value: number, expanded: number): string {
  if (expanded === 0) return `${value.toFixed(3).replace("-", "−")} D`;
  const rounded = roundToUncertainty(value, expanded);
  return `${rounded.value.replace("-", "−")} ± ${rounded.uncertainty} D`;
}

/** The index as a power names it. */
function indexOf(of: Dioptres): string {
  return formatPower(of, 2).replace(/^.*\(/, "(");
}

/**
 * Says what the measured radius means for the lens, and what a plate says.
 *
 * @param report What was worked out; undefined for a piece that is no lens.
 * @param piece The piece.
 * @returns Sentences; none for a piece that is no lens.
 *
 * @example
 * ```ts
 * import { lensSentences } from "sagbook/narrative/lens_words.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(lensSentences(undefined, { form: "concave", unit: "mm" }), []);
 * ```
 */
export function lensSentences(
  report: LensReport | undefined,
  { form, unit, lens: record }: Pick<Piece, "form" | "unit" | "lens">,
): readonly string[] {
  if (report === undefined) return [];
  const { surface, lens, plate } = report;
  const said: string[] = [];
  if (surface) {
    const { estimate, tooling } = surface;
    const { expanded } = expandUncertainty(estimate);
    said.push(
      `The measured ${form} surface has a power of ${
        power(estimate.value, expanded)
      } ${indexOf(surface.power)} in air; on tools marked for 1.530 it is ${
        power(tooling.dioptres, expanded * 0.53 / (surface.power.index - 1))
      }.`,
    );
  } else if (record) {
    said.push(
      "No radius with an uncertainty is known yet, so the power of the lens waits for readings.",
    );
  }
  if (lens) {
    const { focalLength, backFocalLength, power: whole } = lens;
    said.push(
      focalLength && backFocalLength
        ? `With both surfaces and its thickness the lens has a power of ${
          power(whole.value, whole.expanded)
        }, a focal length of ${
          length(focalLength, unit)
        } and a back focal length of ${
          length(backFocalLength, unit)
        } behind the second surface (the measured one toward the light).`
        : `With both surfaces the lens has a power of ${
          power(whole.value, whole.expanded)
        }: none within what is known of it, so it has no focal length to state.`,
      leadSentence(focalLength ?? whole),
    );
  }
  if (plate) said.push(...plateSentences(plate, unit));
  return said;
}

function leadSentence({ lines }: Budget): string {
  const lead = lines.toSorted((a, b) => b.share - a.share)[0];
  return lead === undefined || lead.contribution === 0
    ? "No doubt is stated for any part of it."
    : `Most of its doubt is ${
      lead.source.replace("surface 1", "the measured surface").replace(
        "surface 2",
        "the second surface",
      )
    } (${Math.round(100 * lead.share)} % of the variance).`;
}

function plateSentences(
  { id, radius, ringLessPlate }: NonNullable<LensReport["plate"]>,
  unit: LengthUnit,
): string[] {
  const said = [
    `The fringes against ${id} make the radius ${length(radius, unit)}.`,
  ];
  if (ringLessPlate) {
    const { difference, expanded, normalisedError } = ringLessPlate;
    const apart = formatWithUncertainty(
      millimetres(Math.abs(difference)),
      millimetres(expanded),
      unit,
    );
    said.push(
      normalisedError <= 1
        ? `Ring and plate agree: they differ by ${apart} (E_n ${
          normalisedError.toFixed(2)
        }).`
        : `Ring and plate do not agree: the ring reads ${apart} ${
          difference > 0 ? "longer" : "shorter"
        } (E_n ${
          normalisedError.toFixed(2)
        }, above 1). Look at the ring's size, and at which of the two touches where.`,
    );
  }
  return said;
}

/**
 * Tabulates both surfaces of a lens, and the whole.
 *
 * @param report What was worked out.
 * @param piece The piece.
 * @returns A table a cell may return; undefined when there are no two surfaces
 * to put into it.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function lensTable(
  report: LensReport | undefined,
  { form, lens: record }: Pick<Piece, "form" | "lens">,
): Displayable | undefined {
  const { surface, lens } = report ?? {};
  if (!surface || !lens || !record?.second) return undefined;
  const { second } = record;
  const row = (name: string, form: string, value: string, share: string) => ({
    part: name,
    form,
    power: value,
    "of the power": share,
  });
  const whole = lens.power.value;
  const share = (part: number): string =>
    whole === 0 ? "–" : `${Math.round(100 * part / whole)} %`.replace("-", "−");
  const { first: one, second: two } = lens;
  const thick = whole - one.dioptres - two.dioptres;
  return table([
    row(
      "measured surface",
      form,
      power(one.dioptres, expandUncertainty(surface.estimate).expanded),
      share(one.dioptres),
    ),
    row(
      "second surface",
      second.form,
      `${two.dioptres.toFixed(3).replace("-", "−")} D`,
      share(two.dioptres),
    ),
    row(
      "thickness",
      "",
      `${thick.toFixed(3).replace("-", "−")} D`,
      share(thick),
    ),
    row("lens", "", power(whole, lens.power.expanded), "100 %"),
  ], {
    caption: `Powers in air at n = ${record.index}; concave is negative.`,
  });
}
