/**
 * The key of a figure: every shape, line and area in words.
 *
 * Plot's own legend is HTML, and its continuous one needs a canvas; this one
 * is part of the drawing.
 *
 * @module
 */
import { escapeAttribute, escapeText } from "./_escape.ts";
import {
  drawingPath,
  type ShapeDrawing,
  type ShapeName,
  shapePath,
} from "./_symbols.ts";
import { fitText, textWidth } from "./_text_width.ts";
import { type Role, roleOf, standIn } from "./_theme.ts";

/** One entry of a key. */
export interface KeyItem {
  /** What it stands for. */
  readonly label: string;
  /** How it is drawn. */
  readonly sample:
    | {
      kind: "shape";
      shape: ShapeName;
      fill?: Role;
      stroke?: Role;
      size?: number;
    }
    | { kind: "line"; stroke: Role; width?: number; dash?: string }
    | { kind: "area"; fill: Role; edge?: Role; dash?: string }
    | { kind: "swatch"; color: string }
    | { kind: "drawing"; drawing: ShapeDrawing; color: string }
    | { kind: "interval"; stroke: Role; thick?: Role };
}

/** Text that is already SVG, and the height it takes. */
export interface Block {
  readonly svg: string;
  readonly height: number;
}

const ROW = 24;
const SAMPLE = 26;
const GAP = 16;
/** Font size of a key in px. */
export const KEY_SIZE = 16;

/** An attribute pair for a colour's role, filled in by the page. */
export function paint(property: "fill" | "stroke", role: Role): string {
  return `class="${property[0]}-${role}" ${property}="${standIn(role)}"`;
}

/** The same for a colour that may be one of the user's own. */
function paintOf(property: "fill" | "stroke", color: string): string {
  const role = roleOf(color);
  return role === undefined
    ? `${property}="${escapeAttribute(color)}"`
    : paint(property, role);
}

function two(fill: Role | undefined, stroke: Role | undefined): string {
  const names = [
    ...(fill === undefined ? [] : [`f-${fill}`]),
    ...(stroke === undefined ? [] : [`s-${stroke}`]),
  ];
  return `class="${names.join(" ")}" fill="${
    fill === undefined ? "none" : standIn(fill)
  }" stroke="${stroke === undefined ? "none" : standIn(stroke)}"`;
}

function sampleSvg({ sample }: KeyItem, x: number, y: number): string {
  const middle = x + 10;
  switch (sample.kind) {
    case "shape":
      return `<path d="${
        shapePath(sample.shape, middle, y, sample.size ?? 5)
      }" ${two(sample.fill, sample.stroke)} stroke-width="1.5"></path>`;
    case "line":
      return `<path d="M${x},${y}h20" fill="none" ${
        paint("stroke", sample.stroke)
      } stroke-width="${sample.width ?? 2}"${
        sample.dash === undefined ? "" : ` stroke-dasharray="${sample.dash}"`
      }></path>`;
    case "area":
      return `<rect x="${x}" y="${y - 7}" width="20" height="14" ${
        two(sample.fill, sample.edge)
      }${
        sample.dash === undefined ? "" : ` stroke-dasharray="${sample.dash}"`
      }></rect>`;
    case "swatch":
      return `<rect x="${x}" y="${y - 7}" width="20" height="14" ${
        paintOf("fill", sample.color)
      }></rect>`;
    case "drawing":
      return `<path d="${
        drawingPath(sample.drawing, middle, y, 64)
      }" fill="none" ${
        paintOf("stroke", sample.color)
      } stroke-width="1.8"></path>`;
    case "interval":
      return `<path d="M${x},${y}h20M${x},${y - 4}v8M${x + 20},${
        y - 4
      }v8" fill="none" ${
        paint("stroke", sample.stroke)
      } stroke-width="1.5"></path>${
        sample.thick === undefined
          ? ""
          : `<path d="M${x + 4},${y}h12" fill="none" ${
            paint("stroke", sample.thick)
          } stroke-width="6"></path>`
      }`;
  }
}

/**
 * Lays the entries out in rows.
 *
 * @param items The entries.
 * @param left Left edge in px.
 * @param top Top edge in px.
 * @param room Width to fill in px.
 */
export function keyBlock(
  items: readonly KeyItem[],
  left: number,
  top: number,
  room: number,
): Block {
  if (items.length === 0) return { svg: "", height: 0 };
  let [x, y, tall] = [left, top, 0];
  const parts = items.map((item) => {
    const lines = fitText(item.label, KEY_SIZE, room - SAMPLE, 3);
    const width = SAMPLE +
      Math.max(...lines.map((line) => textWidth(line, KEY_SIZE)));
    if (x > left && x + width > left + room) {
      [x, y, tall] = [left, y + tall, 0];
    }
    const middle = y + ROW / 2;
    const part = sampleSvg(item, x, middle) +
      textSvg(lines, x + SAMPLE, middle + KEY_SIZE * 0.35);
    tall = Math.max(tall, ROW + (lines.length - 1) * KEY_SIZE * 1.3);
    x += width + GAP;
    return part;
  });
  return { svg: parts.join(""), height: y + tall - top + 4 };
}

/**
 * Writes lines of text below one another.
 *
 * @param lines The lines.
 * @param x Anchor in px.
 * @param y Baseline of the first line in px.
 */
export function textSvg(
  lines: readonly string[],
  x: number,
  y: number,
  { size = KEY_SIZE, role = "ink" as Role, bold = false, anchor = "start" } =
    {},
): string {
  const at = (value: number) => Number(value.toFixed(2));
  return lines.map((line, i) =>
    `<text x="${at(x)}" y="${at(y + i * size * 1.3)}" font-size="${size}"${
      bold ? ' font-weight="600"' : ""
    } text-anchor="${anchor}" ${paint("fill", role)}>${escapeText(line)}</text>`
  ).join("");
}
