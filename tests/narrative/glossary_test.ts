import { deepEqual, equal, ok } from "node:assert/strict";
import { GLOSSARY, usesWord, wordsIn } from "sagbook/narrative/glossary.ts";

const fields = Object.values(GLOSSARY);
const entries = fields.flat();

Deno.test("GLOSSARY says each word once, in one to three plain sentences", () => {
  const terms = entries.map(({ term }) => term.toLowerCase());
  equal(new Set(terms).size, terms.length);
  for (const { term, meaning } of entries) {
    ok(/^\p{Lu}.*\.$/su.test(meaning) && !meaning.includes("\n"), term);
    const sentences = meaning.split(/(?<=[.:])\s/).length;
    ok(sentences <= 3, `${term}: ${sentences} sentences`);
    ok(meaning.length <= 260, `${term}: ${meaning.length} letters`);
  }
});

Deno.test("GLOSSARY keeps the order of the alphabet within a field", () => {
  const order = new Intl.Collator("en").compare;
  for (const field of fields) {
    const terms = field.map(({ term }) => term);
    deepEqual(terms, [...terms].sort(order));
  }
});

Deno.test("usesWord() takes whole words in any case and form, and no parts of words", () => {
  const of = (term: string) => entries.find((one) => one.term === term)!;
  for (
    const [term, text, used] of [
      ["set", "Sets on two diameters", true],
      ["set", "the wet offset", false],
      ["pits", "spits", false],
      ["±", "3003.6 ± 9.7 mm", true],
      ["90 %, 95 %", "(95 % sure)", true],
      ["90 %, 95 %", "195 % of it", false],
      ["E_n", "agree (E_n 0.09)", true],
      ["part in a thousand", "−0.42 ‰", true],
      ["conic constant", "a conic fits", true],
    ] as const
  ) equal(usesWord(of(term), text), used, `${term} in ${text}`);
});

Deno.test("wordsIn() gives the workshop's words first and none of the library's own", () => {
  const text = "ANOVA of the scatter of a ring, and its budget; a turned edge";
  deepEqual(
    wordsIn(text).map(({ term }) => term),
    ["ring", "turned edge", "budget", "scatter"],
  );
  deepEqual(wordsIn("Nothing here."), []);
});
