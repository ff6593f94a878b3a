/**
 * The frame of every page: head, style, policy, title and foot.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { escapeHtml } from "../display/escape_html.ts";
import { PAGE_STYLE } from "./_page_style.ts";

/** What stands around a page's content. */
export interface PageFrame {
  /** The page's title, as text. */
  readonly title: string;
  /** A line under the title, as text. */
  readonly subtitle?: string;
  /** A line at the foot, as text. */
  readonly footer?: string;
  /** Language of the texts, as in `en` (default) or `de-CH`. */
  readonly language?: string;
  /** Style rules of the page's own, after those of every page. */
  readonly style?: string;
  /**
   * A script of the program's own, at the end of the page: the only one that
   * may run there, by its hash. It can make elements, but not read markup from
   * text, and ask nothing of any host.
   */
  readonly script?: string;
}

/**
 * Nothing in the page may run or load: what comes from a cell is cleaned, and
 * this tells the browser to refuse the rest.
 */
const POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

/** The policy for a page with one script of the program's own. */
function policyFor(script: string): string {
  const hash = createHash("sha256").update(script).digest("base64");
  return `${POLICY}; script-src 'sha256-${hash}'; require-trusted-types-for 'script'; trusted-types 'none'`;
}

/**
 * Puts finished HTML into a page of its own: one file, no script, nothing
 * loaded from anywhere, light and dark, from 360 px of width, and for paper.
 * Only a page that is given a script of the program's own runs that one.
 *
 * @param content The page's content: HTML that this program made, with every
 * text from a user escaped.
 * @param frame Title, subtitle, foot, language, style and script.
 * @returns The file's text; equal input gives equal text.
 * @throws {SyntaxError} If the script's text would end its own element.
 *
 * @example
 * ```ts
 * import { pageShell } from "sagbook/notebook/page_shell.ts";
 * import { match } from "node:assert/strict";
 *
 * const page = pageShell("<p>Three pieces.</p>", { title: "Shop <1>" });
 * match(page, /<h1>Shop &lt;1&gt;<\/h1>/);
 * match(page, /default-src 'none'/);
 * ```
 */
export function pageShell(content: string, frame: PageFrame): string {
  const { title, subtitle, footer, language = "en", style = "" } = frame;
  const { script } = frame;
  if (script !== undefined && /<\/script|<!--/i.test(script)) {
    throw new SyntaxError(
      "Cannot put a script into a page as its text must not hold </script or <!--",
    );
  }
  const line = subtitle === undefined ? "" : `\n<p>${escapeHtml(subtitle)}</p>`;
  const foot = footer === undefined
    ? ""
    : `<footer class="sb-foot">${escapeHtml(footer)}</footer>\n`;
  return `<!doctype html>
<html lang="${escapeHtml(language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${
    script === undefined ? POLICY : policyFor(script)
  }">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escapeHtml(title)}</title>
<link rel="icon" href="data:,">
<style>
${PAGE_STYLE}${style === "" ? "" : `\n${style}`}
</style>
</head>
<body>
<a class="sb-skip" href="#content">Skip to the content</a>
<header class="sb-head">
<h1>${escapeHtml(title)}</h1>${line}
</header>
<main id="content" tabindex="-1">
${content}
</main>
${foot}${script === undefined ? "" : `<script>${script}</script>\n`}</body>
</html>
`;
}
