/**
 * How wide a text will be, without a screen to try it on.
 *
 * @module
 */

/**
 * Advance widths in hundredths of the font size, for the characters from
 * space to tilde, of the widest sans serif face in common use (measured in a
 * browser on DejaVu Sans, which other faces stay under).
 */
const WIDTHS = [
  ...[32, 41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37, 32, 34],
  ...[64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84, 84, 84, 54],
  ...[100, 69, 69, 70, 78, 64, 58, 78, 76, 30, 30, 66, 56, 87, 75, 79],
  ...[61, 79, 70, 64, 62, 74, 69, 99, 69, 62, 69, 40, 34, 40, 84, 50],
  ...[50, 62, 64, 55, 64, 62, 36, 64, 64, 28, 28, 58, 28, 98, 64, 62],
  ...[64, 64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84],
];

const OTHERS: Readonly<Record<string, number>> = {
  "µ": 64,
  "μ": 64,
  "°": 50,
  "²": 41,
  "–": 50,
  "·": 32,
  "’": 32,
  "σ": 64,
  "\u00a0": 32,
  "\u202f": 22,
};

/** Bold text is wider by no more than this. */
const BOLD = 1.13;

/**
 * Estimates the width of one line of text, on the wide side.
 *
 * @param text One line.
 * @param size Font size in px.
 * @param bold Whether it is set bold.
 * @returns Width in px, at least the true one for Latin text.
 */
export function textWidth(text: string, size: number, bold = false): number {
  let hundredths = 0;
  for (const character of text) {
    const code = character.codePointAt(0)!;
    hundredths += WIDTHS[code - 32] ?? OTHERS[character] ?? 100;
  }
  return hundredths / 100 * size * (bold ? BOLD : 1);
}

function pieces(word: string, size: number, room: number, bold: boolean) {
  const found: string[] = [];
  let piece = "";
  for (const character of word) {
    if (piece !== "" && textWidth(piece + character, size, bold) > room) {
      found.push(piece);
      piece = "";
    }
    piece += character;
  }
  return [...found, piece];
}

/**
 * Breaks a text into lines that fit, inside a word only where one is too long,
 * and not between a number and its unit.
 *
 * @param text The text; a line break in it is kept.
 * @param size Font size in px.
 * @param room Width of a line in px.
 * @param bold Whether it is set bold.
 * @returns The lines, at least one.
 */
export function wrapText(
  text: string,
  size: number,
  room: number,
  bold = false,
): string[] {
  const lines: string[] = [];
  // A number and its unit stay on one line.
  const kept = text.replace(/(\d) (?=(?:µm|mm|in|thou|%)(?!\w))/g, "$1\u00a0");
  for (const paragraph of kept.split("\n")) {
    let line = "";
    const words = paragraph.split(/[ \t]+/)
      .flatMap((word) => pieces(word, size, room, bold));
    for (const word of words) {
      const longer = line === "" ? word : `${line} ${word}`;
      if (line !== "" && textWidth(longer, size, bold) > room) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    lines.push(line);
  }
  return lines.map((line) => line.replaceAll("\u00a0", " "));
}

/** More characters than any line of a figure holds. */
const MOST_CHARACTERS = 600;

/** Shortens a text with an ellipsis until it fits. */
export function shortened(text: string, size: number, room: number): string {
  if (textWidth(text, size) <= room) return text;
  // No letter is drawn without width, so that far fewer than these fit.
  const characters = [...text.slice(0, MOST_CHARACTERS)];
  while (
    characters.length > 1 && textWidth(characters.join("") + "…", size) > room
  ) characters.pop();
  return characters.join("").trimEnd() + "…";
}

/**
 * Breaks a text into at most so many lines, the last one shortened with an
 * ellipsis where more would follow.
 */
export function fitText(
  text: string,
  size: number,
  room: number,
  most: number,
): string[] {
  const lines = wrapText(text, size, room);
  if (lines.length <= most) return lines;
  const last = textWidth(`${lines[most - 1]}…`, size) <= room
    ? `${lines[most - 1]}…`
    : shortened(`${lines[most - 1]} `, size, room - textWidth("W", size));
  return [...lines.slice(0, most - 1), last];
}
