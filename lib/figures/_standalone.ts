/**
 * The text of a figure as a file of its own: fixed colours, own fonts, nothing
 * from outside.
 *
 * @module
 */
import { type Role, ROLES } from "./_theme.ts";

/** Which page a file is meant for. */
export type FileTheme = "light" | "dark";

/** Faces for a file, which may be opened anywhere; widths were measured on the first. */
const FILE_FONTS =
  "'DejaVu Sans', Verdana, 'Segoe UI', 'Helvetica Neue', Arial, sans-serif";

const TAG = /<([a-zA-Z][\w:.-]*)((?:\s+[\w:.-]+\s*=\s*"[^"]*")*)(\s*\/?)>/g;
const ATTRIBUTE = /([\w:.-]+)\s*=\s*"([^"]*)"/g;
const PICTURE = /^data:image\/(?:png|jpeg|gif|webp);base64,/;

function outside(address: string): never {
  throw new TypeError(
    `Cannot write a figure as a file as it must not load anything from outside: current value is ${
      address.slice(0, 80)
    }`,
  );
}

/** The colour of a role's class, if a list of classes names one for it. */
function colourOf(
  classes: string,
  property: "fill" | "stroke",
  theme: 0 | 1,
): string | undefined {
  for (const name of classes.split(/\s+/)) {
    if (!name.startsWith(`${property[0]}-`)) continue;
    const role = name.slice(2);
    if (role in ROLES) return ROLES[role as Role][theme];
  }
  return undefined;
}

const isRoleClass = (name: string): boolean =>
  /^[fs]-/.test(name) && name.slice(2) in ROLES;

function checkAddress(tag: string, name: string, value: string): boolean {
  if (/^(?:xlink:)?href$/.test(name)) {
    if (tag === "a") return false;
    if (!value.startsWith("#") && !PICTURE.test(value)) outside(value);
  }
  for (
    const [, address] of value.matchAll(/url\(\s*(?:&quot;|['"])?([^)]*)/g)
  ) {
    if (!address.startsWith("#")) outside(address);
  }
  return true;
}

function attributesOf(tag: string, text: string, theme: 0 | 1): string {
  const all = [...text.matchAll(ATTRIBUTE)];
  const classes = all.find(([, name]) => name === "class")?.[2] ?? "";
  const colours = new Map(
    (["fill", "stroke"] as const).flatMap((property) => {
      const colour = colourOf(classes, property, theme);
      return colour === undefined ? [] : [[property as string, colour]];
    }),
  );
  let written = "";
  for (const [, name, value] of all) {
    if (/^on/i.test(name) || !checkAddress(tag, name, value)) continue;
    let kept = colours.get(name) ?? value;
    colours.delete(name);
    if (name === "class") {
      kept = value.split(/\s+/).filter((one) => !isRoleClass(one)).join(" ");
      if (kept === "") continue;
    }
    if (/^(?:fill|stroke|color)$/.test(name) && kept === "currentColor") {
      kept = ROLES.ink[theme];
    }
    if (name === "font-family" && kept.startsWith("system-ui")) {
      kept = FILE_FONTS;
    }
    written += ` ${name}="${kept}"`;
  }
  for (const [property, colour] of colours) {
    written += ` ${property}="${colour}"`;
  }
  return written;
}

/** Rules other than our own, which the attributes already say, for one theme. */
function sheetOf(css: string, theme: 0 | 1): string {
  const dark =
    /@media[^{]*prefers-color-scheme:\s*dark[^{]*\{((?:[^{}]*\{[^{}]*\})*[^{}]*)\}/g;
  const rules = css
    .replace(dark, (_, inside) => theme === 1 ? inside : "")
    .replace(/[^{}]*\.[fs]-[a-zA-Z]+\{[^{}]*var\(--figure-[^{}]*\}/g, "")
    .replace(/var\(--[\w-]+\s*,\s*([^()]*)\)/g, "$1");
  if (/@import|url\(\s*(?!['"]?#)/i.test(rules)) outside(rules.trim());
  return rules.trim();
}

/** Text that any XML reader takes: no control codes, no half characters. */
function wellFormed(text: string): string {
  return text.toWellFormed()
    // deno-lint-ignore no-control-regex
    .replace(/[\x00-\x08\x0B\x0C\x0E-\x1F\uFFFE\uFFFF]/g, "")
    .replaceAll("&nbsp;", "&#160;")
    .replace(/&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[0-9a-fA-F]+);)/g, "&amp;");
}

/**
 * Writes a figure's text for a file.
 *
 * Colours are fixed in attributes, since many viewers read no style sheet with
 * variables; links, scripts and handlers are taken out.
 *
 * @throws {TypeError} If the figure would load something from outside.
 */
export function standalone(
  svg: string,
  theme: FileTheme,
  size: { readonly width: number; readonly height: number },
): string {
  const side = theme === "light" ? 0 : 1;
  const text = wellFormed(svg)
    .replace(/<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<!DOCTYPE[^>]*>/gi, "")
    .replace(/<(script|foreignObject)\b[\s\S]*?<\/\1>/gi, "")
    .replace(/<style\b[^>]*>([\s\S]*?)<\/style>/gi, (_, css) => {
      const rules = sheetOf(css, side);
      return rules === "" ? "" : `<style>${rules}</style>`;
    })
    .replace(
      TAG,
      (_, tag, attributes, end) =>
        `<${tag}${attributesOf(tag, attributes, side)}${end.trim()}>`,
    );
  const sized = text.replace(/^<svg([^>]*)>/, (_, attributes: string) => {
    const kept = attributes
      .replace(/ (?:width|height|style|xmlns|xmlns:xlink)="[^"]*"/g, "");
    const xlink = text.includes("xlink:")
      ? ' xmlns:xlink="http://www.w3.org/1999/xlink"'
      : "";
    return `<svg xmlns="http://www.w3.org/2000/svg"${xlink} width="${size.width}" height="${size.height}"${kept}>`;
  });
  return `${sized.trim()}\n`;
}
