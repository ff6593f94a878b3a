/**
 * Results as a cell shows them.
 *
 * @module
 */
import { type Displayable, jupyterDisplay } from "../display/bundle.ts";
import { markup } from "../display/markup.ts";
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
 * @returns A value a cell may return: text, HTML, and the results as JSON for
 * the program that runs the notebook.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showAnswer(
  report: SessionReport,
  results: Readonly<Record<string, unknown>>,
): Displayable {
  const { answer, folder: { piece } } = report;
  const invented = piece.invented
    ? "Invented demonstration data: no such piece exists."
    : undefined;
  const html = markup`<section class="answer" aria-label="The answer">${
    answer.map((sentence) => markup`<p><strong>${sentence}</strong></p>`)
  }${
    invented === undefined ? "" : markup`<p><em>${invented}</em></p>`
  }</section>`;
  const text = [...answer, ...(invented === undefined ? [] : [invented])]
    .join("\n");
  return {
    [jupyterDisplay]: () => ({
      "text/plain": text,
      "text/html": html.html,
      [RESULTS_TYPE]: results,
    }),
  };
}
