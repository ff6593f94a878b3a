/**
 * Results as a cell shows them.
 *
 * @module
 */
import { type Displayable, jupyterDisplay } from "../display/bundle.ts";
import { type Markup, markup } from "../display/markup.ts";
import type { SessionReport } from "./session_report.ts";

/** Sentences under a heading, as a cell shows them. */
export function sentences(
  list: readonly string[],
  heading?: string,
): Displayable {
  const html = markup`${
    heading === undefined ? "" : markup`<h2>${heading}</h2>`
  }<ul>${list.map((sentence) => markup`<li>${sentence}</li>`)}</ul>`;
  const text = [
    ...(heading === undefined ? [] : [heading]),
    ...list.map((sentence) => `- ${sentence}`),
  ].join("\n");
  return {
    [jupyterDisplay]: () => ({ "text/plain": text, "text/html": html.html }),
  };
}

/** The private form in which a run hands its results to whoever ran it. */
export const RESULTS_TYPE = "application/vnd.sagbook.results+json";

/**
 * Shows the answer of a report: the sentences that matter, first of all.
 *
 * @param report The report.
 * @param results What `reportResults` makes of it.
 * @returns A value a cell may return: text, HTML, and the results as JSON for
 * the program that runs the notebook.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showAnswer(
  report: SessionReport,
  results: Readonly<Record<string, unknown>>,
): Displayable {
  return answerBlock(report.answer, report.folder.piece.invented, results);
}

/** The first sentence stands out, and so does the word before the next step. */
function answerSentence(sentence: string, index: number): Markup {
  if (index === 0) return markup`<p><strong>${sentence}</strong></p>`;
  const [, label, rest] = /^(Next:|Then:)(.*)$/s.exec(sentence) ?? [];
  return label === undefined
    ? markup`<p>${sentence}</p>`
    : markup`<p><strong>${label}</strong>${rest}</p>`;
}

/**
 * Shows sentences as the answer of a page.
 *
 * @param answer The sentences.
 * @param invented Whether the data is invented, which is then said.
 * @param results The results as JSON, for the program that runs the notebook.
 * @returns A value a cell may return.
 *
 * @example
 * ```ts
 * import { answerBlock } from "sagbook/narrative/show.ts";
 * import { jupyterDisplay } from "sagbook/display/bundle.ts";
 * import { equal } from "node:assert/strict";
 *
 * const bundle = await answerBlock(["R 3000 mm."], false, {})[jupyterDisplay]();
 * equal(bundle["text/plain"], "R 3000 mm.");
 * ```
 */
export function answerBlock(
  answer: readonly string[],
  invented: boolean,
  results: Readonly<Record<string, unknown>>,
): Displayable {
  const note = invented
    ? "Invented demonstration data: no such piece exists."
    : undefined;
  const html = markup`<section class="answer" aria-label="The answer">${
    answer.map(answerSentence)
  }${note === undefined ? "" : markup`<p><em>${note}</em></p>`}</section>`;
  const text = [...answer, ...(note === undefined ? [] : [note])].join("\n");
  return {
    [jupyterDisplay]: () => ({
      "text/plain": text,
      "text/html": html.html,
      [RESULTS_TYPE]: results,
    }),
  };
}
