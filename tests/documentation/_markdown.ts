/** The parts of a Markdown page that the tests look at. */

/** A fenced block. */
export interface Block {
  /** What follows the fence: the language, such as `ts`. */
  readonly language: string;
  /** Second word after the fence: the file the block stands for. */
  readonly file?: string;
  /** The text between the fences. */
  readonly text: string;
  /** Line of the opening fence, from 1. */
  readonly line: number;
}

/** The fenced blocks of a page, in order. */
export function blocksOf(page: string): Block[] {
  const found: Block[] = [];
  let open: { fence: string; words: string[]; line: number } | undefined;
  let held: string[] = [];
  for (const [index, line] of page.split("\n").entries()) {
    const fence = /^(\s*)(`{3,})(.*)$/.exec(line);
    if (open === undefined) {
      if (fence === null) continue;
      open = {
        fence: fence[2],
        words: fence[3].trim().split(/\s+/),
        line: index + 1,
      };
      held = [];
    } else if (fence !== null && fence[2] === open.fence && fence[3] === "") {
      const [language, file] = open.words;
      found.push({
        language,
        ...(file === undefined ? {} : { file }),
        text: held.join("\n"),
        line: open.line,
      });
      open = undefined;
    } else held.push(line);
  }
  if (open !== undefined) {
    throw new SyntaxError(`The block of line ${open.line} has no end`);
  }
  return found;
}

/** The page without its fenced blocks. */
export function proseOf(page: string): string {
  return page.replace(/^(`{3,})[^\n]*\n[\s\S]*?^\1$/gm, "");
}

/**
 * The sentences of a page: paragraphs, list items and rows of tables, taken
 * apart at the ends of sentences; headings and pictures are none.
 */
export function sentencesOf(page: string): string[] {
  const units: string[] = [];
  let unit = "";
  const close = () => {
    if (unit.trim() !== "") units.push(unit.trim().replace(/\s+/g, " "));
    unit = "";
  };
  for (const line of proseOf(page).split("\n")) {
    if (/^#|^\s*$|^!\[/.test(line)) close();
    else if (/^\|[\s|:-]+\|$/.test(line)) unit = "";
    else if (/^\|/.test(line)) {
      close();
      unit = line.replace(/^\||\|$/g, "").replace(/\s*\|\s*/g, " | ");
    } else if (/^\s*(?:[-*]|\d+\.)\s/.test(line)) {
      close();
      unit = line.replace(/^\s*(?:[-*]|\d+\.)\s+/, "");
    } else unit += ` ${line}`;
  }
  close();
  return units.flatMap((one) =>
    one.split(/(?<=[.?!]\)?\*{0,2})\s+(?=[\p{Lu}[`“*(])/u)
  );
}

/** The code spans of a page, line breaks in them closed up. */
export function codeSpansOf(page: string): string[] {
  return [...proseOf(page).matchAll(/(?<!`)`([^`]+)`(?!`)/g)]
    .map(([, code]) => code.replace(/\s+/g, " "));
}
