import { deepEqual, equal } from "node:assert/strict";
import { GLOSSARY, usesWord } from "sagbook/narrative/glossary.ts";
import { GLOSSARY_FILE, glossaryPage } from "../../lib/tasks/_glossary_page.ts";
import { sources } from "../architecture/_layers.ts";
import { ROOT } from "../tasks/_run_task.ts";
import { textOf } from "./_documents.ts";

const entries = Object.values(GLOSSARY).flat();
const pageWords = [...GLOSSARY.trade, ...GLOSSARY.statistics];

const isGlossary = (file: string) => /glossary/.test(file);
const lib = sources(new URL(`file://${ROOT}lib/`))
  .filter(({ file }) => !isGlossary(file));
const inFolders = (...folders: string[]) =>
  lib.filter(({ file }) => folders.includes(file.split("/")[0]))
    .map(({ text }) => text).join("\n").replace(/\s+\*?\s*/g, " ");

/** What a reader of pages and terminal meets. */
const seen = inFolders("narrative", "figures", "tasks", "live") +
  [...Deno.readDirSync(`${ROOT}notebooks`)]
    .filter(({ name }) => name.endsWith(".ipynb"))
    .map(({ name }) => textOf(`notebooks/${name}`)).join("\n");
const documented = lib.map(({ text }) => text).join("\n")
  .replace(/\s+\*?\s*/g, " ");

Deno.test("glossary.md is the glossary of the reports, word for word", () => {
  equal(textOf(GLOSSARY_FILE), glossaryPage());
});

Deno.test("GLOSSARY explains no word that pages, terminal and documentation do not use", () => {
  deepEqual(
    pageWords.filter((one) => !usesWord(one, seen)).map(({ term }) => term),
    [],
  );
  deepEqual(
    GLOSSARY.library.filter((one) => !usesWord(one, documented))
      .map(({ term }) => term),
    [],
  );
});

/** Words of a trade that a reader of the pages may not know. */
const PAGE_JARGON = [
  "astigmatism",
  "ball radius",
  "bevel",
  "budget",
  "centre of curvature",
  "chance",
  "conic constant",
  "degrees of freedom",
  "dioptre",
  "display step",
  "E_n",
  "feet out",
  "focal length",
  "foot circle",
  "foot out",
  "gauge scale",
  "grade",
  "half diameter",
  "interval",
  "limited by the display",
  "loupe",
  "lopsided",
  "measure more",
  "not counted",
  "not decided",
  "out of tolerance",
  "paraboloid",
  "peak to valley",
  "pits",
  "pitch",
  "radius of curvature",
  "reach",
  "reference flat",
  "repetition",
  "restricted maximum likelihood",
  "risk",
  "sag",
  "sag of the whole surface",
  "scatter",
  "sensitivity",
  "shares of the variance",
  "standard deviation",
  "standard error",
  "standard uncertainty",
  "stroke",
  "surface power",
  "Six times the scatter",
  "temperature gradient",
  "tolerance",
  "turned edge",
  "two-foot bar",
  "wets",
  "within tolerance",
  "zeroing",
  "zone",
  "‰",
  "±",
  "95 %",
];
/** Words of statistics that a reader of the documentation may not know. */
const LIBRARY_JARGON = [
  "ANOVA",
  "Bonferroni",
  "capability",
  "covariance",
  "Deming",
  "equivalence",
  "Monte Carlo",
  "REML",
  "repeatability",
  "reproducibility",
  "Satterthwaite",
  "Student",
  "York",
  "seed",
];

Deno.test("GLOSSARY explains every word of the trade and of statistics that pages and documentation use", () => {
  const unused = PAGE_JARGON.filter((word) => !seen.includes(word));
  deepEqual(unused, [], "these are used nowhere any more");
  deepEqual(
    PAGE_JARGON.filter((word) => !pageWords.some((one) => usesWord(one, word))),
    [],
  );
  deepEqual(
    LIBRARY_JARGON.filter((word) => !documented.includes(word)),
    [],
  );
  deepEqual(
    LIBRARY_JARGON.filter((word) =>
      !entries.some((one) => usesWord(one, word))
    ),
    [],
  );
});
