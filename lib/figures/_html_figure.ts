/**
 * A picture that is HTML (a plot with a legend or a caption of its own) drawn
 * as one SVG.
 *
 * @module
 */
import { type DomNode, parseElement, writeNode } from "./_dom.ts";
import { renumbered } from "./_content_id.ts";
import { textSvg } from "./_legend.ts";
import { type Drawn, finishPage, WIDTH } from "./_page.ts";
import { EDGE } from "./_panel.ts";
import { textWidth, wrapText } from "./_text_width.ts";
import { ID } from "./_theme.ts";

/** Something on the way down the picture. */
type Part =
  | { readonly kind: "words"; readonly text: string; readonly bold: boolean }
  | { readonly kind: "picture"; readonly node: DomNode }
  | {
    readonly kind: "entry";
    readonly node: DomNode;
    readonly label: string;
  };

const SIZE = 13;
const TITLE_SIZE = 17;

const ownWords = (node: DomNode): string =>
  [...node.childNodes].map((child) =>
    child.nodeType === 3
      ? child.textContent ?? ""
      : child.localName === "svg" || child.localName === "style"
      ? ""
      : ownWords(child)
  ).join("").replace(/\s+/g, " ").trim();

/** Elements and texts in their order; a small drawing with words is an entry. */
function partsOf(node: DomNode): Part[] {
  if (node.nodeType === 3) {
    const text = (node.textContent ?? "").replace(/\s+/g, " ").trim();
    return text === "" ? [] : [{ kind: "words", text, bold: false }];
  }
  if (node.nodeType !== 1 || node.localName === "style") return [];
  if (node.localName === "svg") return [{ kind: "picture", node }];
  if (/^(?:h[1-6]|figcaption|p|caption)$/.test(node.localName ?? "")) {
    const text = ownWords(node);
    const bold = /^h[12]$/.test(node.localName ?? "");
    return text === "" ? [] : [{ kind: "words", text, bold }];
  }
  const children = [...node.childNodes];
  const drawings = children.filter((child) => child.localName === "svg");
  const label = ownWords(node);
  return drawings.length === 1 && label !== "" && isFlat(node)
    ? [{ kind: "entry", node: drawings[0], label }]
    : children.flatMap(partsOf);
}

/** True if below it there are only a drawing and text. */
function isFlat(node: DomNode): boolean {
  return [...node.childNodes].every((child) =>
    child.nodeType === 3 || child.localName === "svg"
  );
}

function sizeOf(svg: DomNode): { width: number; height: number } {
  const box = (svg.getAttribute?.("viewBox") ?? "").trim().split(/[\s,]+/)
    .map(Number);
  const side = (name: string, i: number): number => {
    const value = parseFloat(svg.getAttribute?.(name) ?? "");
    return value > 0 ? value : box[i] > 0 ? box[i] : i === 2 ? WIDTH : 150;
  };
  return { width: side("width", 2), height: side("height", 3) };
}

function placed(node: DomNode, x: number, y: number): string {
  const { width, height } = sizeOf(node);
  const at = (value: number): number => Number(value.toFixed(2));
  return writeNode(node, `${ID}-`, true)
    .replace(/^<svg[^>]*>/, (tag) => {
      const kept = tag.slice(4, -1).replace(
        / (?:x|y|width|height|style|xmlns)="[^"]*"/g,
        "",
      );
      return `<svg x="${at(x)}" y="${
        at(y)
      }" width="${width}" height="${height}"${kept}>`;
    });
}

/** Draws the parts below one another, entries of a legend in rows. */
export async function drawHtmlFigure(
  html: string,
  labels: { readonly title: string; readonly description: string },
): Promise<Drawn> {
  const parts = partsOf(await parseElement(html));
  const pictures = parts.flatMap((part) =>
    part.kind === "picture" ? [sizeOf(part.node).width] : []
  );
  const width = Math.max(300, ...pictures);
  const right = width - EDGE;
  const drawn: string[] = [];
  let [x, y, row] = [EDGE, EDGE, 0];
  const endRow = (): void => {
    if (row > 0) [x, y, row] = [EDGE, y + row + 6, 0];
  };
  for (const part of parts) {
    if (part.kind === "entry") {
      const size = sizeOf(part.node);
      const wide = size.width + 6 + textWidth(part.label, SIZE);
      if (x > EDGE && x + wide > right) endRow();
      const tall = Math.max(size.height, SIZE * 1.3);
      drawn.push(
        placed(part.node, x, y + (tall - size.height) / 2),
        textSvg([part.label], x + size.width + 6, y + tall / 2 + SIZE * 0.35, {
          size: SIZE,
        }),
      );
      x += wide + 16;
      row = Math.max(row, tall);
      continue;
    }
    endRow();
    if (part.kind === "words") {
      const size = part.bold ? TITLE_SIZE : SIZE;
      const lines = wrapText(part.text, size, width - 2 * EDGE, part.bold);
      y += size;
      drawn.push(textSvg(lines, EDGE, y, { size, bold: part.bold }));
      y += (lines.length - 1) * size * 1.3 + 8;
    } else {
      drawn.push(placed(part.node, 0, y));
      y += sizeOf(part.node).height + 6;
    }
  }
  endRow();
  return finishPage({
    ...labels,
    svg: renumbered(drawn.join("")),
    width: Math.ceil(width),
    height: Math.ceil(y + EDGE / 2),
  });
}
