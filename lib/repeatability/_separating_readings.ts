/**
 * Which readings would tell confounded sources apart.
 *
 * @module
 */
import type { SeparatingReadings } from "./surface_design.ts";
import type { FactorCodes } from "./_factor_codes.ts";
import type { ScatterSource, VariedSource } from "./source.ts";

/** From what varies fastest at the bench to what varies slowest. */
const QUICKEST_FIRST: readonly ScatterSource[] = [
  "repeat",
  "zone × zeroing",
  "rotation",
  "diameter",
  "zeroing",
  "operator",
  "session",
];

/**
 * For sources that stand or fall together, pairs of "vary this within one
 * level of that": each source with the next slower one of the set.
 */
export function readingsThatSeparate(
  sources: readonly ScatterSource[],
  factors: readonly FactorCodes[],
): SeparatingReadings[] {
  const ordered = QUICKEST_FIRST.filter((source) => sources.includes(source));
  const centreRead = factors.some(({ source, spared }) =>
    source === "diameter" && spared !== undefined
  );
  return ordered.slice(1).map((slower, k): SeparatingReadings => {
    const quicker = ordered[k];
    return {
      vary: quicker,
      within: slower as VariedSource,
      least: 2,
      orReadCentre: quicker === "diameter" && slower === "zeroing" &&
        !centreRead,
    };
  });
}
