/**
 * The library's documentation in the dress of every other page.
 *
 * @module
 */
import { pageColours } from "../notebook/page_colours.ts";

/** The sheet that {@link dressPage} links, to be written beside `styles.css`. */
export const DRESS_FILE = "dress.css";

/**
 * The style sheet: own letters and colours, nothing wider than a phone, words
 * that stand out enough from what they lie on.
 */
export const DRESS: string = `
:root{color-scheme:light;${pageColours(0)}}
:root.dark{color-scheme:dark;${pageColours(1)}}
html,body,.ddoc,#topnav{background:var(--paper)!important;color:var(--ink)!important}
body{margin:0;font:17px/1.55 "Source Serif 4","Charter","Georgia",serif!important}
.ddoc,.ddoc *{border-color:var(--line)!important;min-width:0}
.ddoc h1,.ddoc h2,.ddoc h3,.ddoc p,.ddoc li,.ddoc td{font-family:"Source Serif 4","Charter","Georgia",serif;overflow-wrap:anywhere}
.ddoc a,.ddoc .contextLink,.ddoc .breadcrumbs a{color:var(--accent)!important}
.ddoc :focus-visible{outline:2px solid var(--accent);outline-offset:2px}
.ddoc pre,.ddoc code{font-family:"DejaVu Sans Mono","Menlo","Consolas",monospace;background:var(--well)!important;color:var(--ink)!important}
.ddoc pre{overflow-x:auto;max-width:100%}
.ddoc th,.ddoc td,.ddoc tr{background:none!important}
.ddoc [class*="text-"],.ddoc [class*="opacity"],.ddoc .toc *,.ddoc small{color:var(--ink)!important;opacity:1!important}
.ddoc .td-kw{color:var(--key)!important}.ddoc .td-str{color:var(--text)!important}.ddoc .td-ref,.ddoc .td-ref *{color:var(--accent)!important}
.ddoc main a{text-decoration:underline}
.ddoc .toc a{color:var(--accent)!important}
#searchbar{font-size:15px;background:var(--well)!important;color:var(--ink)!important;max-width:11rem}
#searchbar::placeholder{color:var(--soft);opacity:1}
.token.cdata,.token.comment,.token.doctype,.token.prolog{color:var(--remark)!important}
.token.punctuation,.token.operator{color:var(--ink)!important;background:none!important}
.token.keyword,.token.atrule,.token.builtin,.token.boolean,.token.constant{color:var(--key)!important}
.token.string,.token.char,.token.attr-name,.token.regex,.token.selector,.token.inserted{color:var(--text)!important}
.token.number,.token.symbol,.token.property,.token.tag{color:var(--number)!important}
.token.function,.token.class-name,.token.variable{color:var(--accent)!important}
@media (max-width:60rem){
.ddoc,.ddoc #content{display:block!important;width:auto!important}
.ddoc{padding:.9rem!important}
#topnav{height:auto!important;position:static!important}
#topnav>div{flex-wrap:wrap;height:auto!important;gap:.4rem}
.ddoc main,.ddoc section,.ddoc .toc{max-width:100%!important;width:auto!important}
.ddoc .toc{position:static!important;height:auto!important;margin-top:1.5rem}
.ddoc table{display:block;max-width:100%;overflow-x:auto}
}
@media print{.ddoc #topnav input,.ddoc #theme-toggle,.ddoc .toc,.ddoc button{display:none}}
`.trim();

/**
 * Gives a page its language, names for its buttons, and the sheet above.
 *
 * @param html A page as the runtime's documenter writes it.
 * @returns The same page, dressed.
 */
export function dressPage(html: string): string {
  const [, prefix = ""] = /href="((?:\.\.\/)*)comrak\.css"/.exec(html) ?? [];
  return html
    .replace(/<html>/, '<html lang="en">')
    .replace(
      /<button class="copyButton"/g,
      '<button aria-label="Copy the example" class="copyButton"',
    )
    .replace(/<pre([^>]*)><code/g, '<pre$1><code tabindex="0"')
    .replace(
      /<\/head>/,
      `<link rel="stylesheet" href="${prefix}${DRESS_FILE}"></head>`,
    );
}
