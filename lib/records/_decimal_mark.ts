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
  if (stated !== undefined) {
    return { mark: stated === "point" ? "." : ",", stated: true };
  }
  if (delimiter === ",") {
    const quoted = text.includes('"') && certain(",", '"', '"').test(text);
    return { mark: quoted ? "unknown" : ".", stated: false };
  }
  const edge = delimiter === "|" ? "\\|" : delimiter;
  const [before, after] = [`(?:^|[${edge}"])`, `(?=$|[${edge}"])`];
  const comma = certain(",", before, after).test(text);
  const point = certain("\\.", before, after).test(text);
  return {
    mark: comma === point ? "unknown" : point ? "." : ",",
    stated: false,
  };
}
