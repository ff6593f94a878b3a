/**
 * Sources of scatter in the trade's words.
 *
 * @module
 */
import { listed } from "./_listed.ts";
import type { ScatterSource } from "../repeatability/source.ts";

/** Sources in the trade's words. */
export const SOURCES: Record<ScatterSource, string> = {
  repeat: "setting the gauge down again",
  zeroing: "zeroing again",
  "zone × zeroing": "zeroing, differently from zone to zone",
  diameter: "the diameter",
  operator: "the person",
  rotation: "turning the gauge",
  session: "the day",
  drift: "the zero creeping",
};

/**
 * Names sources in the trade's words.
 *
 * @param sources Sources of scatter, at least one.
 * @returns Such as `zeroing again and the person, which these readings cannot
 * tell apart`.
 *
 * @example
 * ```ts
 * import { nameSources } from "sagbook/narrative/scatter_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(nameSources(["zeroing"]), "zeroing again");
 * ```
 */
export function nameSources(sources: readonly ScatterSource[]): string {
  const words = sources.map((source) => SOURCES[source]);
  return words.length === 1 ? words[0] : `${listed(words)} together`;
}

/** One of each, for "in each …". */
export const SINGULARS: Record<ScatterSource, string> = {
  repeat: "reading",
  zeroing: "zeroing",
  "zone × zeroing": "zone of a zeroing",
  diameter: "diameter",
  operator: "person's turn",
  rotation: "direction of the feet",
  session: "session",
  drift: "set",
};

/** Several of each, for counts. */
export const PLURALS: Record<ScatterSource, string> = {
  repeat: "readings of one place",
  zeroing: "zeroings",
  "zone × zeroing": "readings of each zone",
  diameter: "diameters",
  operator: "people",
  rotation: "directions of the feet",
  session: "days",
  drift: "looks at the flat",
};
