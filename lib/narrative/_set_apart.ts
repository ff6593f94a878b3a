/**
 * A set that alone decides the verdict, and is to be read again first.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { writeSmall } from "./sag_words.ts";

/** Verdicts in words, as a sentence quotes them. */
export const VERDICT_WORDS: Readonly<
  Record<SessionAnalysis["sphericity"]["verdict"], string>
> = {
  within: "a sphere within the tolerance",
  outside: "out of tolerance",
  undecided: "not decided",
  none: "not tested",
};

/**
 * The next step where readings that stand apart are all that keeps the others
 * from another verdict: no stroke and no count of sets rests on those.
 */
export function setApartFirst(
  session: SessionAnalysis,
  unit: LengthUnit,
): string | undefined {
  const { outliers, withoutOutliers, sphericity, sets, zones } = session;
  const other = withoutOutliers?.sphericity.verdict;
  if (other !== "within" && other !== "outside") return undefined;
  if (other === sphericity.verdict) return undefined;
  const [{ set, place, from }] = outliers;
  const more = new Set(outliers.map((one) => one.set)).size - 1;
  return `Next: read set ${set + 1} (${sets[set].label}) again, where ${
    zones[place].place.label
  } stands ${writeSmall(from, unit)} apart from the other sets${
    more === 0 ? "" : `, and ${more} more that ${more === 1 ? "does" : "do"}`
  } — with ${more === 0 ? "it" : "them"} the verdict is “${
    VERDICT_WORDS[sphericity.verdict]
  }”, without “${VERDICT_WORDS[other]}”.`;
}
