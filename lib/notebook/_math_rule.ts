/**
 * Formulas between dollar signs, for the Markdown reader.
 *
 * @module
 */
import type MarkdownIt from "markdown-it";
import type { MathRenderer } from "./_math_markup.ts";

/** The reader that the rule is added to. */
type Markdown = InstanceType<typeof MarkdownIt>;

/** Where the formula that opens at `start` ends, or -1: "costs $5 or $6" is none. */
function closingDollar(text: string, start: number): number {
  if (/\s/.test(text[start] ?? " ")) return -1;
  for (let i = start; i < text.length; i++) {
    if (text[i] === "\\") i++;
    else if (text[i] === "$") {
      return /\s/.test(text[i - 1]) || /\d/.test(text[i + 1] ?? "") ? -1 : i;
    }
  }
  return -1;
}

/** Teaches the reader `$…$` within a line, and `$$…$$` set on its own. */
export function addMathRule(markdown: Markdown, render: MathRenderer): void {
  markdown.inline.ruler.before("escape", "formula", (state, silent) => {
    const { src, pos } = state;
    if (src[pos] !== "$") return false;
    const isBlock = src[pos + 1] === "$";
    const start = pos + (isBlock ? 2 : 1);
    const end = isBlock ? src.indexOf("$$", start) : closingDollar(src, start);
    if (end <= start) return false;
    if (!silent) {
      const token = state.push("formula", "", 0);
      token.content = src.slice(start, end);
      // A paragraph holds no block.
      token.meta = { box: isBlock ? "span" : undefined };
    }
    state.pos = end + (isBlock ? 2 : 1);
    return true;
  });
  markdown.block.ruler.before(
    "fence",
    "formula_block",
    (state, line, last, silent) => {
      const textOf = (at: number) =>
        state.src.slice(state.bMarks[at] + state.tShift[at], state.eMarks[at]);
      if (!textOf(line).startsWith("$$")) return false;
      let tex = textOf(line).slice(2);
      let next = line;
      while (!tex.includes("$$") && next + 1 < last) {
        tex += `\n${textOf(++next)}`;
      }
      const end = tex.indexOf("$$");
      if (end < 0 || tex.slice(end + 2).trim() !== "") return false;
      if (!silent) {
        const token = state.push("formula", "", 0);
        token.content = tex.slice(0, end).trim();
        token.meta = { box: "div" };
        token.block = true;
        state.line = next + 1;
      }
      return true;
    },
    { alt: ["paragraph", "reference", "blockquote", "list"] },
  );
  markdown.renderer.rules.formula = (tokens, index) =>
    render(
      tokens[index].content,
      tokens[index].meta?.box as "div" | "span" | undefined,
    );
}
