/**
 * Sentences that a cell makes, with numbers it has just computed.
 *
 * @module
 */
import { type Displayable, jupyterDisplay } from "./bundle.ts";

/**
 * Makes a paragraph, or several, that a cell may return.
 *
 * @param text Markdown of the notebook's own, with formulas between dollar
 * signs; a text from a user's file does not belong here.
 * @returns A value that a notebook shows as text.
 *
 * @example
 * ```ts
 * import { jupyterDisplay } from "sagbook/display/bundle.ts";
 * import { prose } from "sagbook/display/prose.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const shown = await prose(`The sag is $s$ = ${0.601} mm.`)[jupyterDisplay]();
 * deepEqual(shown["text/markdown"], "The sag is $s$ = 0.601 mm.");
 * ```
 */
export function prose(text: string): Displayable {
  return {
    [jupyterDisplay]: () => ({ "text/markdown": text, "text/plain": text }),
  };
}

/**
 * Makes an exercise with its worked answer folded away.
 *
 * @param question What is asked, as Markdown of the notebook's own.
 * @param answer The worked answer, as Markdown.
 * @returns A value that a notebook shows as text with a fold to open.
 *
 * @example
 * ```ts
 * import { jupyterDisplay } from "sagbook/display/bundle.ts";
 * import { exercise } from "sagbook/display/prose.ts";
 * import { match } from "node:assert/strict";
 *
 * const shown = await exercise("What is $2r$?", "The chord.")[jupyterDisplay]();
 * match(String(shown["text/markdown"]), /<details>\n<summary>Worked answer/);
 * ```
 */
export function exercise(question: string, answer: string): Displayable {
  const asked = `**Exercise.** ${question}`;
  return {
    [jupyterDisplay]: () => ({
      "text/markdown":
        `${asked}\n\n<details>\n<summary>Worked answer</summary>\n\n${answer}\n\n</details>`,
      // The answer stays folded: a plain text has no fold.
      "text/plain": asked,
    }),
  };
}
