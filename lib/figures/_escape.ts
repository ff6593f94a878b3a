/**
 * Text made safe inside markup.
 *
 * @module
 */

/** Makes text safe between tags. */
export function escapeText(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;");
}

/** Makes text safe inside double quotes. */
export function escapeAttribute(text: string): string {
  return escapeText(text).replaceAll('"', "&quot;");
}
