/**
 * What runs in the reader's browser: finds still figures and makes them live.
 * Bundled with the geometry it calls into one script.
 */
import { DRAWINGS } from "./_drawings.ts";
import type { PageWindow } from "./_page_parts.ts";
import { enliven } from "./_panel.ts";
import { PANEL_STYLE } from "./_panel_style.ts";

const { document, MutationObserver } = globalThis as unknown as PageWindow;
const STYLE_ID = "sagbook-live-style";

function enlivenAll(): void {
  const still = [
    ...document.querySelectorAll("[data-live]:not([data-is-live])"),
  ];
  if (still.length === 0) return;
  if ([...document.querySelectorAll(`#${STYLE_ID}`)].length === 0) {
    const style = document.createElement("style");
    style.id = STYLE_ID;
    style.textContent = PANEL_STYLE;
    document.head.append(style);
  }
  let count = [...document.querySelectorAll("[data-is-live]")].length;
  for (const host of still) {
    if (enliven(document, DRAWINGS, host, `live-${count}`)) count++;
  }
}

enlivenAll();
// A notebook puts a cell's output into its page before or after it runs this.
new MutationObserver(enlivenAll).observe(document.documentElement, {
  childList: true,
  subtree: true,
});
