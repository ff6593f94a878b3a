/**
 * The decimal mark of a file, from its cells that can be read one way only.
 *
 * @module
 */
import type { FileDecimal } from "./_read_cell.ts";

/** The decimal mark, as far as the cells that can be read one way show it. */
export function decimalMarkOf(
  text: string,
  delimiter: string,
  stated: "point" | "comma" | undefined,
): FileDecimal {
  if (stated !== undefined) {
    return { mark: stated === "point" ? "." : ",", stated: true };
  }
  if (delimiter === "," && !text.includes('"')) {
    return { mark: ".", stated: false };
  }
  const edge = delimiter === "|" ? "\\|" : delimiter;
  const unit = '\\s*(?:[mucµμ]?m|in|thou|mil)?"?';
  const certain = (mark: string) =>
    new RegExp(
      `(?:^|[${edge}"])[ +\\-\u2212\u2013]*(?:\\d*${mark}\\d{1,2}|\\d*${mark}\\d{4,}|0${mark}\\d+)${unit}(?=$|[${edge}"])`,
      "m",
    );
  const comma = certain(",").test(text);
  const point = delimiter === "," || certain("\\.").test(text);
  return {
    mark: comma === point ? "unknown" : point ? "." : ",",
    stated: false,
  };
}
