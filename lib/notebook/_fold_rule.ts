/**
 * A fold in Markdown: the one piece of HTML that the reader knows, written as
 * notebooks do, each tag on a line of its own.
 *
 * @module
 */
import type MarkdownIt from "markdown-it";

/** The reader that the rule is added to. */
type Markdown = InstanceType<typeof MarkdownIt>;

const SUMMARY = /^<summary>(.+)<\/summary>$/;

/**
 * Teaches the reader `<details>`, `<summary>…</summary>`, Markdown and
 * `</details>`. Without its end a fold is no fold, and shows as typed.
 */
export function addFoldRule(markdown: Markdown): void {
  markdown.block.ruler.before(
    "fence",
    "fold",
    (state, line, last, silent) => {
      const textOf = (at: number) =>
        state.src.slice(state.bMarks[at] + state.tShift[at], state.eMarks[at])
          .trimEnd();
      if (textOf(line) !== "<details>" || line + 1 >= last) return false;
      const summary = SUMMARY.exec(textOf(line + 1));
      if (summary === null) return false;
      let end = line + 2;
      for (let depth = 1; end < last; end++) {
        const text = textOf(end);
        if (text === "<details>") depth++;
        else if (text === "</details>" && --depth === 0) break;
      }
      if (end >= last) return false;
      if (silent) return true;
      const open = state.push("fold_open", "details", 1);
      open.block = true;
      state.push("fold_summary_open", "summary", 1);
      const inline = state.push("inline", "", 0);
      inline.content = summary[1];
      inline.map = [line + 1, line + 2];
      inline.children = [];
      state.push("fold_summary_close", "summary", -1);
      state.md.block.tokenize(state, line + 2, end);
      state.push("fold_close", "details", -1).block = true;
      state.line = end + 1;
      return true;
    },
    { alt: ["paragraph", "reference", "blockquote", "list"] },
  );
  const { rules } = markdown.renderer;
  rules.fold_open = () => '<details class="sb-fold-text">\n';
  rules.fold_summary_open = () => "<summary>";
  rules.fold_summary_close = () => "</summary>\n";
  rules.fold_close = () => "</details>\n";
}
