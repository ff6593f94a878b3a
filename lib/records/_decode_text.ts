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

function utf16(bytes: Uint8Array): "utf-16le" | "utf-16be" | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  return unmarkedUtf16(bytes);
}

/**
 * Turns the bytes of a file into text.
 *
 * UTF-8 with or without its mark and UTF-16 of either order, marked or not,
 * are read as such. Bytes that are neither are read as Windows-1252, the
 * commonest encoding of old spreadsheets, with a note. Marks are taken off
 * and CRLF and CR become LF, which keeps the count of lines.
 */
export function decodeText(bytes: Uint8Array, file: string): DecodedText {
  for (const [start, what, mend] of OTHER_KINDS) {
    if (start.every((byte, i) => bytes[i] === byte)) {
      return {
        text: "",
        problems: [{
          severity: "refused",
          code: "not-text",
          file,
          message: `this is not a text file but ${what}`,
          expected: "plain text",
          mend,
        }],
      };
    }
  }
  const problems: Problem[] = [];
  let text: string;
  const wide = utf16(bytes);
  if (wide !== undefined) {
    text = new TextDecoder(wide).decode(bytes);
  } else {
    try {
      text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    } catch {
      text = new TextDecoder("windows-1252").decode(bytes);
      problems.push({
        severity: "note",
        code: "encoding",
        file,
        message: "the file is not UTF-8; it was read as Windows-1252",
        mend: "if a letter looks wrong, save the file as UTF-8",
      });
    }
  }
  text = text.replace(/^\uFEFF+/, "");
  if (text.includes("\r")) text = text.replace(/\r\n?/g, "\n");
  return { text, problems };
}
