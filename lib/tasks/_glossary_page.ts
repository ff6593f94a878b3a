/**
 * The glossary as a page to read.
 *
 * @module
 */
import { GLOSSARY, type GlossaryEntry } from "../narrative/glossary.ts";

/** Where the page is kept, from the project's root. */
export const GLOSSARY_FILE = "notebooks/guide/glossary.md";

const WIDTH = 80;

/** One entry as a list item, its lines as long as the formatter makes them. */
function item({ term, unit, meaning }: GlossaryEntry): string {
  const sign = unit === undefined ? "" : ` (${unit})`;
  const lines = ["-"];
  for (const word of `**${term}**${sign}: ${meaning}`.split(" ")) {
    const line = `${lines[lines.length - 1]} ${word}`;
    if (line.length <= WIDTH) lines[lines.length - 1] = line;
    else lines.push(`  ${word}`);
  }
  return lines.join("\n");
}

const section = (heading: string, entries: readonly GlossaryEntry[]) =>
  `## ${heading}\n\n${entries.map(item).join("\n")}\n`;

/**
 * Writes the glossary as Markdown.
 *
 * @returns The page's text, formatted.
 */
export function glossaryPage(): string {
  return [
    "# Glossary\n",
    "Each report explains the words it uses at its end; here are all of them. This\npage is made by `deno task goldens glossary`.\n",
    section("Words of the workshop", GLOSSARY.trade),
    section("Words of the statistics", GLOSSARY.statistics),
    section("Words of the library's documentation", GLOSSARY.library),
  ].join("\n");
}
