/**
 * Program text to HTML with its words marked by kind.
 *
 * @module
 */
import { escapeHtml } from "../display/escape_html.ts";

/** Marks up `code`; a language it does not know is escaped and left plain. */
export type CodeRenderer = (code: string, language: string) => string;

const TYPESCRIPT = /^(?:typescript|ts|javascript|js|json)$/i;

/** Loads the highlighter with its one language. */
export async function loadHighlighter(): Promise<CodeRenderer> {
  const [{ default: highlighter }, { default: typescript }] = await Promise
    .all([
      import("highlight.js/lib/core"),
      import("highlight.js/lib/languages/typescript"),
    ]);
  const core = highlighter.newInstance();
  core.registerLanguage("typescript", typescript);
  return (code, language) =>
    TYPESCRIPT.test(language)
      ? core.highlight(code, { language: "typescript", ignoreIllegals: true })
        .value
      : escapeHtml(code);
}
