/**
 * Formulas in TeX notation to MathML.
 *
 * @module
 */
import { escapeHtml } from "../display/escape_html.ts";

/** Turns one formula into HTML; one set on its own gets a box around it. */
export type MathRenderer = (tex: string, box?: "div" | "span") => string;

/**
 * Loads the renderer. MathML needs no fonts, no script and no style from
 * outside, prints sharply and is read aloud by screen readers. Commands that
 * could link or load stay off; a formula with a fault is shown as typed.
 */
export async function loadMath(): Promise<MathRenderer> {
  const { default: katex } = await import("katex");
  return (tex, box) => {
    let markup: string;
    try {
      markup = katex.renderToString(tex, {
        displayMode: box !== undefined,
        output: "mathml",
        throwOnError: true,
        trust: false,
        strict: "ignore",
        maxSize: 20,
        maxExpand: 500,
      });
    } catch {
      return `<code class="sb-fault" title="This formula could not be read">${
        escapeHtml(tex)
      }</code>`;
    }
    const math = markup.replace(/^<span class="katex">|<\/span>$/g, "");
    return box === undefined
      ? math
      : `<${box} class="sb-math" role="group" aria-label="Formula" tabindex="0">${math}</${box}>`;
  };
}
