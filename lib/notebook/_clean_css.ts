/**
 * Style rules from a cell's output, kept to their own output and to what can
 * neither load anything nor cover the rest of the page.
 *
 * @module
 */

/** New name of an id inside its output. */
export type RenameId = (id: string) => string;

/** Properties that set a look; none that takes a box out of its place. */
const ALLOWED_PROPERTY = new RegExp(
  "^(?:--[a-z0-9-]+|color|background(?:-color)?|border(?:-[a-z-]+)?|(?:margin|padding)(?:-[a-z]+)*|" +
    "font(?:-[a-z-]+)?|text-[a-z-]+|letter-spacing|word-(?:spacing|break)|white-space(?:-collapse)?|" +
    "line-height|vertical-align|overflow(?:-wrap|-x|-y)?|display|flex(?:-[a-z]+)?|grid(?:-[a-z-]+)?|" +
    "(?:row-|column-)?gap|(?:align|justify)-[a-z]+|(?:min-|max-)?(?:width|height)|list-style(?:-type)?|" +
    "opacity|fill(?:-[a-z]+)?|stroke(?:-[a-z]+)?|stop-[a-z]+|paint-order|[a-z]+-baseline|clip-(?:path|rule)|" +
    "marker(?:-[a-z]+)?|transform(?:-origin)?|(?:shape|image)-rendering|visibility|table-layout|caption-side|" +
    "box-sizing|aspect-ratio|break-(?:before|after|inside)|d|r|cx|cy|rx|ry|x|y)$",
);

/** Anything that could load, hide a name by escapes, or end the style early. */
const FORBIDDEN_VALUE =
  /[\\<>@&{}]|(?:image|src|expression|element)\s*\(|image-set/i;

/** Cuts at `separator` outside quotes and brackets; `undefined` if unbalanced. */
function splitTop(text: string, separator: string): string[] | undefined {
  const parts: string[] = [];
  let [start, depth, quote] = [0, 0, ""];
  for (let i = 0; i < text.length; i++) {
    const character = text[i];
    if (quote !== "") {
      if (character === quote) quote = "";
    } else if (character === '"' || character === "'") quote = character;
    else if ("([".includes(character)) depth++;
    else if (")]".includes(character)) depth--;
    else if (character === separator && depth === 0) {
      parts.push(text.slice(start, i));
      start = i + 1;
    }
    if (depth < 0) return undefined;
  }
  if (depth !== 0 || quote !== "") return undefined;
  return [...parts, text.slice(start)];
}

/**
 * Points `url(#id)` at the new id.
 *
 * @returns `undefined` if the value refers to anything but an id.
 */
export function cleanReferences(
  value: string,
  rename: RenameId,
): string | undefined {
  let safe = true;
  const renamed = value.replace(
    /url\(\s*(["']?)([^"')]*)\1\s*\)/gi,
    (_, quote: string, target: string) => {
      if (!/^#[^\s"'()\\<>&]+$/.test(target)) safe = false;
      return `url(${quote}#${rename(target.slice(1))}${quote})`;
    },
  );
  if (!safe) return undefined;
  const left = renamed.replace(/url\((["']?)#[\w-]+\1\)/g, "");
  return /url\s*\(/i.test(left) ? undefined : renamed;
}

/** Keeps the allowed declarations of a `style` attribute or of a rule. */
export function cleanDeclarations(text: string, rename: RenameId): string {
  const kept: string[] = [];
  for (const declaration of splitTop(text, ";") ?? []) {
    const colon = declaration.indexOf(":");
    const property = declaration.slice(0, colon).trim().toLowerCase();
    const value = declaration.slice(colon + 1).trim();
    if (colon < 1 || value === "" || !ALLOWED_PROPERTY.test(property)) continue;
    if (FORBIDDEN_VALUE.test(value)) continue;
    const safe = cleanReferences(value, rename);
    if (safe !== undefined) kept.push(`${property}:${safe}`);
  }
  return kept.join(";");
}

/** A condition on the medium: words, lengths, brackets. */
const MEDIA = /^@media\s[a-z0-9\s():.,-]+$/i;

function cleanSelectors(
  text: string,
  scope: string,
  rename: RenameId,
): string {
  return (splitTop(text, ",") ?? []).map((selector) => selector.trim())
    .filter((selector) =>
      selector !== "" && !/^[>+~|]|[&<\\{};@]/.test(selector)
    )
    .map((selector) =>
      `:where(#${scope}) ${
        selector.replace(/#([\w-]+)/g, (_, id: string) => `#${rename(id)}`)
      }`
    ).join(",");
}

/**
 * Keeps the plain rules of a `<style>` element and limits them to the
 * descendants of the element with the id `scope`, at no cost in specificity.
 * Of at-rules only `@media` stays, for figures that know light from dark.
 */
export function cleanStyleSheet(
  text: string,
  scope: string,
  rename: RenameId,
): string {
  const css = text.replace(/\/\*[\s\S]*?(?:\*\/|$)/g, " ");
  const rules: string[] = [];
  for (let at = 0; at < css.length;) {
    const open = css.indexOf("{", at);
    if (open < 0) break;
    const semicolon = css.indexOf(";", at);
    if (
      css.slice(at).trimStart().startsWith("@") && semicolon >= 0 &&
      semicolon < open
    ) {
      at = semicolon + 1;
      continue;
    }
    let depth = 1;
    let end = open + 1;
    for (; end < css.length && depth > 0; end++) {
      if (css[end] === "{") depth++;
      else if (css[end] === "}") depth--;
    }
    const prelude = css.slice(at, open).trim();
    const body = css.slice(open + 1, depth === 0 ? end - 1 : end);
    at = end;
    if (MEDIA.test(prelude)) {
      const inner = cleanStyleSheet(body, scope, rename);
      if (inner !== "") rules.push(`${prelude}{${inner}}`);
      continue;
    }
    if (prelude.startsWith("@") || body.includes("{")) continue;
    const selectors = cleanSelectors(prelude, scope, rename);
    const declarations = cleanDeclarations(body, rename);
    if (selectors !== "" && declarations !== "") {
      rules.push(`${selectors}{${declarations}}`);
    }
  }
  return rules.join("\n");
}
