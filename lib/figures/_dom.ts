/**
 * The only file that knows of a DOM: it lends one to Plot, and writes what
 * Plot made as text that both an HTML and an XML parser read alike.
 *
 * @module
 */
import { escapeAttribute, escapeText } from "./_escape.ts";
import { roleOf, standIn } from "./_theme.ts";

/** Plot, as its module gives it. */
export type PlotModule = typeof import("@observablehq/plot");

/** What we need to know of a node, whichever DOM made it. */
export interface DomNode {
  readonly nodeType: number;
  readonly localName?: string;
  readonly namespaceURI?: string | null;
  readonly textContent: string | null;
  readonly childNodes: Iterable<DomNode>;
  readonly attributes?: Iterable<{ name: string; value: string }>;
  getAttribute?(name: string): string | null;
}

/** Plot and a document for it. */
export interface Drawing {
  readonly Plot: PlotModule;
  readonly document: object;
}

let drawing: Promise<Drawing> | undefined;

async function load(): Promise<Drawing> {
  const [Plot, dom] = await Promise.all([
    import("@observablehq/plot"),
    import("linkedom"),
  ]);
  const page = dom.parseHTML("<!doctype html><html><body></body></html>");
  const { document } = page as unknown as { document: object };
  return { Plot, document };
}

/** Loads Plot and the DOM, once, when the first figure is drawn. */
export function loadDrawing(): Promise<Drawing> {
  return drawing ??= load();
}

/** Tells whether a value is an element of some DOM. */
export function isElement(value: unknown): value is DomNode {
  const node = value as DomNode | null | undefined;
  return typeof node === "object" && node !== null && node.nodeType === 1 &&
    typeof node.localName === "string" && "childNodes" in node;
}

/** Reads finished HTML into the tree below one element. */
export async function parseElement(html: string): Promise<DomNode> {
  const dom = await import("linkedom");
  const page = dom.parseHTML(
    `<!doctype html><html><body>${html}</body></html>`,
  ) as unknown as { document: { body: DomNode } };
  return page.document.body;
}

const SVG = "http://www.w3.org/2000/svg";

/** Names that a DOM made for HTML writes in small letters. */
const CAPITALS = new Map(
  [
    ..."clipPath linearGradient radialGradient foreignObject textPath".split(
      " ",
    ),
    ..."feBlend feColorMatrix feGaussianBlur feOffset feMerge".split(" "),
    ..."feMergeNode feFlood feComposite feDropShadow".split(" "),
  ].map((name) => [name.toLowerCase(), name]),
);

const VOID = new Set(
  "area base br col embed hr img input link meta source track wbr".split(" "),
);

/** Said once for the whole picture by its title and description. */
const DROPPED = /^(aria-(label|hidden|description)|xmlns)$/;
const GEOMETRY =
  /^(d|transform|points|x|y|x1|x2|y1|y2|cx|cy|r|rx|ry|dx|dy|width|height|stroke-width|font-size)$/;
const NUMBER = /-?\d*\.?\d+(?:e[-+]?\d+)?/g;

/** Rounds the numbers of an attribute to hundredths of a pixel. */
export function rounded(text: string): string {
  return text.replace(NUMBER, (number) => `${+Number(number).toFixed(2) + 0}`);
}

function prefixed(name: string, value: string, prefix: string): string {
  if (
    name === "id" || name === "for" ||
    /^aria-(labelledby|describedby)$/.test(name)
  ) {
    return value.trim().split(/\s+/).map((id) => prefix + id).join(" ");
  }
  if (/^(xlink:)?href$/.test(name) && value.startsWith("#")) {
    return `#${prefix}${value.slice(1)}`;
  }
  return value.replace(/url\((['"]?)#/g, (found) => found + prefix);
}

function attributesOf(node: DomNode, inSvg: boolean, prefix: string): string {
  const classes: string[] = [];
  const written: string[] = [];
  const all = [...node.attributes ?? []]
    .sort((a, b) => a.name < b.name ? -1 : 1);
  for (const { name, value } of all) {
    if (name === "class") {
      classes.push(value);
      continue;
    }
    if (inSvg && DROPPED.test(name)) continue;
    let text = prefixed(name, value, prefix);
    const role = inSvg && (name === "fill" || name === "stroke")
      ? roleOf(value)
      : undefined;
    if (role !== undefined) {
      classes.push(`${name[0]}-${role}`);
      text = standIn(role);
    } else if (inSvg && GEOMETRY.test(name)) text = rounded(text);
    written.push(` ${name}="${escapeAttribute(text)}"`);
  }
  if (classes.length > 0) {
    written.unshift(` class="${escapeAttribute(classes.join(" "))}"`);
  }
  return written.join("");
}

/**
 * Writes a node and all below it with explicit end tags.
 *
 * Inside an SVG, colours that name a role get a class and a stand-in, which
 * the page fills in.
 *
 * @param node The node.
 * @param prefix Put before every id, so that two figures of a page share none.
 * @param inSvg Whether the node lies inside an SVG.
 */
export function writeNode(
  node: DomNode,
  prefix: string,
  inSvg: boolean,
): string {
  if (node.nodeType === 3) return escapeText(node.textContent ?? "");
  if (node.nodeType !== 1 || node.localName === undefined) return "";
  const svg = node.namespaceURI === SVG || node.localName === "svg" ||
    (inSvg && node.namespaceURI === undefined);
  const small = node.localName;
  const name = svg ? CAPITALS.get(small) ?? small : small;
  const attributes = attributesOf(node, svg, prefix);
  const start = `<${name}${
    name === "svg" ? ` xmlns="${SVG}"` : ""
  }${attributes}>`;
  if (!svg && VOID.has(name)) return start;
  const children = small === "style"
    ? node.textContent ?? ""
    : writeChildren(node, prefix, svg && small !== "foreignobject");
  return `${start}${children}</${name}>`;
}

/** Writes what is below a node, leaving out style sheets inside an SVG. */
export function writeChildren(
  node: DomNode,
  prefix: string,
  inSvg: boolean,
): string {
  return [...node.childNodes]
    .filter((child) => !(inSvg && child.localName === "style"))
    .map((child) => writeNode(child, prefix, inSvg)).join("");
}
