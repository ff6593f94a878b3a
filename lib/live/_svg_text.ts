import { escapeHtml } from "../display/escape_html.ts";
import type { Picture } from "./_drawing.ts";
import { type Shape, tidy } from "./_shape.ts";
import { LIVE_FONT, rolesStyle } from "./_theme.ts";

function text(node: Shape | string): string {
  if (typeof node === "string") return escapeHtml(node);
  const attributes = Object.entries(node.attributes).map(([name, value]) =>
    ` ${name}="${escapeHtml(tidy(value))}"`
  ).join("");
  return `<${node.tag}${attributes}>${
    node.children.map(text).join("")
  }</${node.tag}>`;
}

/** A picture as one SVG text that needs nothing else. */
export function svgText(
  { width, height, shapes, description }: Picture,
  title: string,
): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="title desc" font-family="${
    escapeHtml(LIVE_FONT)
  }"><title id="title">${escapeHtml(title)}</title><desc id="desc">${
    escapeHtml(description)
  }</desc><style>${
    rolesStyle("")
  }</style><rect class="f-paper" width="${width}" height="${height}"></rect>${
    shapes.map(text).join("")
  }</svg>`;
}
