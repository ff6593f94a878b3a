/**
 * The bundle of forms in which a notebook may show a value.
 *
 * @example A value that shows itself as HTML and as text
 * ```ts
 * import { type Displayable, jupyterDisplay } from "sagbook/display/mod.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const radius: Displayable = {
 *   [jupyterDisplay]: () => ({
 *     "text/plain": "R 3000 mm",
 *     "text/html": "<b>R</b> 3000 mm",
 *   }),
 * };
 * deepEqual(await radius[jupyterDisplay](), {
 *   "text/plain": "R 3000 mm",
 *   "text/html": "<b>R</b> 3000 mm",
 * });
 * ```
 *
 * @module
 */
export { type Displayable, jupyterDisplay, type MimeBundle } from "./bundle.ts";
export { type Role, ROLES } from "./colour_roles.ts";
export { escapeHtml } from "./escape_html.ts";
export { htmlTables, type TextTable } from "./html_tables.ts";
export { htmlWords } from "./html_words.ts";
export { LIVE_TYPE, type LiveOutput } from "./live.ts";
export { Markup, markup, type MarkupPart } from "./markup.ts";
export { exercise, prose } from "./prose.ts";
export { PROGRESS_TYPE, tellProgress } from "./tell_progress.ts";
export { table, type TableOptions, type TableValue } from "./table.ts";
