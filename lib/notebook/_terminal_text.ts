/**
 * Text meant for a terminal, made fit for a page or a sentence.
 *
 * @module
 */
import { escapeHtml } from "../display/escape_html.ts";

/** Escape sequences of ECMA-48: CSI, OSC and other strings, and two-character ones. */
const ESCAPE =
  // deno-lint-ignore no-control-regex
  /[\x1B][[][0-?]*[ -/]*[@-~]|[\x1B][\]PX^_][^\x07\x1B]*(?:\x07|\x1B\\)?|[\x1B][ -/]*[0-~]?|\x9B[0-?]*[ -/]*[@-~]/g;

/** Control characters but tab and line feed, which have no look on a page. */
// deno-lint-ignore no-control-regex
const CONTROL = /[\x00-\x08\x0B-\x1F\x7F-\x9F]/g;

/** Removes escape sequences (colours, cursor moves) from text. */
export function stripEscapes(text: string): string {
  return text.replace(ESCAPE, "");
}

/** A visible character with the look that held when it was written. */
interface Mark {
  readonly text: string;
  readonly look: string;
}

const COLOURS = [
  "black",
  "red",
  "green",
  "yellow",
  "blue",
  "magenta",
  "cyan",
  "white",
];

/** The class names after a "select graphic rendition" sequence. */
function nextLook(look: string, sequence: string): string {
  // deno-lint-ignore no-control-regex
  const parameters = /^(?:\x1B\[|\x9B)([\d;]*)m$/.exec(sequence);
  if (parameters === null) return look;
  let [bold, colour] = [look.includes("bold"), look.replace(/ ?bold/, "")];
  const codes = parameters[1].split(";").map(Number);
  for (let i = 0; i < codes.length; i++) {
    const code = codes[i];
    if (code === 0) [bold, colour] = [false, ""];
    else if (code === 1) bold = true;
    else if (code === 22) bold = false;
    else if (code === 39) colour = "";
    else if (code === 38 || code === 48) i += codes[i + 1] === 5 ? 2 : 4;
    else if (code >= 30 && code <= 37) colour = `t-${COLOURS[code - 30]}`;
    else if (code >= 90 && code <= 97) colour = `t-${COLOURS[code - 90]}`;
  }
  return [colour, bold ? "bold" : ""].filter(Boolean).join(" ");
}

/** Writes one line as a terminal would, overwriting after a carriage return. */
function writeLine(line: string, start: string): [Mark[], string] {
  const marks: Mark[] = [];
  let look = start;
  let column = 0;
  let from = 0;
  const put = (text: string) => {
    for (const character of text) {
      if (character === "\r") column = 0;
      else if (character === "\b") column = Math.max(0, column - 1);
      else marks[column++] = { text: character, look };
    }
  };
  for (const found of line.matchAll(ESCAPE)) {
    put(line.slice(from, found.index));
    look = nextLook(look, found[0]);
    from = found.index + found[0].length;
  }
  put(line.slice(from));
  return [marks, look];
}

/** Line ends of Windows are line ends, not carriage returns. */
function linesOf(text: string): string[] {
  return text.replace(/\r+\n/g, "\n").split("\n");
}

/** The text that a terminal would show: no escape sequences, lines overwritten. */
export function terminalText(text: string): string {
  return linesOf(text).map((line) =>
    /[\r\b]/.test(line)
      ? writeLine(stripEscapes(line), "")[0].map((mark) => mark.text).join("")
      : stripEscapes(line)
  ).join("\n").replace(CONTROL, "");
}

/** As `terminalText`, as HTML: colours and bold as classes, the rest escaped. */
export function terminalHtml(text: string): string {
  let look = "";
  const lines = linesOf(text).map((line) => {
    // deno-lint-ignore no-control-regex
    if (look === "" && !/[\r\b\x1B\x9B]/.test(line)) {
      return escapeHtml(line.replace(CONTROL, ""));
    }
    let marks: Mark[];
    [marks, look] = writeLine(line, look);
    let out = "";
    for (let i = 0; i < marks.length;) {
      let run = "";
      const { look: current } = marks[i];
      while (i < marks.length && marks[i].look === current) {
        run += marks[i++].text;
      }
      const shown = escapeHtml(run.replace(CONTROL, ""));
      out += current === ""
        ? shown
        : `<span class="${current}">${shown}</span>`;
    }
    return out;
  });
  return lines.join("\n");
}
