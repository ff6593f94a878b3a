/**
 * Markup from a cell's output, written anew from an allow-list: nothing in it
 * runs or loads, and its ids are its own.
 *
 * @module
 */
import {
  HTML_ATTRIBUTES,
  HTML_ELEMENTS,
  ID_LIST_ATTRIBUTES,
  SVG_ATTRIBUTES,
  SVG_ELEMENTS,
  VOID_ELEMENTS,
} from "./_allowed_markup.ts";
import {
  cleanDeclarations,
  cleanReferences,
  cleanStyleSheet,
} from "./_clean_css.ts";
import {
  isDroppedWhole,
  type MarkupElement,
  parseMarkup,
} from "./_parse_markup.ts";

/** Where the markup goes. */
export interface CleanOptions {
  /** The id of the element that will hold the markup; ids get it as prefix. */
  readonly scope: string;
  /** True for `image/svg+xml`. */
  readonly isXml: boolean;
}

const SAFE_LINK = /^(?:https?:\/\/|mailto:)[^\s"'<>`\\]*$/;
const SAFE_PICTURE =
  /^data:image\/(?:png|jpeg|gif|webp);base64,[A-Za-z0-9+/=\s]*$/;

/** A space between words, in any entity or script, would split an id list. */
function decodeBasic(text: string): string {
  return text.replace(/&(?:quot|#34);/g, '"').replace(/&(?:apos|#39);/g, "'")
    .replace(/&nbsp;/g, "\u00A0").replace(/&gt;/g, ">").replace(/&amp;/g, "&");
}

/** Keeps entities, escapes the rest. */
function escapeKept(text: string): string {
  return text
    .replace(
      /&(?!(?:[a-zA-Z][a-zA-Z0-9]{1,31}|#\d{1,7}|#[xX][0-9a-fA-F]{1,6});)/g,
      "&amp;",
    )
    .replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;")
    // deno-lint-ignore no-control-regex
    .replace(/[\x00-\x08\x0B\x0C\x0E-\x1F\x7F-\x9F]/g, "");
}

class Writer {
  readonly #scope: string;
  readonly #ids = new Map<string, string>();
  readonly #written = new Set<string>();

  constructor(scope: string, root: MarkupElement) {
    this.#scope = scope;
    this.#collectIds(root);
  }

  #collectIds(element: MarkupElement): void {
    const id = element.attributes.get("id");
    if (id !== undefined && !this.#ids.has(id)) {
      const stem = `${this.#scope}-${id.replace(/[^\w-]/g, "_")}`;
      const taken = new Set(this.#ids.values());
      let name = stem;
      for (let copy = 2; taken.has(name); copy++) name = `${stem}-${copy}`;
      this.#ids.set(id, name);
    }
    for (const child of element.children) {
      if (typeof child !== "string") this.#collectIds(child);
    }
  }

  /** An id that is not in this output gets the prefix too, and points nowhere. */
  #rename = (id: string): string =>
    this.#ids.get(id) ?? `${this.#scope}-${id.replace(/[^\w-]/g, "_")}`;

  #link(element: MarkupElement, value: string): string | undefined {
    const target = value.trim();
    if (target.startsWith("#")) return `#${this.#rename(target.slice(1))}`;
    if (element.name === "a") {
      return SAFE_LINK.test(target) ? target : undefined;
    }
    return element.name === "image" && SAFE_PICTURE.test(target)
      ? target
      : undefined;
  }

  #value(
    element: MarkupElement,
    name: string,
    value: string,
  ): string | undefined {
    if (name === "id") {
      const id = this.#rename(value);
      if (this.#written.has(id)) return undefined;
      this.#written.add(id);
      return id;
    }
    if (name === "href" || name === "xlink:href") {
      return this.#link(element, value);
    }
    if (name === "src") {
      return element.name === "img" && SAFE_PICTURE.test(value)
        ? value
        : undefined;
    }
    if (name === "style") {
      return cleanDeclarations(decodeBasic(value), this.#rename) || undefined;
    }
    if (name === "class") {
      // Names of the page's own style are not for outputs.
      return value.split(/\s+/).filter((word) => !word.startsWith("sb-"))
        .join(" ");
    }
    if (ID_LIST_ATTRIBUTES.has(name)) {
      return value.trim().split(/\s+/).map(this.#rename).join(" ");
    }
    return element.isSvg
      ? cleanReferences(decodeBasic(value), this.#rename)
      : value;
  }

  #attributes(element: MarkupElement): string {
    let text = "";
    for (const [name, value] of element.attributes) {
      const isAria = /^aria-[a-z]+$/.test(name);
      const canonical = element.isSvg
        ? SVG_ATTRIBUTES.get(name)
        : HTML_ATTRIBUTES.has(name)
        ? name
        : undefined;
      if (canonical === undefined && !isAria) continue;
      const safe = this.#value(element, name, value);
      if (safe !== undefined) {
        text += ` ${canonical ?? name}="${escapeKept(safe)}"`;
      }
    }
    return text;
  }

  children(element: MarkupElement): string {
    return element.children.map((child) => this.#node(child)).join("");
  }

  #node(node: MarkupElement | string): string {
    if (typeof node === "string") return escapeKept(node);
    if (node.name === "style") {
      const css = node.children.filter((child) => typeof child === "string");
      const rules = cleanStyleSheet(
        decodeBasic(css.join("")),
        this.#scope,
        this.#rename,
      );
      return rules === "" ? "" : `<style>${rules}</style>`;
    }
    if (node.isSvg) {
      const name = SVG_ELEMENTS.get(node.name);
      if (name === undefined || name === "metadata") return "";
      return `<${name}${this.#attributes(node)}>${
        this.children(node)
      }</${name}>`;
    }
    if (isDroppedWhole(node)) return "";
    if (!HTML_ELEMENTS.has(node.name)) return this.children(node);
    if (node.name === "img") return this.#picture(node);
    const start = `<${node.name}${this.#attributes(node)}>`;
    return VOID_ELEMENTS.has(node.name)
      ? start
      : `${start}${this.children(node)}</${node.name}>`;
  }

  #picture(node: MarkupElement): string {
    const attributes = this.#attributes(node);
    if (/ src="/.test(attributes)) {
      return `<img${attributes}${/ alt="/.test(attributes) ? "" : ' alt=""'}>`;
    }
    const alt = node.attributes.get("alt") || "without description";
    return `<span>[picture outside this page, not shown: ${
      escapeKept(alt)
    }]</span>`;
  }
}

/**
 * Writes markup anew: allowed elements and attributes only, every tag closed,
 * texts escaped, ids prefixed, references and style rules kept within.
 *
 * @returns HTML that may stand inside the element with the id `scope`.
 */
export function cleanMarkup(markup: string, options: CleanOptions): string {
  const root = parseMarkup(markup, options.isXml);
  return new Writer(options.scope, root).children(root);
}
