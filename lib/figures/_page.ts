/**
 * Puts a figure together: title, key, one or more panels, notes.
 *
 * @module
 */
import { type Drawing, loadDrawing } from "./_dom.ts";
import {
  drawPanel,
  EDGE,
  LINE,
  marginsOf,
  type Panel,
  TEXT_SIZE,
} from "./_panel.ts";
import { escapeText } from "./_escape.ts";
import { KEY_SIZE, keyBlock, type KeyItem, textSvg } from "./_legend.ts";
import { contentId, renumbered } from "./_content_id.ts";
import { textWidth, wrapText } from "./_text_width.ts";
import { ID, painted, ROLES, styleSheet } from "./_theme.ts";

/** What a figure is made of. */
export interface Page {
  readonly title: string;
  readonly description: string;
  readonly width?: number;
  readonly idPrefix?: string;
  readonly key?: readonly KeyItem[];
  readonly panels: readonly Panel[];
  /** Short remarks below the panels. */
  readonly notes?: readonly string[];
}

/** The finished text of a figure. */
export interface Drawn {
  readonly title: string;
  readonly description: string;
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** Width of a figure in px where nobody asks for another. */
export const WIDTH = 480;
const TITLE_SIZE = 18;

function drawBody(drawing: Drawing, page: Page, width: number) {
  const room = width - 2 * EDGE;
  const parts: string[] = [];
  const titles = wrapText(page.title, TITLE_SIZE, room, true);
  let y = EDGE + TITLE_SIZE;
  parts.push(textSvg(titles, EDGE, y, { size: TITLE_SIZE, bold: true }));
  y += (titles.length - 1) * TITLE_SIZE * 1.3 + 14;
  const key = keyBlock(page.key ?? [], EDGE, y, room);
  parts.push(key.svg);
  y += key.height;
  // Panels stand below one another on the same horizontal axis.
  const margins = page.panels.map((panel) => marginsOf(panel, width));
  const left = Math.max(...margins.map((margin) => margin.left));
  const right = Math.max(...margins.map((margin) => margin.right));
  for (const panel of page.panels) {
    if (panel !== page.panels[0]) y += 8;
    for (const heading of [panel.yTitle, panel.top?.title]) {
      if (heading === undefined) continue;
      const lines = wrapText(heading, KEY_SIZE, room);
      y += LINE;
      parts.push(textSvg(lines, EDGE, y, { role: "quiet" }));
      y += (lines.length - 1) * LINE;
    }
    const drawn = drawPanel(drawing, panel, width, {
      ...marginsOf(panel, width),
      left,
      right,
    });
    parts.push(
      `<g transform="translate(0,${Number(y.toFixed(2))})">${drawn.svg}</g>`,
    );
    y += drawn.height;
    if (panel.xTitle !== undefined) {
      const lines = wrapText(panel.xTitle, KEY_SIZE, room);
      const half = Math.max(...lines.map((t) => textWidth(t, KEY_SIZE))) / 2;
      const middle = drawn.left + drawn.inner / 2;
      const x = Math.min(Math.max(middle, EDGE + half), width - EDGE - half);
      y += LINE;
      parts.push(textSvg(lines, x, y, { role: "quiet", anchor: "middle" }));
      y += (lines.length - 1) * LINE + 4;
    }
    y += 4;
  }
  for (const note of page.notes ?? []) {
    const lines = wrapText(note, TEXT_SIZE, room);
    y += TEXT_SIZE * 1.4;
    parts.push(textSvg(lines, EDGE, y, { role: "quiet" }));
    y += (lines.length - 1) * LINE;
  }
  return { svg: parts.join(""), height: Math.ceil(y + EDGE) };
}

/**
 * Draws a figure as one SVG text that needs nothing else.
 *
 * @throws {RangeError} If the width asked for is outside 300 to 2000 px.
 */
export async function drawPage(page: Page): Promise<Drawn> {
  const width = page.width ?? WIDTH;
  if (!(width >= 300 && width <= 2000)) {
    throw new RangeError(
      `Cannot draw a figure as its width must be 300 to 2000 px: current value is ${width} px`,
    );
  }
  const { svg, height } = drawBody(await loadDrawing(), page, width);
  return finishPage({ ...page, svg, width, height });
}

/** Wraps the body of a figure in its root, with title, style and ids. */
export function finishPage(
  body: Drawn & { readonly idPrefix?: string },
): Drawn {
  const { title, description, width, height } = body;
  const { text, classes } = painted(renumbered(body.svg));
  const id = body.idPrefix ?? contentId(`${title}\n${description}\n${text}`);
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" id="${id}" role="img" aria-labelledby="${id}-title ${id}-desc" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="system-ui, sans-serif" style="max-width:100%;height:auto">` +
    `<title id="${id}-title">${escapeText(title)}</title>` +
    `<desc id="${id}-desc">${escapeText(description)}</desc>` +
    `<style>${styleSheet(id, new Set(["f-paper", ...classes]))}</style>` +
    `<rect class="f-paper" fill="${
      ROLES.paper[0]
    }" width="${width}" height="${height}"></rect>` +
    `<g class="f-ink" fill="${
      ROLES.ink[0]
    }" font-size="${TEXT_SIZE}" text-anchor="middle">` +
    `${text.replaceAll(ID, id)}</g></svg>`;
  return { title, description, svg, width, height };
}
