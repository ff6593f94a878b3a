/**
 * The decimal mark of a file, from its cells that can be read one way only.
 *
 * @module
 */
import type { FileDecimal } from "./_read_cell.ts";

const SIGN = "[ +\\-\u2010-\u2015\u2212\ufe58\ufe63\uff0d]*";
const UNIT =
  `\\s*(?:[muc\u00b5\u03bc]?m|microns?|inch|in|thou|mil)?\\.?["'\u2019\u201d\u2032\u2033]*`;

/**
 * A cell whose one mark can only stand before decimals: it is not followed by
 * exactly three digits, or it follows a lone nought.
 */
function certain(mark: string, before: string, after: string): RegExp {
  const number = `(?:\\d*${mark}\\d{1,2}|\\d*${mark}\\d{4,}|0${mark}\\d+)`;
  return new RegExp(`${before}${SIGN}${number}${UNIT}${after}`, "m");
}

/**
 * Finds the decimal mark, as far as the cells show it.
 *
 * In a comma file a decimal comma can stand in quotes only. Where cells show
 * both marks, or none, it stays unknown, and a cell that could be read two
 * ways is asked about.
 */
export function decimalMarkOf(
  text: string,
  delimiter: string,
  stated: "point" | "comma" | undefined,
): FileDecimal {
  return statedMark(stated) ?? markShown(marksShown(text, delimiter));
}

/** The mark that a bench states, where it does. */
export function statedMark(
  stated: "point" | "comma" | undefined,
): FileDecimal | undefined {
  return stated === undefined
    ? undefined
    : { mark: stated === "point" ? "." : ",", stated: true };
}

/** Which decimal marks some cells of a text can only mean. */
export interface MarksShown {
  readonly comma: boolean;
  readonly point: boolean;
}

/** Finds the marks that a text, or a part of it between two lines, shows. */
export function marksShown(text: string, delimiter: string): MarksShown {
  if (delimiter === ",") {
    const comma = text.includes('"') && certain(",", '"', '"').test(text);
    return { comma, point: true };
  }
  const edge = delimiter === "|" ? "\\|" : delimiter;
  const [before, after] = [`(?:^|[${edge}"])`, `(?=$|[${edge}"])`];
  return {
    comma: certain(",", before, after).test(text),
    point: certain("\\.", before, after).test(text),
  };
}

/** The mark of a file that shows these. */
export function markShown({ comma, point }: MarksShown): FileDecimal {
  return {
    mark: comma === point ? "unknown" : point ? "." : ",",
    stated: false,
  };
}
