/**
 * Bytes of a user's file to text, whatever program saved it.
 *
 * @module
 */
import type { Problem } from "./problem.ts";

/** A text file, decoded. */
export interface DecodedText {
  /** The text, without byte-order marks, every line ended by LF alone. */
  readonly text: string;
  /** What the decoder did that the user may want to know, or why it gave up. */
  readonly problems: readonly Problem[];
}

/** First bytes of files that are no text, and the words for them. */
const OTHER_KINDS: readonly [readonly number[], string, string][] = [
  [
    [0x50, 0x4b, 0x03, 0x04],
    "a packed file (a spreadsheet's own format, most likely)",
    "open it in the spreadsheet and save the sheet as CSV",
  ],
  [
    [0xd0, 0xcf, 0x11, 0xe0],
    "an old spreadsheet file",
    "open it in the spreadsheet and save the sheet as CSV",
  ],
  [[0x25, 0x50, 0x44, 0x46], "a PDF", "type the readings into a CSV file"],
  [[0x1f, 0x8b], "a compressed file", "unpack it first"],
];

/** Which half of the byte pairs is NUL, if the file is UTF-16 without a mark. */
function unmarkedUtf16(bytes: Uint8Array): "utf-16le" | "utf-16be" | undefined {
  const sample = bytes.subarray(0, Math.min(bytes.length, 4096) & ~1);
  if (sample.length < 4) return undefined;
  const nuls = [0, 0];
  for (let i = 0; i < sample.length; i++) if (sample[i] === 0) nuls[i & 1]++;
  const pairs = sample.length / 2;
  if (nuls[1] > 0.6 * pairs && nuls[0] < 0.1 * pairs) return "utf-16le";
  if (nuls[0] > 0.6 * pairs && nuls[1] < 0.1 * pairs) return "utf-16be";
  return undefined;
}

function markedUtf16(bytes: Uint8Array): "utf-16le" | "utf-16be" | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  return undefined;
}

/** Part of a text's first letters that a table is mostly made of. */
function plainPart(text: string): number {
  const start = text.slice(0, 2000);
  return (start.match(/[\t\n\r -~]/g)?.length ?? 0) / (start.length || 1);
}

/**
 * UTF-16 as text, if the bytes are that; by what they hold where a mark at the
 * start says something else of them.
 */
function utf16(bytes: Uint8Array): { text: string; said?: string } | undefined {
  const marked = markedUtf16(bytes);
  if (marked === undefined) {
    const found = unmarkedUtf16(bytes);
    return found && { text: new TextDecoder(found).decode(bytes) };
  }
  const text = new TextDecoder(marked).decode(bytes);
  if (plainPart(text) > 0.2) return { text };
  for (const other of ["utf-16le", "utf-16be", "utf-8"] as const) {
    const read = new TextDecoder(other).decode(bytes.subarray(2));
    if (plainPart(read) < 0.9) continue;
    const what = other === "utf-8" ? "UTF-8" : "UTF-16 of the other byte order";
    return {
      text: read,
      said:
        `the file's first two bytes say UTF-16, but it is ${what}; it was read as that`,
    };
  }
  return { text };
}

/**
 * Lines of UTF-16 in a text of single bytes, of either byte order, with their
 * mark: every other character is NUL.
 */
const WIDE_LINES = [
  new RegExp("(?:\u00ff\u00fe|\ufffd{2})?((?:[\u0001-\u007f]\0){8,})", "g"),
  new RegExp("(?:\u00fe\u00ff|\ufffd{2})?((?:\0[\u0001-\u007f]){8,})", "g"),
];

/** A text with the lines that a program added to it in UTF-16 made readable. */
function withWideLines(text: string): { text: string; wide: boolean } {
  if (!text.includes("\0")) return { text, wide: false };
  const narrow = (_: string, wide: string) => wide.replaceAll("\0", "");
  const found = WIDE_LINES.reduce(
    (one, wide) => one.replace(wide, narrow),
    text,
  );
  return { text: found, wide: found !== text };
}

/** Why bytes are no text, if they are none. */
function notText(
  bytes: Uint8Array,
): { readonly what: string; readonly mend: string } | undefined {
  const starts = (...start: number[]) =>
    start.every((byte, i) => bytes[i] === byte);
  for (const [start, what, mend] of OTHER_KINDS) {
    if (starts(...start)) return { what, mend };
  }
  if (starts(0xff, 0xfe, 0, 0) || starts(0, 0, 0xfe, 0xff)) {
    return { what: "in UTF-32", mend: "save it as UTF-8" };
  }
  return bytes.length > 0 && bytes.every((byte) => byte === 0)
    ? {
      what: "nothing but NUL bytes: it was cut off, or never written",
      mend: "take it from a copy, or type the readings again",
    }
    : undefined;
}

const NOT_UTF8 = "the file is not UTF-8; it was read as";
const PARTLY_WIDE =
  "part of the file is UTF-16, as some programs add lines; it was read as that";
const LOOK = "if a letter looks wrong, save the file as UTF-8";

/** Bytes that are not all UTF-8, by the encoding that explains them best. */
function guessed(bytes: Uint8Array): { text: string; said: string } {
  const utf8 = new TextDecoder("utf-8").decode(bytes);
  const damaged = utf8.split("\uFFFD").length - 1;
  const whole = utf8.match(/[\u0080-\uFFFC]/g)?.length ?? 0;
  if (whole > damaged) {
    return {
      text: utf8,
      said:
        `the file is UTF-8 with ${damaged} damaged letters, shown as \uFFFD`,
    };
  }
  const windows = new TextDecoder("windows-1252").decode(bytes);
  const old = new TextDecoder("macintosh").decode(bytes);
  const likely = (text: string) => text.match(LIKELY)?.length ?? 0;
  return likely(old) > likely(windows)
    ? { text: old, said: `${NOT_UTF8} Mac Roman` }
    : { text: windows, said: `${NOT_UTF8} Windows-1252` };
}

/** What people type beyond ASCII: signs, dashes, marks, letters with accents. */
const LIKELY =
  /[°µ±½¼¾²³×–—‘’“”…•§\u00a0]|(?<=\p{L})[à-öø-ÿœ]|[à-öø-ÿœÄÖÜÉ](?=\p{Ll})/gu;

/** What some programs put between lines: NEL, line and page breaks, RS. */
const OTHER_LINE_ENDS = new RegExp("[\u0085\u2028\u2029\v\f\u001e]", "g");
/** What DOS programs put behind the last line. */
const DOS_END = "\u001a";

/** Byte-order marks, also one that a program took for three letters. */
const MARKS = /^(?:\uFEFF|\u00ef\u00bb\u00bf)+/;

/** Line ends as LF, marks and a DOS end-of-file mark taken off. */
function plainLines(decoded: string): string {
  let text = decoded.replace(MARKS, "");
  if (text.includes("\r")) text = text.replace(/\r\n?/g, "\n");
  let end = text.length;
  while (end > 0 && text[end - 1] === DOS_END) end--;
  return text.slice(0, end);
}

/**
 * The lines of a table: where nothing else parts them, the marks that other
 * programs put between lines do.
 */
export function tableLines(text: string): string {
  return text.includes("\n") ? text : text.replace(OTHER_LINE_ENDS, "\n");
}

/**
 * Turns the bytes of a file into text; a text only has its line ends made LF.
 *
 * UTF-8 with or without its mark and UTF-16 of either order, marked, marked
 * wrongly or not at all, are read as such, also where a part is the other.
 * Bytes that are neither are read as damaged UTF-8 where more of their letters
 * are whole than damaged, else as Windows-1252 or Mac Roman, the commonest
 * encodings of old spreadsheets, with a note. Marks are taken off and every
 * line end becomes LF, which keeps the count of lines.
 */
export function decodeText(
  content: Uint8Array | string,
  file: string,
): DecodedText {
  if (typeof content === "string") {
    return { text: plainLines(content), problems: [] };
  }
  const other = notText(content);
  if (other !== undefined) {
    return {
      text: "",
      problems: [{
        severity: "refused",
        code: "not-text",
        file,
        message: `this is not a text file but ${other.what}`,
        expected: "plain text",
        mend: other.mend,
      }],
    };
  }
  const wide = utf16(content);
  if (wide !== undefined) return decoded(wide.text, file, wide.said);
  try {
    const whole = new TextDecoder("utf-8", { fatal: true }).decode(content);
    return decoded(whole, file);
  } catch {
    const { text, said } = guessed(content);
    return decoded(text, file, said);
  }
}

function decoded(typed: string, file: string, said?: string): DecodedText {
  const { text, wide } = withWideLines(typed);
  const message = wide ? PARTLY_WIDE : said;
  return {
    text: plainLines(text),
    problems: message === undefined ? [] : [{
      severity: "note",
      code: "encoding",
      file,
      message,
      mend: LOOK,
    }],
  };
}
