/**
 * Markup of unknown origin to a tree of names, attributes and text.
 *
 * What comes out need not be what a browser would build from the same text: a
 * page gets the tree written anew, so only what is in the tree counts.
 *
 * @module
 */
import {
  DROPPED_WHOLE,
  RAW_TEXT_ELEMENTS,
  VOID_ELEMENTS,
} from "./_allowed_markup.ts";

/** One element. */
export interface MarkupElement {
  /** Lower-case name. */
  readonly name: string;
  readonly isSvg: boolean;
  /** Lower-case names and values as written (entities kept); the first of a name counts. */
  readonly attributes: ReadonlyMap<string, string>;
  /** Elements, and text as written (entities kept). */
  readonly children: (MarkupElement | string)[];
}

/** Deeper nesting is cut: no honest output has it, and a stack overflows. */
const MAXIMUM_DEPTH = 200;

/** For an opening tag: the open elements it closes, up to a bounding element. */
const CLOSES: Readonly<Record<string, readonly [string, string]>> = {
  li: ["li", "ul ol"],
  dt: ["dt dd", "dl"],
  dd: ["dt dd", "dl"],
  tr: ["tr td th", "table"],
  td: ["td th", "tr table"],
  th: ["td th", "tr table"],
  tbody: ["tbody thead tfoot tr td th", "table"],
  tfoot: ["tbody thead tfoot tr td th", "table"],
};

const TAG =
  /<(?:!--([\s\S]*?)(?:--!?>|$)|!\[CDATA\[([\s\S]*?)(?:\]\]>|$)|[!?][^>]*(?:>|$)|(\/?)([a-zA-Z][^\s/>]*)((?:[^>"']|"[^"]*"|'[^']*')*)(?:>|$))/g;

const ATTRIBUTE =
  /([^\s"'<>/=]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'<>`]+)))?/g;

function readAttributes(text: string): Map<string, string> {
  const attributes = new Map<string, string>();
  for (const [, name, double, single, bare] of text.matchAll(ATTRIBUTE)) {
    const key = name.toLowerCase();
    if (!attributes.has(key)) {
      attributes.set(key, double ?? single ?? bare ?? "");
    }
  }
  return attributes;
}

/**
 * Reads markup into a tree.
 *
 * @param markup Any text.
 * @param isXml True for `image/svg+xml`: every `/>` closes its element, and no
 * element hides markup. Otherwise as in HTML, where that holds within SVG only.
 */
export function parseMarkup(markup: string, isXml: boolean): MarkupElement {
  const root: MarkupElement = {
    name: "",
    isSvg: false,
    attributes: new Map(),
    children: [],
  };
  const open: MarkupElement[] = [root];
  const top = () => open[open.length - 1];
  const say = (text: string) => {
    if (text !== "") top().children.push(text);
  };
  const tag = new RegExp(TAG);
  let at = 0;
  let overflow = 0;
  for (let found = tag.exec(markup); found !== null; found = tag.exec(markup)) {
    say(markup.slice(at, found.index).replace(/</g, "&lt;"));
    at = tag.lastIndex;
    const [, , characterData, slash, rawName, rawAttributes] = found;
    if (characterData !== undefined) {
      say(characterData.replace(/&/g, "&amp;").replace(/</g, "&lt;"));
    }
    if (rawName === undefined) continue;
    const name = rawName.toLowerCase();
    if (slash === "/") {
      if (overflow > 0) overflow--;
      else {
        const from = open.findLastIndex((element) => element.name === name);
        if (from > 0) open.length = from;
      }
      continue;
    }
    const parent = top();
    const isSvg = name === "svg" ||
      (parent.isSvg &&
        !["foreignobject", "title", "desc"].includes(parent.name));
    if (!isSvg && !isXml) {
      const [closed, bounds] = CLOSES[name] ?? ["", ""];
      for (let i = open.length - 1; i > 0 && closed !== ""; i--) {
        if (bounds.split(" ").includes(open[i].name)) break;
        if (closed.split(" ").includes(open[i].name)) open.length = i;
      }
      if (
        top().name === "p" &&
        /^(?:p|div|ul|ol|table|h[1-6]|pre|figure)$/.test(name)
      ) {
        open.pop();
      }
    }
    const element: MarkupElement = {
      name,
      isSvg,
      attributes: readAttributes(rawAttributes),
      children: [],
    };
    const closesItself = /\/\s*$/.test(rawAttributes) && (isSvg || isXml);
    const isLeaf = closesItself || (!isSvg && VOID_ELEMENTS.has(name));
    if (open.length > MAXIMUM_DEPTH) {
      if (!isLeaf) overflow++;
      continue;
    }
    top().children.push(element);
    if (isLeaf) continue;
    if (!isSvg && !isXml && RAW_TEXT_ELEMENTS.has(name)) {
      const end = new RegExp(`</${name}(?=[\\s/>]|$)[^>]*>?`, "gi");
      end.lastIndex = at;
      const last = end.exec(markup);
      element.children.push(markup.slice(at, last?.index));
      at = tag.lastIndex = last ? end.lastIndex : markup.length;
      continue;
    }
    open.push(element);
  }
  say(markup.slice(at).replace(/</g, "&lt;"));
  return root;
}

/** True if an HTML element goes with all it holds. */
export function isDroppedWhole(element: MarkupElement): boolean {
  return !element.isSvg && DROPPED_WHOLE.has(element.name) &&
    element.name !== "style";
}
