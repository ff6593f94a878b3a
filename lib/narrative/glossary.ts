/**
 * The words a page uses, each in plain sentences.
 *
 * @module
 */
import { LIBRARY_WORDS, STATISTICS_WORDS } from "./_glossary_statistics.ts";
import { TRADE_WORDS } from "./_glossary_trade.ts";

/** One word and what it means. */
export interface GlossaryEntry {
  /** The word or phrase, in the singular. */
  readonly term: string;
  /** Symbol and unit, where it has any. */
  readonly unit?: string;
  /** One or two plain sentences. */
  readonly meaning: string;
  /** Other ways it is written, as parts of a regular expression. */
  readonly forms?: readonly string[];
}

/** The words by field: of the workshop, of the statistics, of the library. */
export const GLOSSARY: Readonly<
  Record<"trade" | "statistics" | "library", readonly GlossaryEntry[]>
> = {
  trade: TRADE_WORDS,
  statistics: STATISTICS_WORDS,
  library: LIBRARY_WORDS,
};

const escape = (word: string) => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/**
 * Whether a text uses a word of the glossary, in any of its forms.
 *
 * @param entry The word.
 * @param text Any text.
 * @returns True where it stands as a word of its own, in any case.
 *
 * @example
 * ```ts
 * import { GLOSSARY, usesWord } from "sagbook/narrative/glossary.ts";
 * import { equal } from "node:assert/strict";
 *
 * const wet = GLOSSARY.trade.find(({ term }) => term === "wets")!;
 * equal(usesWord(wet, "after 12 wets"), true);
 * equal(usesWord(wet, "a wetted stone"), false);
 * ```
 */
export function usesWord(entry: GlossaryEntry, text: string): boolean {
  const forms = [escape(entry.term), ...entry.forms ?? []].join("|");
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${forms})(?![\\p{L}\\p{N}])`, "iu")
    .test(text);
}

/**
 * Finds the words of the glossary that a text uses.
 *
 * Only words of the workshop and of the statistics are looked for; those of the
 * library's own documentation stand in no page.
 *
 * @param text Any text, such as that of a page.
 * @returns Its words, the workshop's first, each in the order of the alphabet.
 *
 * @example
 * ```ts
 * import { wordsIn } from "sagbook/narrative/glossary.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const found = wordsIn("The sag scatters by 2 µm from set to set.");
 * deepEqual(found.map(({ term }) => term), ["sag", "set", "scatter"]);
 * ```
 */
export function wordsIn(text: string): readonly GlossaryEntry[] {
  return [...GLOSSARY.trade, ...GLOSSARY.statistics]
    .filter((entry) => usesWord(entry, text));
}
