/**
 * A line as it arrives at the bench: typed, or from a gauge's cable.
 *
 * @module
 */

/** What a line turned out to be. */
export type TypedLine =
  | { readonly kind: "blank" }
  | {
    readonly kind: "value";
    /** The number, with a unit glued to it where one was typed. */
    readonly reading: string;
    /** The unit the cable named, else blank. */
    readonly unit: string;
    /** True for a line that only a cable writes. */
    readonly cable: boolean;
  }
  | {
    readonly kind: "unreadable";
    /** Why, as a sentence. */
    readonly words: string;
    /** The line, safe to show. */
    readonly shown: string;
  }
  | { readonly kind: "text"; readonly text: string };

const CABLE = /^\s*([+\-\u2212])\s*([\d.,]+)\s*,\s*([A-Za-z]+)\s*$/;
const CUT = /^\s*[+\-\u2212]\s{0,3}\d*[.,]?\d*\s*(?:,\s*[A-Za-z]?\s*)?$/;
const HEADLESS = /^[\d.,\s]*,\s*(?:mm|in|inch)$/i;
const LONGEST = 200;

/** True for a letter that no text holds: control codes and their like. */
function isHidden(code: number): boolean {
  return code < 0x20 || (code >= 0x7f && code < 0xa0) ||
    code === 0xfeff || code === 0xfffd || (code >= 0x200b && code <= 0x200f);
}

function hidesSomething(text: string): boolean {
  return [...text].some((letter) => {
    const code = letter.codePointAt(0) ?? 0;
    return letter !== "\t" && code !== 0xfeff && isHidden(code);
  });
}

/** A line without control codes, shortened. */
function safeText(line: string): string {
  let safe = "";
  for (const letter of line.slice(0, LONGEST)) {
    safe += isHidden(letter.codePointAt(0) ?? 0) ? "·" : letter;
  }
  return line.length > LONGEST ? `${safe}…` : safe.trim();
}

/**
 * Reads a line's shape; its number is read later, by the reader of files.
 *
 * A cable writes `sign spaces value, UNIT`. Such a line without its unit, or
 * with NUL bytes, was cut off and is no reading: its last figures may be gone.
 */
export function typedLine(line: string): TypedLine {
  const bare = line.replaceAll("\u0000", "").trim();
  if (line.includes("\u0000")) {
    return bare === "" ? { kind: "blank" } : {
      kind: "unreadable",
      words: "the line is cut off (it holds NUL bytes)",
      shown: safeText(line),
    };
  }
  if (bare === "") return { kind: "blank" };
  const cable = CABLE.exec(bare);
  if (cable !== null) {
    const [, sign, digits, unit] = cable;
    const minus = sign === "+" ? "" : "-";
    return { kind: "value", reading: `${minus}${digits}`, unit, cable: true };
  }
  if (/^ERR\b/i.test(bare)) {
    return {
      kind: "unreadable",
      words: "the gauge reported an error",
      shown: safeText(bare),
    };
  }
  // Nobody types a plus and a space, or a minus and two; a cable does.
  if (/^(?:\+\s|[\-\u2212]\s{2})/.test(bare) && CUT.test(bare)) {
    return {
      kind: "unreadable",
      words: "the line is cut off: it has no unit",
      shown: safeText(bare),
    };
  }
  if (HEADLESS.test(bare)) {
    return {
      kind: "unreadable",
      words: "the line is cut off: it has no sign",
      shown: safeText(bare),
    };
  }
  if (hidesSomething(bare)) {
    return {
      kind: "unreadable",
      words: "this is not what a gauge writes",
      shown: safeText(bare),
    };
  }
  return /\d/.test(bare)
    ? { kind: "value", reading: bare, unit: "", cable: false }
    : { kind: "text", text: bare };
}
