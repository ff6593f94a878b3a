import { deepEqual, ok } from "node:assert/strict";
import { type PageRun, runPage } from "./_run_page.ts";
import { DOCUMENTS, textOf } from "./_documents.ts";
import { proseOf } from "./_markdown.ts";

/** First lines of the blocks that no test can run, and why. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  "npx -y deno@2.9.6 task report":
    "fetches the runtime; continuous integration runs it on a clean clone",
  "npx -y deno@2.9.6 task test    # all tests, a quarter of an hour on two cores":
    "runs this very test; what each line names is checked beside the others",
};
const NUMBERS = "notebooks/guide/what-the-numbers-mean.md";

const runs = new Map<string, Promise<PageRun>>();
/** A page's run, once for all tests of this file. */
function ran(path: string): Promise<PageRun> {
  const run = runs.get(path) ?? runPage(path, Object.keys(LEFT_OUT));
  runs.set(path, run);
  return run;
}

Deno.test("the blocks of every page run, say what stands below them, and change no file that they are given", async () => {
  const all = await Promise.all(DOCUMENTS.map(ran));
  deepEqual(
    all.flatMap(({ leftOut }) => leftOut).sort(),
    Object.keys(LEFT_OUT).sort(),
  );
  for (const [k, { done }] of all.entries()) {
    ok(done > 0 || DOCUMENTS[k].endsWith("glossary.md"), DOCUMENTS[k]);
  }
});

/** Figures of the page that are nobody's result, and why they may stand. */
const GENERAL: Readonly<Record<string, string>> = {
  "100 %": "a whole",
  "80 %":
    "the least chance that a stated number of sets has (zones/sets_needed.ts)",
  "2 µm": "a zero that is off by so much, for instance",
};

Deno.test("what-the-numbers-mean.md types no number with a unit that no block prints", async () => {
  const plain = (text: string) => text.replace(/\s+/g, " ");
  const printed = plain((await ran(NUMBERS)).printed);
  const typed = plain(proseOf(textOf(NUMBERS)))
    .matchAll(/(?<![\d.])\d[\d.]* (?:mm|µm|%)/g);
  const found = [...new Set([...typed].map(([figure]) => figure))];
  ok(found.length >= 12, found.join(", "));
  const unknown = found.filter((figure) =>
    !(figure in GENERAL) &&
    !new RegExp(`(?<![\\d.])${figure.replace(".", "\\.")}`).test(printed)
  );
  deepEqual(unknown, []);
});
