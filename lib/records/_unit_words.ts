/**
 * Words about units that stand where no reader looks for one.
 *
 * @module
 */
import type { Fault } from "./_line_faults.ts";
import type { Problem } from "./problem.ts";
import { bracketed } from "./_column_names.ts";
import { unitOfWord } from "./_read_cell.ts";
import type { TableLayout } from "./_table_layout.ts";
import { readingColumns } from "./_table_rows.ts";

/** Steps, marks and the like: their size is not said. */
const STEPS =
  /^(?:tenths?|div(?:ision|s|isions)?\.?|counts?|steps?|ticks?|graduations?|marks?)$/i;
/** A size with a unit, as in `0.0001 in`, `1e-4"`, `x 0.01 mm`. */
const SIZE = /^[x×*]?\s*([\d.,]+(?:e[-\u2212]?\d+)?)\s*(\D+)$/i;
/** A larger one, in mm or inches, is a place on the work. */
const LARGEST_STEP = 0.1;

function isScale(words: string): boolean {
  if (STEPS.test(words)) return true;
  const [, typed, word] = SIZE.exec(words) ?? [];
  if (typed === undefined) return false;
  const size = Number(typed.replace(",", ".").replace("\u2212", "-"));
  const unit = unitOfWord(word.trim());
  return unit === "mm" || unit === "in"
    ? size > 0 && size <= LARGEST_STEP
    : unit !== undefined && unit !== "cm" && unit !== "m";
}

/**
 * Refuses headings that say readings count something else than a unit, such as
 * `centre (0.0001 in)`: read in the bench's unit they would be far off.
 *
 * @param layout The layout.
 * @param file The file's name.
 */
export function scaledHeadings(layout: TableLayout, file: string): Problem[] {
  return readingColumns(layout).flatMap((index) => {
    const heading = layout.headings[index];
    const words = bracketed(heading) ?? "";
    return !isScale(words) ? [] : [{
      severity: "refused" as const,
      code: "scaled-heading",
      file,
      line: layout.headerLine,
      column: heading.trim(),
      message:
        `the heading says that its numbers count “${words}”, which is no unit`,
      expected: 'a unit alone: mm, µm, in or thou, as in "centre (thou)"',
      mend:
        "write what the readings are in such a unit: 121 of 0.0001 in are 12.1 thou",
    }];
  });
}

/** Of a line below such a heading in the middle of a file. */
export const UNDER_A_SCALE: Fault = {
  code: "scaled-heading",
  message: "the heading above this line counts something that is no unit",
  mend: "write what the readings are in mm, µm, in or thou",
};

/** A unit that no number stands before, which would make it a size. */
const TITLE_UNIT =
  /(?<!\p{L}|[\d.,\u2044/½¼¾]\s?)(mm|millimet(?:re|er)s?|inch(?:es)?|thou|mils?|µm|μm|um|micromet(?:re|er)s?|microns?)(?!\p{L})|\bunits?\s*[:=]?\s*(in)\b/iu;

/** A unit in the words above a header. */
export interface TitleUnit {
  /** As it was typed. */
  readonly word: string;
  /** The line. */
  readonly line: number;
}

/**
 * Finds a unit in a line above the header, such as “all readings in mm”.
 *
 * @param row The line's cells.
 * @param line Its number.
 */
export function titleUnit(
  row: readonly string[],
  line: number,
): TitleUnit | undefined {
  const [, word, bare] = TITLE_UNIT.exec(row.join(" ")) ?? [];
  const found = word ?? bare;
  return found === undefined ? undefined : { word: found, line };
}

/**
 * Says which unit readings without one were taken in; a doubt where the title
 * names another.
 *
 * @param title The title's unit, if it names one.
 * @param taken The unit that was taken.
 */
export function unitAssumed(
  title: TitleUnit | undefined,
  taken: "mm" | "in",
): { readonly severity: "note" | "warning"; readonly fault: Fault } {
  if (title === undefined || unitOfWord(title.word) === taken) {
    const message = `no unit is named; ${taken} was taken from bench.json`;
    return { severity: "note", fault: { code: "unit-assumed", message } };
  }
  return {
    severity: "warning",
    fault: {
      code: "title-unit",
      message:
        `line ${title.line} above the header says ${title.word}; no column or cell names a unit, and ${taken} was taken from bench.json`,
      mend:
        "write the unit into the headings of the readings, or into a column unit; nothing was changed",
    },
  };
}
